import { nameKey } from '../../../../../shared/stock/names.ts';
import { sayQuantity } from '../../../../../shared/stock/say.ts';
import { useModels } from '../../core/records.ts';
import { ScanPart } from '../../scan/ScanPart.tsx';
import { useStock } from '../../screens/stock/stockAnswer.ts';
import { rowsOf, textOf, type Values } from '../nodes.ts';
import type { KnownPart } from '../scannedPart.ts';
import type { ExtraProps } from './props.ts';
import { useScope } from './scope.ts';
import { PlaceList } from './StockPlaces.tsx';

/** The repair kit of this hydrant's model, one touch a part and the shelf it comes from. */
export function KitParts({ values, change }: ExtraProps) {
  const { job, words } = useScope();
  const models = useModels();
  const stock = useStock();
  const model = models.value?.models.find(({ modelId }) => modelId === job.hydrant?.modelId);
  const shelves = (partNumber: string) =>
    (stock.value?.parts ?? [])
      .filter((part) => nameKey(part.partNumber) === nameKey(partNumber))
      .flatMap((part) => part.shelves)
      .filter(({ quantity }) => quantity !== null && quantity > 0);
  const known: readonly KnownPart[] = [...(model?.kitContents ?? []), ...(stock.value?.parts ?? [])].map(
    ({ partNumber, description }) => ({
      partNumber,
      description: description ?? '',
      places: shelves(partNumber).map(({ place }) => place),
    }),
  );
  const scan = <ScanPart values={values} change={change} known={known} />;
  if (!model || model.kitContents.length === 0)
    return (
      <>
        <PlaceList />
        {scan}
      </>
    );
  type Item = (typeof model.kitContents)[number];
  const parts = rowsOf(values['parts']);
  const used = (partNumber: string): boolean =>
    parts.some((part) => textOf(part['partNumber']) === partNumber);
  const take = ({ partNumber, description, quantity }: Item, place = ''): void => {
    const part: Values = {
      partNumber,
      description,
      quantity: String(quantity),
      'source.from': 'stock',
      'source.location': place,
    };
    change({ ...values, parts: [...parts, part] });
  };
  return (
    <div class="answer">
      <PlaceList />
      {scan}
      <h3>{words.t('form.kit-of', { model: model.name })}</h3>
      <ul class="plain-list kit-parts">
        {model.kitContents.map((item) => (
          <li key={item.partNumber}>
            {used(item.partNumber) || shelves(item.partNumber).length === 0 ? (
              <button type="button" class="plain" disabled={used(item.partNumber)} onClick={() => take(item)}>
                {words.t(used(item.partNumber) ? 'form.kit-added' : 'form.kit-add', {
                  part: item.partNumber,
                  description: item.description,
                })}
              </button>
            ) : (
              shelves(item.partNumber).map(({ place, quantity }) => (
                <button type="button" class="plain" key={place} onClick={() => take(item, place)}>
                  {words.t('kit.add-from', {
                    part: item.partNumber,
                    description: item.description,
                    place,
                    quantity: sayQuantity(quantity ?? 0, words.locale),
                  })}
                </button>
              ))
            )}
          </li>
        ))}
      </ul>
    </div>
  );
}
