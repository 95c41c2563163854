import type { Hydrant } from '../inventory/hydrant.ts';
import { nearestIndex } from '../nearest/nearest.ts';
import { placesAround } from '../nearest/within.ts';
import { problem, type Problem } from '../problems/problem.ts';
import { areasHolding } from '../stations/inArea.ts';
import { layOut, snapTo } from '../streets/network.ts';
import { streetsFromBytes } from '../streets/file.ts';
import type { LayerKind } from './kinds.ts';
import type { LayerResult } from './readLayer.ts';

/** Two miles: nothing of a town's layer lies farther than this from every hydrant, unless it is of another town. */
const beyondFt = 10_560;

/**
 * Holds a layer against the inventory: whether it lies where the hydrants are (if nothing of it does, its coordinates
 * are not what they were said to be), and how many hydrants it serves.
 *
 * @param hydrants null where no inventory was loaded
 */
export function besideHydrants(
  result: LayerResult,
  kind: LayerKind,
  hydrants: readonly Hydrant[] | null,
): { readonly problems: readonly Problem[]; readonly remarks: readonly Problem[] } {
  if (!hydrants || hydrants.length === 0)
    return { problems: [], remarks: [problem('layers-no-inventory-yet')] };
  return kind === 'stations' ? areas(result, hydrants) : lines(result, kind, hydrants);
}

function lines(
  result: LayerResult,
  kind: LayerKind,
  hydrants: readonly Hydrant[],
): ReturnType<typeof besideHydrants> {
  const { tree } = nearestIndex(hydrants);
  const count = result.places.length / 2;
  let near = 0;
  for (let at = 0; at < result.places.length; at += 2) {
    const place = { longitudeDeg: result.places[at] ?? 0, latitudeDeg: result.places[at + 1] ?? 0 };
    if (placesAround(tree, place, beyondFt).length > 0) near += 1;
  }
  if (near === 0) return nowhereNear(result);
  const far =
    near < count
      ? [problem('layers-some-far', '', { percent: Math.ceil((100 * (count - near)) / count) })]
      : [];
  if (kind !== 'streets') return { problems: [], remarks: far };
  const network = layOut(streetsFromBytes(result.bytes));
  const off = network ? hydrants.filter((hydrant) => snapTo(network, hydrant) === null) : hydrants;
  return {
    problems: [],
    remarks: [
      ...far,
      problem('layers-hydrants-on-streets', '', {
        on: hydrants.length - off.length,
        count: hydrants.length,
        feet: network?.streets.snapFt ?? 0,
        examples: off.length === 0 ? 'none' : namesOf(off),
      }),
    ],
  };
}

function areas(
  { stations, places }: LayerResult,
  hydrants: readonly Hydrant[],
): ReturnType<typeof besideHydrants> {
  const none: Hydrant[] = [];
  const several: Hydrant[] = [];
  const holding = areasHolding(stations);
  for (const hydrant of hydrants) {
    const { length } = holding(hydrant);
    if (length === 0) none.push(hydrant);
    if (length > 1) several.push(hydrant);
  }
  if (none.length === hydrants.length) return nowhereNear({ places });
  return {
    problems: [],
    remarks: [
      problem('layers-hydrants-in-areas', '', {
        inside: hydrants.length - none.length,
        count: hydrants.length,
        examples: none.length === 0 ? 'none' : namesOf(none),
      }),
      ...(several.length > 0
        ? [problem('layers-areas-overlap', '', { count: several.length, examples: namesOf(several) })]
        : []),
    ],
  };
}

const namesOf = (hydrants: readonly Hydrant[]): string =>
  hydrants
    .slice(0, 3)
    .map(({ hydrantId }) => hydrantId)
    .join(', ');

const nowhereNear = ({ places }: Pick<LayerResult, 'places'>): ReturnType<typeof besideHydrants> => ({
  remarks: [],
  problems: [
    problem('layers-nowhere-near', 'features', {
      longitude: (places[0] ?? 0).toFixed(4),
      latitude: (places[1] ?? 0).toFixed(4),
    }),
  ],
});
