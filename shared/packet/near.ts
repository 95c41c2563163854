import type { Hydrant } from '../inventory/hydrant.ts';
import { neighbour } from '../nearest/nearest.ts';
import type { PacketContent } from './schema.ts';

const MOST = 8;
const WITHIN_FT = 1500;
/** A degree of latitude is more than this everywhere, so a box of it never leaves out a neighbour. */
const FEET_PER_DEGREE = 362_000;

/** The hydrants nearest to a place, for the sketch of where it is: at most eight, within 1,500 ft, nearest first. */
export function hydrantsNear(
  place: { readonly latitudeDeg: number; readonly longitudeDeg: number },
  hydrants: readonly Hydrant[],
  except: string | null,
): PacketContent['hydrant']['near'] {
  const high = WITHIN_FT / FEET_PER_DEGREE;
  return hydrants
    .filter(
      ({ hydrantId, latitudeDeg }) =>
        hydrantId !== except && Math.abs(latitudeDeg - place.latitudeDeg) <= high,
    )
    .map((hydrant) => neighbour(place, hydrant))
    .filter(({ distanceFt }) => distanceFt <= WITHIN_FT)
    .sort((a, b) => a.distanceFt - b.distanceFt || (a.hydrant.hydrantId < b.hydrant.hydrantId ? -1 : 1))
    .slice(0, MOST)
    .map(({ hydrant: { hydrantId, latitudeDeg, longitudeDeg }, distanceFt }) => ({
      hydrantId,
      latitudeDeg,
      longitudeDeg,
      distanceFt: Math.round(distanceFt),
    }));
}
