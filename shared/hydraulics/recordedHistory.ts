import { flowTestHistory, type DatedTest, type FlowTestHistory, type Repair } from './flowTestHistory.ts';
import { standardFlowTestSettings, type FlowTestSettings } from './flowTestSettings.ts';
import { flowTestInputFrom, type RecordedTest } from './fromFact.ts';

/** A recorded test of one hydrant with when and why it was made; the body of the form fits. */
export interface RecordedDatedTest {
  readonly submissionId: string;
  /** Its local date, which only the utility's time zone gives. */
  readonly testedOn: string;
  readonly body: RecordedTest & { readonly testedAt: string; readonly purpose: string };
}

const time = (instant: string): number => Date.parse(instant);

/**
 * One hydrant's recorded tests as a history, in one place, so that page and packet say the same of them. A hydrant that
 * was struck is tested again only when it stands again: where the end of its repair was written down after that test, or
 * never, the first test made because of the repair counts as made after it.
 */
export function recordedHistory(
  tests: readonly RecordedDatedTest[],
  repairs: readonly Repair[],
  settings: FlowTestSettings = standardFlowTestSettings,
): FlowTestHistory {
  const dated = tests.map(({ submissionId, testedOn, body }): DatedTest => ({
    testId: submissionId,
    testedAt: body.testedAt,
    testedOn,
    input: flowTestInputFrom(body, { testedOn }),
  }));
  const settled = repairs.map((repair): Repair => {
    const because = tests
      .filter(({ body }) => body.purpose === 'after-repair' && time(body.testedAt) >= time(repair.struckAt))
      .map(({ body }) => body.testedAt);
    const ends = [...(repair.repairedAt === null ? [] : [repair.repairedAt]), ...because];
    return { ...repair, repairedAt: ends.sort((a, b) => time(a) - time(b))[0] ?? null };
  });
  return flowTestHistory(dated, settled, settings);
}
