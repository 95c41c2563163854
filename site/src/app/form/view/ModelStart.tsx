import { jointsOf } from '../../../../../shared/tightening/fromModel.ts';
import { useModels } from '../../core/records.ts';
import { decode } from '../decode.ts';
import { textOf } from '../nodes.ts';
import type { ExtraProps } from './props.ts';
import { useScope } from './scope.ts';

/** Models on record, one touch each: a new edition of a record starts from the last, also from one of before. */
export function ModelStart({ values, change }: ExtraProps) {
  const { spec, words } = useScope();
  const models = useModels().value?.models ?? [];
  if (models.length === 0 || textOf(values['modelId']) !== '') return null;
  return (
    <div class="answer">
      <h3>{words.t('tightening.start-from')}</h3>
      <ul class="plain-list">
        {models.map((model) => (
          <li key={model.modelId}>
            <button
              type="button"
              class="plain"
              onClick={() => change(decode(spec.nodes, { ...model, joints: jointsOf(model) }, words.zone))}
            >
              {model.name}
            </button>
          </li>
        ))}
      </ul>
    </div>
  );
}
