import { describe, expect, it } from 'vitest';
import { closingLine, countVitest, sum } from '../../../../infra/local/testing/count.ts';

const test = (status: string, fullName = 'a test') => ({
  status,
  fullName,
  failureMessages: status === 'failed' ? ['expected 1 to be 2\n  at x'] : [],
});
const file = (statuses: string[], status = statuses.includes('failed') ? 'failed' : 'passed') => ({
  name: 'a.test.ts',
  status,
  message: status === 'failed' && statuses.length === 0 ? 'Cannot find module\n more' : '',
  assertionResults: statuses.map((one) => test(one)),
});

describe('counting a vitest run', () => {
  it.each([
    ['all passed', [file(['passed', 'passed'])], 'exit 0', '2 passed, 0 failed', []],
    [
      'one failed',
      [file(['passed', 'failed'])],
      'exit 1',
      '1 passed, 1 failed',
      ['a test: expected 1 to be 2'],
    ],
    [
      'skipped and to do',
      [file(['passed', 'skipped', 'todo'])],
      'exit 0',
      '1 passed, 0 failed, 2 skipped',
      [],
    ],
    [
      'a file that did not load',
      [file(['passed']), file([], 'failed')],
      'exit 1',
      '1 passed, 1 failed',
      ['a.test.ts: Cannot find module'],
    ],
    ['no file', [], 'exit 1', '0 passed, 1 failed', ['executed no test']],
    [
      'only skipped ones',
      [file(['skipped'])],
      'exit 0',
      '0 passed, 1 failed, 1 skipped',
      ['executed no test'],
    ],
    [
      'an error outside the tests',
      [file(['passed'])],
      'exit 1',
      '1 passed, 1 failed',
      ['every test passed, yet it ended with exit 1'],
    ],
    [
      'a crash after the report',
      [file(['passed'])],
      'signal SIGSEGV',
      '1 passed, 1 failed',
      ['every test passed, yet it ended with signal SIGSEGV'],
    ],
  ])('%s', (_, testResults, exit, line, failures) => {
    const counted = countVitest({ testResults }, exit);
    expect(closingLine(counted.counts)).toBe(line);
    expect(counted.failures).toEqual(failures);
  });

  it.each([
    ['no report', null],
    ['half a report', 'half'],
    ['another file', { numPassedTests: 3 }],
  ])('counts %s as a failure', (_, report) => {
    expect(countVitest(report, 'stopped after 5 s')).toEqual({
      counts: { passed: 0, failed: 1, skipped: 0 },
      failures: ['wrote no report (stopped after 5 s)'],
    });
  });

  it('adds up', () => {
    expect(
      sum([
        { passed: 1, failed: 2, skipped: 3 },
        { passed: 10, failed: 20, skipped: 30 },
      ]),
    ).toEqual({ passed: 11, failed: 22, skipped: 33 });
    expect(sum([])).toEqual({ passed: 0, failed: 0, skipped: 0 });
  });
});
