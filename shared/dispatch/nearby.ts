import { flowTestSettingsFrom, type FlowTestRules } from '../hydraulics/flowTestSettings.ts';
import { classNameOf } from '../hydraulics/hydrantClass.ts';
import { mayServe, type Hydrant } from '../inventory/hydrant.ts';
import { nearestInService, type NearestIndex, type Neighbour } from '../nearest/nearest.ts';
import type { Position } from '../nearest/sphere.ts';
import type { HydrantStatus } from '../outages/hydrantStatus.ts';
import { mayStandAt } from '../public/town.ts';
import { openPlaces } from '../public/openOutages.ts';
import { possiblyStruck } from '../public/possiblyStruck.ts';
import { ratingOf, type FlowTestFact } from '../public/ratings.ts';
import type { StrikeState } from '../strikes/state.ts';
import type { NearbyHydrant } from './notice.ts';

export interface NearbyQuestion {
  readonly point: Position;
  /** The hydrant that is out. */
  readonly self: string | null;
  readonly count: number;
  readonly index: NearestIndex<Hydrant>;
  readonly statuses: readonly HydrantStatus[];
  readonly strikes: readonly StrikeState[];
}

/**
 * The nearest hydrants that may be relied on. Left out: every one that is out, one that its own inventory says is not in
 * use, and one that may be the very one that somebody reported without its number. None for a point far from every
 * hydrant: that point is a mistake.
 */
export function nearbyInService(question: NearbyQuestion): Neighbour<Hydrant>[] {
  const { point, self, count, index, statuses, strikes } = question;
  if (!mayStandAt(index, point)) return [];
  const known = new Set(index.hydrants.map(({ hydrantId }) => hydrantId));
  const places = openPlaces(statuses, strikes);
  const out = new Set(places.flatMap(({ hydrantId }) => hydrantId ?? []));
  const doubtful = possiblyStruck(places, index, (hydrantId) => known.has(hydrantId));
  return nearestInService(
    index,
    point,
    count,
    (hydrant) =>
      mayServe(hydrant) &&
      hydrant.hydrantId !== self &&
      !out.has(hydrant.hydrantId) &&
      !doubtful.has(hydrant.hydrantId),
  );
}

/** How many hydrants a report without a number is said to be of. More than that says nothing. */
const MOST_MAYBE = 4;

/** The hydrants that stand so near a place that was reported without a number that it may be one of them, nearest first. */
export const maybeReported = (point: Position, index: NearestIndex<Hydrant>): string[] =>
  [
    ...possiblyStruck([{ hydrantId: null, reportedPosition: { ...point }, outages: [] }], index, () => true),
  ].slice(0, MOST_MAYBE);

/** As dispatch is told of it: whole feet, and the rating with its date. */
export function nearbyHydrant(
  { hydrant, distanceFt, bearing }: Neighbour<Hydrant>,
  tests: readonly FlowTestFact[],
  { timeZone, flowTest }: { readonly timeZone: string; readonly flowTest?: FlowTestRules | undefined },
): NearbyHydrant {
  const rules = flowTestSettingsFrom(flowTest ?? {});
  const { hydrantClass, ratedFlowGpm, testedOn } = ratingOf(hydrant, tests, {
    timeZone,
    // To firefighters, whatever the public is shown.
    showFlow: true,
    flowTest: rules,
  });
  return {
    hydrantId: hydrant.hydrantId,
    place: hydrant.place,
    distanceFt: Math.round(distanceFt),
    bearing,
    className: hydrantClass === null ? null : classNameOf(hydrantClass, rules.classBands),
    ratedFlowGpm,
    testedOn,
    private: hydrant.private === true,
  };
}
