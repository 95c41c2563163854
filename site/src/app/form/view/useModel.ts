import type { BodyOf } from '../../../../../shared/submissions/submission.ts';
import { jointsOf } from '../../../../../shared/tightening/fromModel.ts';
import { useModels } from '../../core/records.ts';

export interface KnownModel {
  readonly model: BodyOf<'hydrant-model'> | null;
  /** Words that say why nothing, or nothing of its joints, is known; '' where all is. */
  readonly why: string;
}

/** What is known of the model: its record, or one sentence that says why there is none. */
export function useModel(modelId: string | null): KnownModel {
  const { value, failed } = useModels();
  const model = value?.models.find((one) => one.modelId === modelId) ?? null;
  if (model) return { model, why: jointsOf(model).length === 0 ? 'tightening.no-joints' : '' };
  if (modelId === null || value !== null) return { model: null, why: 'tightening.model-unknown' };
  return { model: null, why: failed ? 'tightening.model-unread' : 'tightening.model-reading' };
}
