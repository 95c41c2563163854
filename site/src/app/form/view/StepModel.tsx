import type { ProcedureStep } from '../../../../../shared/procedure/steps.ts';
import { modelAtStep } from '../../../../../shared/procedure/modelAtStep.ts';
import { useScope } from './scope.ts';
import type { KnownModel } from './useModel.ts';

interface Props {
  readonly step: ProcedureStep;
  readonly model: NonNullable<KnownModel['model']>;
}

/** What the model's record says of this step: torques with their order, the nut that is backed off, how it opens. */
export function StepModel({ step, model }: Props) {
  const { words } = useScope();
  const said = modelAtStep(step, model, words);
  if (said.length === 0) return null;
  return (
    <ul class="of-model" aria-label={words.t('procedure.by-model', { model: model.name })}>
      {said.map((line) => (
        <li key={line}>{line}</li>
      ))}
    </ul>
  );
}
