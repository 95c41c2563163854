import type { Problem } from '../problems/problem.ts';
import { capacityChange, type CapacityChange, type RatedTest } from './capacityChange.ts';
import { evaluateFlowTest, type FlowTestResult } from './evaluateFlowTest.ts';
import { flowTestProblems, type FlowTestInput, type PreviousTest } from './flowTestInput.ts';
import { standardFlowTestSettings, type FlowTestSettings } from './flowTestSettings.ts';

/** One test of the hydrant, as it stands after its corrections. */
export interface DatedTest {
  readonly testId: string;
  /** UTC instant. */
  readonly testedAt: string;
  /** The same as a local date, for calibrations and sentences. */
  readonly testedOn: string;
  readonly input: FlowTestInput;
}

export interface HistoryEntry {
  readonly testId: string;
  readonly testedAt: string;
  readonly testedOn: string;
  readonly staticPsi: number;
  readonly residualPsi: number;
  /** Null for readings that cannot be a test; `problems` then says why. */
  readonly result: FlowTestResult | null;
  readonly problems: readonly Problem[];
  /** Against the last test before it that gave a rating. */
  readonly change: CapacityChange | null;
}

export interface FlowTestHistory {
  /** Oldest first. */
  readonly entries: readonly HistoryEntry[];
  /** The latest rated test against the first one: a slow loss hides from test to test. */
  readonly sinceFirst: CapacityChange | null;
  /** Around each repair: the last rated test before it and the first after. */
  readonly repairs: readonly RepairComparison[];
}

export interface Repair {
  readonly strikeId: string;
  /** When it was struck, and when the repair was complete; null while it is not. UTC instants. */
  readonly struckAt: string;
  readonly repairedAt: string | null;
}

export interface RepairComparison {
  readonly strikeId: string;
  readonly before: RatedTest | null;
  readonly after: RatedTest | null;
  /** Null until there are both. */
  readonly change: CapacityChange | null;
}

const previousOf = ({ testedOn, staticPsi, residualPsi, result }: RatedTest): PreviousTest => ({
  testedOn,
  staticPsi,
  residualPsi,
  measuredFlowGpm: result.measuredFlowGpm,
});

const isRated = ({ result }: RatedTest): boolean => result.rating.capacityGpm !== null;

/**
 * A hydrant's tests in the order of their days, each against the one before, the latest against the first, and around
 * each repair. The doubts of a test then hold what only the last one can raise (a static that jumped).
 */
export function flowTestHistory(
  tests: readonly DatedTest[],
  repairs: readonly Repair[] = [],
  settings: FlowTestSettings = standardFlowTestSettings,
): FlowTestHistory {
  const ordered = tests.toSorted(
    (a, b) => Date.parse(a.testedAt) - Date.parse(b.testedAt) || (a.testId < b.testId ? -1 : 1),
  );
  const evaluated: RatedTest[] = [];
  const entries = ordered.map(({ testId, testedAt, testedOn, input }): HistoryEntry => {
    const { staticPsi, residualPsi } = input;
    const head = { testId, testedAt, testedOn, staticPsi, residualPsi };
    const problems = flowTestProblems(input);
    if (problems.length > 0) return { ...head, result: null, problems, change: null };
    const last = evaluated.at(-1);
    const previous = input.previous ?? (last && previousOf(last));
    const result = evaluateFlowTest({ ...input, testedOn, previous }, settings);
    const test: RatedTest = { ...head, result };
    const lastRated = evaluated.findLast(isRated);
    evaluated.push(test);
    return {
      ...head,
      result,
      problems,
      change: lastRated && isRated(test) ? capacityChange(lastRated, test, settings) : null,
    };
  });
  const rated = evaluated.filter(isRated);
  const [first] = rated;
  const latest = rated.at(-1);
  return {
    entries,
    sinceFirst: first && latest && first !== latest ? capacityChange(first, latest, settings) : null,
    repairs: repairs.map((repair) => compareRepair(rated, repair, settings)),
  };
}

function compareRepair(
  rated: readonly RatedTest[],
  { strikeId, struckAt, repairedAt }: Repair,
  settings: FlowTestSettings,
): RepairComparison {
  const before = rated.findLast(({ testedAt }) => Date.parse(testedAt) < Date.parse(struckAt)) ?? null;
  const after =
    repairedAt === null
      ? null
      : (rated.find(({ testedAt }) => Date.parse(testedAt) >= Date.parse(repairedAt)) ?? null);
  return {
    strikeId,
    before,
    after,
    change: before && after ? capacityChange(before, after, settings) : null,
  };
}
