import type { CapacityChange, RatedTest } from '../hydraulics/capacityChange.ts';
import type { FlowTestHistory } from '../hydraulics/flowTestHistory.ts';
import { recordedHistory } from '../hydraulics/recordedHistory.ts';
import type { StrikeState } from '../strikes/state.ts';
import { isOneHydrantTest } from '../submissions/forms/flowTest.ts';
import type { PublicChange, PublicHydrantPage, PublicRepair, PublicTest } from './hydrantPage.ts';
import { newestFirst, type FlowTestFact, type RatingRules } from './ratings.ts';
import { localDate } from './times.ts';

const MOST_TESTS = 10;
const MOST_REPAIRS = 5;

type HydrantTests = Pick<PublicHydrantPage, 'tests' | 'changes' | 'repairs'>;

/**
 * The tests of one hydrant as its public page may tell of them. A test that cannot be one is left out: the form refuses
 * it, and an old one is no reason to stop publishing.
 */
export function hydrantTests(
  tests: readonly FlowTestFact[],
  strikes: readonly Pick<StrikeState, 'strikeId' | 'since' | 'repairedAt'>[],
  rules: RatingRules,
): HydrantTests {
  const { timeZone, showFlow, flowTest } = rules;
  const history = recordedHistory(
    tests.map(({ submissionId, body }) => ({
      submissionId,
      testedOn: localDate(body.testedAt, timeZone),
      body,
    })),
    strikes.map(({ strikeId, since, repairedAt }) => ({ strikeId, struckAt: since, repairedAt })),
    flowTest,
  );
  const facts = new Map(tests.map((test) => [test.submissionId, test]));
  const entries = new Map(history.entries.map((entry) => [entry.testId, entry]));

  const testOf = (testId: string): PublicTest | null => {
    const [fact, entry] = [facts.get(testId), entries.get(testId)];
    if (!fact || !entry?.result) return null;
    const { staticPsi, residualPsi, result } = entry;
    const { assumed: _inside, ...spread } = result.spread;
    const { capacityGpm, residualPsi: ratingResidualPsi } = result.rating;
    return {
      testedAt: entry.testedAt,
      hydrantClass: result.hydrantClass,
      oneHydrant: isOneHydrantTest(fact.body),
      readings: showFlow
        ? {
            staticPsi,
            residualPsi,
            measuredFlowGpm: result.measuredFlowGpm,
            ratingResidualPsi,
            ratedFlowGpm: capacityGpm === null ? null : Math.round(capacityGpm),
            interval: result.interval && {
              lowGpm: result.interval.lowGpm,
              highGpm: result.interval.highGpm,
              classChance: result.interval.classChance,
            },
            spread,
            minimumDropFraction: flowTest.minimumDropFraction,
          }
        : null,
    };
  };
  const changeOf = (change: CapacityChange): PublicChange => ({
    verdict: change.verdict,
    fromTestedAt: entries.get(change.fromTestId)?.testedAt ?? '',
    toTestedAt: entries.get(change.toTestId)?.testedAt ?? '',
    // Whole gallons as the ratings beside them, so that one page never says 4,087 and 4,088 L/min.
    figures: showFlow
      ? { fromGpm: Math.round(change.fromGpm), toGpm: Math.round(change.toGpm), fraction: change.fraction }
      : null,
  });

  return {
    tests: newestFirst(tests)
      .flatMap(({ submissionId }) => testOf(submissionId) ?? [])
      .slice(0, MOST_TESTS),
    changes: latestChanges(history).map(changeOf),
    repairs: history.repairs
      .flatMap(({ strikeId, before, after, change }): PublicRepair[] => {
        const [then, now] = [before && testOf(before.testId), after && testOf(after.testId)];
        const struckAt = strikes.find((strike) => strike.strikeId === strikeId)?.since;
        return then && now && struckAt !== undefined
          ? [{ struckAt, before: then, after: now, change: change && changeOf(change) }]
          : [];
      })
      .toSorted((a, b) => Date.parse(b.struckAt) - Date.parse(a.struckAt))
      .slice(0, MOST_REPAIRS),
  };
}

/** The newest rated test against the one before it, and against the first where that is another. */
function latestChanges({ entries, sinceFirst }: FlowTestHistory): readonly CapacityChange[] {
  const isRated = ({ result }: { readonly result: RatedTest['result'] | null }): boolean =>
    result !== null && result.rating.capacityGpm !== null;
  const last = entries.findLast(isRated)?.change ?? null;
  const both = [last, sinceFirst].filter((change) => change !== null);
  return both.filter(
    ({ fromTestId }, index) => both.findIndex((other) => other.fromTestId === fromTestId) === index,
  );
}
