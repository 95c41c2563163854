import type { Counts } from './step.ts';

/** The part of vitest's JSON report that is counted here. */
interface Report {
  readonly testResults: readonly {
    readonly name: string;
    readonly status: string;
    readonly message?: string;
    readonly assertionResults: readonly {
      readonly fullName: string;
      readonly status: string;
      readonly failureMessages?: readonly string[] | null;
    }[];
  }[];
}

export interface Counted {
  readonly counts: Counts;
  readonly failures: readonly string[];
}

const firstLine = (text: string | undefined): string => (text ?? '').split('\n', 1)[0] ?? '';

/**
 * Counts a vitest run. What the report does not show still counts as one failure, so that no run passes by silence:
 * no report (a crash or a limit), a file that did not load, no test executed, an exit code other than 0 with every
 * test passed (an error outside the tests).
 */
export function countVitest(report: unknown, exit: string): Counted {
  const failures: string[] = [];
  let passed = 0;
  let skipped = 0;
  if (!isReport(report))
    return { counts: { passed: 0, failed: 1, skipped: 0 }, failures: [`wrote no report (${exit})`] };
  for (const file of report.testResults) {
    for (const test of file.assertionResults) {
      if (test.status === 'passed') passed += 1;
      else if (test.status === 'failed')
        failures.push(`${test.fullName}: ${firstLine(test.failureMessages?.[0])}`);
      else skipped += 1;
    }
    if (file.status === 'failed' && !file.assertionResults.some(({ status }) => status === 'failed'))
      failures.push(`${file.name}: ${firstLine(file.message) || 'did not load'}`);
  }
  if (passed + failures.length === 0) failures.push('executed no test');
  else if (failures.length === 0 && exit !== 'exit 0')
    failures.push(`every test passed, yet it ended with ${exit}`);
  return { counts: { passed, failed: failures.length, skipped }, failures };
}

/** The files of a report in which something failed; none when there is no report to go by. */
export const failedFiles = (report: unknown): readonly string[] =>
  isReport(report)
    ? report.testResults.filter(({ status }) => status === 'failed').map(({ name }) => name)
    : [];

/** What failed in the first report and not in the second, by the tests' full names. */
export function heldOnSecondTry(first: unknown, merged: unknown): readonly string[] {
  const failed = (report: unknown): string[] =>
    isReport(report)
      ? report.testResults.flatMap(({ name, status, assertionResults }) => {
          const tests = assertionResults.filter((test) => test.status === 'failed');
          if (tests.length > 0) return tests.map(({ fullName }) => fullName);
          return status === 'failed' ? [name] : [];
        })
      : [];
  const still = new Set(failed(merged));
  return failed(first).filter((name) => !still.has(name));
}

/** The first report with the files that were run again as they came out then; a file missing there stays as it was. */
export function withSecondTry(first: unknown, again: unknown): unknown {
  if (!isReport(first) || !isReport(again)) return first;
  const second = new Map(again.testResults.map((file) => [file.name, file]));
  return { ...first, testResults: first.testResults.map((file) => second.get(file.name) ?? file) };
}

function isReport(value: unknown): value is Report {
  return (
    typeof value === 'object' &&
    value !== null &&
    Array.isArray((value as { testResults?: unknown }).testResults)
  );
}

export const sum = (all: readonly Counts[]): Counts => ({
  passed: all.reduce((total, { passed }) => total + passed, 0),
  failed: all.reduce((total, { failed }) => total + failed, 0),
  skipped: all.reduce((total, { skipped }) => total + skipped, 0),
});

/** The line that ends `npm test`, alone on it. */
export function closingLine({ passed, failed, skipped }: Counts): string {
  return `${passed} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ''}`;
}
