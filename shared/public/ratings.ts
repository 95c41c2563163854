import { evaluateRecorded } from '../hydraulics/evaluateRecorded.ts';
import type { FlowTestSettings } from '../hydraulics/flowTestSettings.ts';
import { hydrantClassOf } from '../hydraulics/hydrantClass.ts';
import type { Hydrant } from '../inventory/hydrant.ts';
import type { Fact } from '../submissions/submission.ts';
import type { PublicOutOfService } from './snapshot.ts';
import { localDate } from './times.ts';

/** A flow test as it stands after its corrections. */
export type FlowTestFact = Pick<Fact<'flow-test'>, 'submissionId' | 'body'>;

export type Rating = Pick<PublicOutOfService, 'hydrantClass' | 'ratedFlowGpm' | 'testedOn'>;
export const unrated: Rating = { hydrantClass: null, ratedFlowGpm: null, testedOn: null };

export const newestFirst = (tests: readonly FlowTestFact[]): FlowTestFact[] =>
  tests.toSorted(
    (a, b) =>
      Date.parse(b.body.testedAt) - Date.parse(a.body.testedAt) || (a.submissionId < b.submissionId ? 1 : -1),
  );

export interface RatingRules {
  readonly timeZone: string;
  readonly showFlow: boolean;
  /** The utility's rules of rating. */
  readonly flowTest: FlowTestSettings;
}

/**
 * The rating of a hydrant: by the newest test that gives one, else by what came with the inventory, undated, else none.
 * A test with too small a drop rates nothing and hides no older rating, which is shown with its own date.
 */
export function ratingOf(
  hydrant: Hydrant | null,
  tests: readonly FlowTestFact[],
  rules: RatingRules,
): Rating {
  const shown = (flowGpm: number): number | null => (rules.showFlow ? Math.round(flowGpm) : null);
  for (const test of newestFirst(tests)) {
    const result = evaluateRecorded(test.body, rules.flowTest);
    if (!result || result.hydrantClass === null || result.rating.capacityGpm === null) continue;
    return {
      hydrantClass: result.hydrantClass,
      ratedFlowGpm: shown(result.rating.capacityGpm),
      testedOn: localDate(test.body.testedAt, rules.timeZone),
    };
  }
  const ratedFlowGpm = hydrant?.ratedFlowGpm ?? null;
  if (ratedFlowGpm === null) return unrated;
  return {
    hydrantClass: hydrantClassOf(ratedFlowGpm, rules.flowTest.classBands),
    ratedFlowGpm: shown(ratedFlowGpm),
    testedOn: null,
  };
}
