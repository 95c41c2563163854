import { coverAt, type CoverQuestion, type DistanceBy, type WalkFt } from '../fireCover/cover.ts';
import { hoseReach } from '../fireCover/hoseReach.ts';
import type { FireCoverSettings } from '../fireCover/settings.ts';
import type { ClassBand, HydrantClass } from '../hydraulics/hydrantClass.ts';
import { mayServe, type Hydrant } from '../inventory/hydrant.ts';
import { nearestByStreets } from '../nearest/byStreets.ts';
import { nearestInService, type NearestIndex, type Neighbour } from '../nearest/nearest.ts';
import type { PublicCover } from './coverSchema.ts';
import type { MapHydrant } from './mapCells.ts';
import type { PublicPosition } from './position.ts';
import type { Rating } from './ratings.ts';
import type { PublicNearest } from './snapshot.ts';

/** At least this many neighbours are named, however far; more of them only within a hose lay. */
const LEAST_NEAREST = 3;
const MOST_NEAREST = 5;
const HOSE_LAY_FT = 1000;
/** Farther along the streets than this, a mile, the straight line is given: it is no question of hose any more. */
const MOST_WALK_FT = 5280;

export interface SurroundingsInput {
  readonly index: NearestIndex<Hydrant>;
  /** Ids of the hydrants that are out, not re-tested, and possibly the very one that was struck. */
  readonly out: ReadonlySet<string>;
  readonly owing: { readonly has: (hydrantId: string) => boolean };
  readonly mayBeStruck: ReadonlySet<string>;
  readonly rate: (hydrant: Hydrant) => Rating;
  /** Whether a hydrant is one to be counted. */
  readonly serves: (hydrant: Hydrant) => boolean;
  /** What the public is told of a hydrant, wherever it is seen from. */
  readonly describe: (hydrant: Hydrant) => MapHydrant;
  readonly classes: readonly ClassBand[];
  readonly showFlow: boolean;
  readonly walkFt: WalkFt | null;
  readonly settings: FireCoverSettings;
}

/** What is around a place: whom to fall back on, and what covers it. */
export interface Surroundings {
  readonly by: DistanceBy;
  readonly question: CoverQuestion<Hydrant>;
  readonly nearestTo: (position: PublicPosition, self: string | null) => PublicNearest[];
  readonly coverOf: (position: PublicPosition) => PublicCover;
}

export function surroundings(input: SurroundingsInput): Surroundings {
  const { index, out, owing, mayBeStruck, rate, serves, describe, classes, showFlow, walkFt, settings } =
    input;
  const by = walkFt ? 'streets' : 'straight';
  const ratings = new Map<string, Rating>();
  const rating = (hydrant: Hydrant): Rating => {
    const known = ratings.get(hydrant.hydrantId) ?? rate(hydrant);
    ratings.set(hydrant.hydrantId, known);
    return known;
  };
  const inService = ({ hydrantId }: Hydrant): boolean => !out.has(hydrantId);
  const question: CoverQuestion<Hydrant> = {
    index,
    serves,
    isInService: inService,
    flowGpm: (hydrant) => {
      const { ratedFlowGpm, hydrantClass } = rating(hydrant);
      return ratedFlowGpm ?? mostOfClass(hydrantClass, classes);
    },
    ...(walkFt ? { walkFt } : {}),
  };

  const publicNearest = ({ hydrant, distanceFt, bearing }: Neighbour<Hydrant>, measured: DistanceBy) => ({
    ...describe(hydrant),
    distanceFt: Math.round(distanceFt),
    distanceBy: measured,
    hoseReach: hoseReach({ ft: distanceFt, by: measured }, settings.hoseFt),
    bearing,
  });

  return {
    by,
    question,
    nearestTo(position, self) {
      const accept = (hydrant: Hydrant): boolean =>
        mayServe(hydrant) && inService(hydrant) && hydrant.hydrantId !== self;
      const straight = nearestInService(index, position, MOST_NEAREST, accept);
      const walked = walkFt
        ? nearestByStreets(index, position, { count: MOST_NEAREST, mostFt: MOST_WALK_FT, walkFt }, accept)
        : [];
      const reached = new Set(walked.map(({ hydrant }) => hydrant.hydrantId));
      let sure = 0;
      return [
        ...walked.map((near) => publicNearest(near, 'streets')),
        // No street leads there, or none is loaded: better named with its straight line than not at all.
        ...straight
          .filter(({ hydrant }) => !reached.has(hydrant.hydrantId))
          .map((near) => publicNearest(near, 'straight')),
      ]
        .filter(({ distanceFt, distanceBy, maybeStruck }) => {
          const wanted =
            sure < LEAST_NEAREST || (distanceFt <= HOSE_LAY_FT && (!walkFt || distanceBy === 'streets'));
          // One that may be the struck one does not count as a hydrant to fall back on.
          if (wanted && !maybeStruck) sure += 1;
          return wanted;
        })
        .slice(0, MOST_NEAREST);
    },
    coverOf(position) {
      const { rings, beforeGpm, leftGpm, certain, hydrants } = coverAt(question, position);
      const left = hydrants.filter((covered) => covered.inService);
      const count = (is: (covered: (typeof left)[number]) => boolean): number => left.filter(is).length;
      const doubts = {
        noFlow: count(({ credit }) => credit.unknown.includes('flow')),
        noOutlets: count(({ credit }) => credit.unknown.includes('outlets')),
        notRetested: count(({ hydrant }) => owing.has(hydrant.hydrantId)),
        maybeStruck: count(({ hydrant }) => mayBeStruck.has(hydrant.hydrantId)),
        classOnly: !showFlow && hydrants.length > 0,
      };
      return {
        by,
        rings: rings.map((ring) => ({ ...ring })),
        beforeGpm: Math.round(beforeGpm),
        leftGpm: Math.round(leftGpm),
        certain: certain && !doubts.classOnly && doubts.notRetested + doubts.maybeStruck === 0,
        doubts,
      };
    },
  };
}

/** The most that a hydrant of a class gives, where only the class is shown; null for no class and for the highest. */
function mostOfClass(hydrantClass: HydrantClass | null, classes: readonly ClassBand[]): number | null {
  if (hydrantClass === null) return null;
  const at = classes.findIndex((band) => band.hydrantClass === hydrantClass);
  const above = classes[at - 1];
  return above ? above.fromGpm - 1 : null;
}
