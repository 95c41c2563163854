import { greatCircleMetres } from '../../nearest/sphere.ts';
import { median } from '../mapping/profile.ts';
import { isPlausible } from '../place/decide.ts';
import type { Crs } from '../place/crs.ts';
import type { Draft } from './draft.ts';
import { remark, type Remark } from './finding.ts';

/** Fewer rows than this have no "rest" to be far from. */
const fewestRows = 20;
/** How far beyond most rows (the nine tenths nearest to the middle) a row must be to be pointed out. */
const timesFarther = 8;
/** A utility's outlying plant or village is no slip. */
const leastMetres = 30_000;

/**
 * Rows far from all others, where a digit was lost or the axes were exchanged. Answers the finding per draft index, for
 * those that have one; `inventory-swapped-axes` where the exchanged point stands among the rest.
 */
export function outliers(drafts: readonly Draft[], crs: Crs): Map<Draft, Remark> {
  const found = new Map<Draft, Remark>();
  if (drafts.length < fewestRows) return found;
  const middle = {
    latitudeDeg: median(drafts.map(({ hydrant }) => hydrant.latitudeDeg)),
    longitudeDeg: median(drafts.map(({ hydrant }) => hydrant.longitudeDeg)),
  };
  const distances = Float64Array.from(drafts, ({ hydrant }) => greatCircleMetres(middle, hydrant));
  const usual = Float64Array.from(distances).sort()[Math.floor(distances.length * 0.9)] ?? 0;
  const limit = Math.max(leastMetres, usual * timesFarther);
  drafts.forEach((draft, place) => {
    const metres = distances[place] ?? 0;
    if (metres <= limit) return;
    const { latitudeDeg, longitudeDeg } = draft.hydrant;
    const swapped = { latitudeDeg: longitudeDeg, longitudeDeg: latitudeDeg };
    const fits =
      crs.kind === 'degrees' &&
      isPlausible(crs, swapped.longitudeDeg, swapped.latitudeDeg) &&
      greatCircleMetres(middle, swapped) <= limit;
    found.set(
      draft,
      fits
        ? remark('inventory-swapped-axes', { latitude: swapped.latitudeDeg, longitude: swapped.longitudeDeg })
        : remark('inventory-far-from-rest', {
            miles: Math.round(metres / 1609.344),
            latitude: latitudeDeg,
            longitude: longitudeDeg,
          }),
    );
  });
  return found;
}
