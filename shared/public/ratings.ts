import { evaluateRecorded } from '../hydraulics/evaluateRecorded.ts';
import { hydrantClassOf } from '../hydraulics/hydrantClass.ts';
import type { Hydrant } from '../inventory/hydrant.ts';
import { isOneHydrantTest } from '../submissions/forms/flowTest.ts';
import type { Fact } from '../submissions/submission.ts';
import type { PublicTest } from './hydrantPage.ts';
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
    const result = evaluateRecorded(test.body);
    if (!result || result.hydrantClass === null || result.rating.capacityGpm === null) continue;
    return {
      hydrantClass: result.hydrantClass,
      ratedFlowGpm: shown(result.rating.capacityGpm),
      testedOn: localDate(test.body.testedAt, rules.timeZone),
    };
  }
  const ratedFlowGpm = hydrant?.ratedFlowGpm ?? null;
  if (ratedFlowGpm === null) return unrated;
  return { hydrantClass: hydrantClassOf(ratedFlowGpm), ratedFlowGpm: shown(ratedFlowGpm), testedOn: null };
}

/** A test for the public page of its hydrant; readings only where the utility shows flows. */
export function publicTestOf(test: FlowTestFact, { showFlow }: RatingRules): PublicTest | null {
  const result = evaluateRecorded(test.body);
  if (!result) return null;
  const { testedAt, staticPsi, residualPsi, targetResidualPsi } = test.body;
  const { capacityGpm } = result.rating;
  return {
    testedAt,
    hydrantClass: result.hydrantClass,
    oneHydrant: isOneHydrantTest(test.body),
    readings: showFlow
      ? {
          staticPsi,
          residualPsi,
          measuredFlowGpm: result.measuredFlowGpm,
          targetResidualPsi,
          ratedFlowGpm: capacityGpm === null ? null : Math.round(capacityGpm),
        }
      : null,
  };
}
