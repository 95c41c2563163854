import { localDate } from '../../costs/days.ts';
import type { PacketContent } from '../../packet/schema.ts';
import { testResults } from '../../packet/testResults.ts';
import type { PacketTest } from '../../packet/testSchema.ts';
import { finding, type Finding } from '../finding.ts';

/**
 * The flow tests, rated anew from their readings. A packet stores readings and prints what follows from them, so a
 * reading that was changed shows on the page; here is what the data say of the tests besides.
 */
export function flowTestFindings(content: PacketContent): Finding[] {
  const { flowTests, earlierTests, hydrant, strike, timeZone } = content;
  const since = Date.parse(strike.since);
  const findings: Finding[] = [];
  const look = (tests: readonly PacketTest[], field: string, isRight: (at: number) => boolean): void => {
    tests.forEach(({ testedAt, testedOn }, index) => {
      const path = `${field}.${index}`;
      const day = localDate(testedAt, timeZone);
      if (day !== testedOn)
        findings.push(finding('test-day', `${path}.testedOn`, { at: testedAt, file: testedOn, own: day }));
      if (!isRight(Date.parse(testedAt)))
        findings.push(finding('test-side', `${path}.testedAt`, { at: testedAt, since: strike.since }));
    });
  };
  look(flowTests, 'flowTests', (at) => at >= since);
  look(earlierTests, 'earlierTests', (at) => at < since);

  const { lastFlowTest } = hydrant;
  const last = earlierTests.at(-1);
  if (lastFlowTest && last) {
    const rated = testResults(content).entryOf(last)?.result?.hydrantClass ?? null;
    if (lastFlowTest.submissionId !== last.submissionId || lastFlowTest.testedAt !== last.testedAt)
      findings.push(
        finding('last-test', 'hydrant.lastFlowTest', { at: lastFlowTest.testedAt, own: last.testedAt }),
      );
    else if (lastFlowTest.hydrantClass !== rated)
      findings.push(
        finding('test-class', 'hydrant.lastFlowTest.hydrantClass', {
          at: last.testedAt,
          file: lastFlowTest.hydrantClass ?? '-',
          own: rated ?? '-',
        }),
      );
  }
  return findings;
}
