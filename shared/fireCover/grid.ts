import { FEET_PER_DEGREE, type Position } from '../nearest/sphere.ts';
import { FARTHEST_FT } from './distanceCredit.ts';
import type { CoverPoint } from './lostCover.ts';

const BAND_DEG = 0.1;

/**
 * Points of a grid within 1,000 ft of any of the hydrants that are out: the only points whose cover can have been lost.
 * The grid is fixed to the globe, so the same place has the same points whatever is out: rows `stepFt` apart from the
 * equator, in each row points `stepFt` apart from the prime meridian. Rows of a tenth of a degree share the spacing of
 * their middle, so that their points stand above each other; it is off by less than 0.2 % up to 60° of latitude. Each
 * point once, its id `row:column`.
 *
 * @param stepFt spacing in feet, 50 to 1,000
 * @throws RangeError for another spacing
 */
export function gridAround(outages: readonly Position[], stepFt: number): readonly CoverPoint[] {
  if (!(stepFt >= 50 && stepFt <= 1000)) throw new RangeError(`no spacing for a grid: ${stepFt} ft`);
  const rowStep = stepFt / FEET_PER_DEGREE;
  const reach = FARTHEST_FT / FEET_PER_DEGREE;
  const points = new Map<string, CoverPoint>();
  for (const { latitudeDeg, longitudeDeg } of outages) {
    const [south, north] = [latitudeDeg - reach, latitudeDeg + reach];
    for (let row = Math.ceil(south / rowStep); row * rowStep <= north; row += 1) {
      const atLatitude = row * rowStep;
      const band = (Math.floor(atLatitude / BAND_DEG) + 0.5) * BAND_DEG;
      const shrink = Math.cos((band * Math.PI) / 180);
      // So near a pole that a row is a point or two: no utility is there.
      if (shrink < 0.01) continue;
      const columnStep = rowStep / shrink;
      const acrossFt2 = 1 - ((atLatitude - latitudeDeg) / reach) ** 2;
      const half = (reach / shrink) * Math.sqrt(Math.max(0, acrossFt2));
      for (
        let column = Math.ceil((longitudeDeg - half) / columnStep);
        column * columnStep <= longitudeDeg + half;
        column += 1
      ) {
        const id = `${row}:${column}`;
        if (!points.has(id))
          points.set(id, { id, latitudeDeg: atLatitude, longitudeDeg: column * columnStep });
      }
    }
  }
  return [...points.values()];
}
