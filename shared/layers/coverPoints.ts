import KDBush from 'kdbush';
import { FARTHEST_FT } from '../fireCover/distanceCredit.ts';
import type { CoverPoint } from '../fireCover/lostCover.ts';
import type { Position } from '../nearest/sphere.ts';
import { placesAround } from '../nearest/within.ts';
import { PER_DEGREE } from '../streets/streets.ts';
import { pack, unpack } from './packed.ts';

/** Places that must be covered, laid out for search. A city has a million: numbers, not objects. */
export interface CoverPoints {
  readonly count: number;
  /**
   * Those within 1,000 ft (in a straight line) of any of the outages, and few more, each once: no other can have lost
   * cover. In the order of the layer, named by their number in it and by nothing else, so that no address leaves.
   */
  readonly around: (outages: readonly Position[]) => readonly CoverPoint[];
}

/** @param places longitudes and latitudes by turns */
export const pointsToBytes = (places: readonly number[]): Uint8Array =>
  pack({ places: Int32Array.from(places, (degrees) => Math.round(degrees * PER_DEGREE)) }, { version: 1 });

/** @throws PackedDamaged for bytes that hold no places */
export function pointsFromBytes(bytes: Uint8Array): CoverPoints {
  const places = unpack(bytes).array('places', 'Int32');
  const count = places.length / 2;
  const degrees = (at: number): number => (places[at] ?? 0) / PER_DEGREE;
  const tree = new KDBush(Math.max(1, count));
  if (count === 0) tree.add(0, 0);
  for (let place = 0; place < count; place += 1) tree.add(degrees(2 * place), degrees(2 * place + 1));
  tree.finish();
  return {
    count,
    around: (outages) => {
      const found = new Set<number>();
      if (count > 0)
        for (const outage of outages)
          for (const place of placesAround(tree, outage, FARTHEST_FT)) found.add(place);
      return [...found]
        .sort((a, b) => a - b)
        .map((place) => ({
          id: String(place),
          longitudeDeg: degrees(2 * place),
          latitudeDeg: degrees(2 * place + 1),
        }));
    },
  };
}
