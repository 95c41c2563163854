import { useModels } from '../../core/records.ts';
import { rowsOf, textOf, type Values } from '../nodes.ts';
import type { ExtraProps } from './props.ts';
import { useScope } from './scope.ts';

/** The repair kit of this hydrant's model, one touch a part. */
export function KitParts({ values, change }: ExtraProps) {
  const { job, words } = useScope();
  const models = useModels();
  const model = models.value?.models.find(({ modelId }) => modelId === job.hydrant?.modelId);
  if (!model || model.kitContents.length === 0) return null;
  const parts = rowsOf(values['parts']);
  const used = (partNumber: string): boolean =>
    parts.some((part) => textOf(part['partNumber']) === partNumber);
  const take = ({ partNumber, description, quantity }: (typeof model.kitContents)[number]): void => {
    const part: Values = { partNumber, description, quantity: String(quantity), 'source.from': 'stock' };
    change({ ...values, parts: [...parts, part] });
  };
  return (
    <div class="answer">
      <h3>{words.t('form.kit-of', { model: model.name })}</h3>
      <ul class="plain-list">
        {model.kitContents.map((item) => (
          <li key={item.partNumber}>
            <button type="button" class="plain" disabled={used(item.partNumber)} onClick={() => take(item)}>
              {words.t(used(item.partNumber) ? 'form.kit-added' : 'form.kit-add', {
                part: item.partNumber,
                description: item.description,
              })}
            </button>
          </li>
        ))}
      </ul>
    </div>
  );
}
