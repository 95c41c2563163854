import type { Findable, NearestIndex } from '../nearest/nearest.ts';
import { hydrantsWithin } from '../nearest/within.ts';
import type { Position } from '../nearest/sphere.ts';
import { creditOf, creditRings, FARTHEST_FT, type Credit, type Creditable } from './distanceCredit.ts';

/** How a distance was come by. A straight line is shorter than any hose: what it credits is "at most". */
export const distancesBy = ['streets', 'straight'] as const;
export type DistanceBy = (typeof distancesBy)[number];

export type Covering = Findable & Creditable;

/** What stands within a distance, all rings nested: within 600 ft counts those within 300 ft, too. */
export interface Ring {
  readonly toFt: number;
  readonly before: number;
  readonly left: number;
}

/** A hydrant within 1,000 ft and what it is credited with. */
export interface Covered<T extends Covering> {
  readonly hydrant: T;
  readonly distanceFt: number;
  readonly inService: boolean;
  readonly credit: Credit;
}

export interface Cover<T extends Covering = Covering> {
  readonly rings: readonly Ring[];
  /** Credit in gpm with every hydrant in service, and with what is left. */
  readonly beforeGpm: number;
  readonly leftGpm: number;
  /** False: the credit is "at most", because of straight lines, or flows or outlets that nobody knows. */
  readonly certain: boolean;
  /** What was counted, nearest as the crow flies first. */
  readonly hydrants: readonly Covered<T>[];
}

/**
 * Feet along streets from a place to a hydrant: never less than the straight line. Null where no street leads there
 * within `mostFt`; a network that knows only shorter ways may answer null sooner, but not below 1,000 ft.
 */
export type WalkFt<T extends Findable = Findable> = (from: Position, to: T, mostFt: number) => number | null;

export interface CoverQuestion<T extends Covering> {
  readonly index: NearestIndex<T>;
  /** Whether a hydrant is one to be counted at all, as an abandoned one is not; left out: all are. */
  readonly serves?: (hydrant: T) => boolean;
  readonly isInService: (hydrant: T) => boolean;
  /** Flow in gpm at 20 psi as last known; the inventory's own is the fallback of whoever asks. */
  readonly flowGpm?: (hydrant: T) => number | null;
  /** Left out: straight lines. */
  readonly walkFt?: WalkFt<T>;
}

/** The credit of one hydrant, with the flow that whoever asks knows of. */
export function creditFor<T extends Covering>(
  { flowGpm }: Pick<CoverQuestion<T>, 'flowGpm'>,
  hydrant: T,
  distanceFt: number,
): Credit {
  const { outlets, outletCount } = hydrant;
  const ratedFlowGpm = flowGpm ? flowGpm(hydrant) : hydrant.ratedFlowGpm;
  return creditOf({ ratedFlowGpm, outlets, outletCount }, distanceFt);
}

/**
 * What covers a point now, against what would with every hydrant in service. A hydrant that no street reaches in 1,000 ft
 * counts for nothing.
 */
export function coverAt<T extends Covering>(question: CoverQuestion<T>, point: Position): Cover<T> {
  const { index, serves, isInService, walkFt } = question;
  let [beforeGpm, leftGpm] = [0, 0];
  let certain = walkFt !== undefined;
  const counts = creditRings.map(({ toFt }) => ({ toFt, before: 0, left: 0 }));
  const hydrants: Covered<T>[] = [];
  // No street is shorter than the straight line, so the straight circle holds every hydrant that can count.
  for (const { hydrant, distanceFt: straightFt } of hydrantsWithin(index, point, FARTHEST_FT)) {
    if (serves && !serves(hydrant)) continue;
    const distanceFt = walkFt ? walkFt(point, hydrant, FARTHEST_FT) : straightFt;
    if (distanceFt === null || distanceFt > FARTHEST_FT) continue;
    const inService = isInService(hydrant);
    const credit = creditFor(question, hydrant, distanceFt);
    hydrants.push({ hydrant, distanceFt, inService, credit });
    beforeGpm += credit.gpm;
    if (inService) leftGpm += credit.gpm;
    certain &&= credit.certain;
    for (const ring of counts)
      if (distanceFt <= ring.toFt) {
        ring.before += 1;
        if (inService) ring.left += 1;
      }
  }
  return { rings: counts, beforeGpm, leftGpm, certain, hydrants };
}
