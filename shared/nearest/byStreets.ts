import { neighbour, type Findable, type NearestIndex, type Neighbour } from './nearest.ts';
import type { Position } from './sphere.ts';
import { hydrantsWithin } from './within.ts';

/** The same as `WalkFt` of fire cover: feet along streets, or null where no street leads there within `mostFt`. */
type Walk<T extends Findable> = (from: Position, to: T, mostFt: number) => number | null;

/** The circle that is looked at first, feet; it is doubled until no hydrant outside it can be nearer by street. */
const FIRST_CIRCLE_FT = 1000;

/**
 * The `count` hydrants nearest along the streets for which `isInService` is true, nearest first; equal distances in the
 * order of their ids. `distanceFt` is along the streets, the bearing as the crow flies. Those that no street reaches
 * within `mostFt` are left out, so there may be fewer.
 *
 * Rests on no street being shorter than the straight line: a circle with enough hydrants that are no farther by street
 * than its own radius holds the answer.
 */
export function nearestByStreets<T extends Findable>(
  index: NearestIndex<T>,
  point: Position,
  { count, mostFt, walkFt }: { readonly count: number; readonly mostFt: number; readonly walkFt: Walk<T> },
  isInService: (hydrant: T) => boolean,
): Neighbour<T>[] {
  for (let circleFt = Math.min(FIRST_CIRCLE_FT, mostFt); ; circleFt = Math.min(circleFt * 2, mostFt)) {
    const found = hydrantsWithin(index, point, circleFt)
      .filter(({ hydrant }) => isInService(hydrant))
      .flatMap(({ hydrant }) => {
        // A way longer than the circle proves nothing yet, so none is looked for.
        const walked = walkFt(point, hydrant, circleFt);
        if (walked === null || walked > circleFt) return [];
        return [{ ...neighbour(point, hydrant), distanceFt: walked }];
      })
      .sort(
        (one, other) =>
          one.distanceFt - other.distanceFt || (one.hydrant.hydrantId < other.hydrant.hydrantId ? -1 : 1),
      )
      .slice(0, count);
    if (found.length === count || circleFt >= mostFt) return found;
  }
}
