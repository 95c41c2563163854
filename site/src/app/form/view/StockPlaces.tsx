import { nameKey } from '../../../../../shared/stock/names.ts';
import { useStock } from '../../screens/stock/stockAnswer.ts';
import { stockPlaces } from '../specs/stock.ts';
import { rowsOf, textOf, type Values } from '../nodes.ts';
import type { ExtraProps } from './props.ts';
import { useScope } from './scope.ts';

/** The places on record, for a field's suggestions. */
export function PlaceList() {
  const places = placesOf(useStock().value?.parts ?? []);
  return (
    <datalist id={stockPlaces}>
      {places.map((place) => (
        <option key={place} value={place} />
      ))}
    </datalist>
  );
}

const placesOf = (
  parts: readonly { readonly shelves: readonly { readonly place: string }[] }[],
): string[] => [
  ...new Map(
    parts.flatMap(({ shelves }) => shelves.map(({ place }) => [nameKey(place), place] as const)),
  ).values(),
];

/** Known places, one touch each; then the parts that are on record there, into the list with one more. */
export function StockPlaces({ values, change }: ExtraProps) {
  const { spec, words } = useScope();
  const parts = useStock().value?.parts ?? [];
  const places = placesOf(parts);
  const place = textOf(values['place']);
  const listed = rowsOf(values['parts']).map((row) => nameKey(textOf(row['partNumber'])));
  const here = parts.filter(
    ({ partNumber, shelves }) =>
      place !== '' &&
      !listed.includes(nameKey(partNumber)) &&
      shelves.some((shelf) => nameKey(shelf.place) === nameKey(place)),
  );
  const take = (): void => {
    const rows = here.map(({ partNumber, description }): Values => ({
      partNumber,
      description: description ?? '',
    }));
    const said = rowsOf(values['parts']).filter((row) => textOf(row['partNumber']) !== '');
    change({ ...values, parts: [...said, ...rows] });
  };
  const hasPlace = spec.kind !== 'stock-move';
  return (
    <>
      <PlaceList />
      {hasPlace && place === '' && places.length > 0 && (
        <div class="answer">
          <h3>{words.t('stock.choose-place')}</h3>
          <p class="actions">
            {places.map((each) => (
              <button type="button" key={each} onClick={() => change({ ...values, place: each })}>
                {each}
              </button>
            ))}
          </p>
        </div>
      )}
      {hasPlace && here.length > 0 && (
        <div class="answer">
          <p>{words.t('stock.at-shelf', { place, count: here.length })}</p>
          <p>
            <button type="button" class="plain" onClick={take}>
              {words.t('stock.add-known')}
            </button>
          </p>
        </div>
      )}
    </>
  );
}
