import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';

/** The table of faults names tests and alarms that are there. */
const repository = join(import.meta.dirname, '..', '..');
const read = (file: string): string => readFileSync(join(repository, file), 'utf8');
const alarms = read('infra/aws/watch/alarms.ts');
const rows = read('docs/faults.md')
  .split('\n')
  .filter((line) => /^\| (?!fault |---)/.test(line))
  .map((line) => line.split('|').map((cell) => cell.trim()));

it('has a row for each fault, with six columns', () => {
  expect(rows.length).toBeGreaterThan(40);
  for (const row of rows) expect([row[1], row.length]).toEqual([row[1], 8]);
});

describe.each(rows.map((row) => [row[1] ?? '', row[2] ?? '', row[5] ?? '', row[6] ?? ''] as const))(
  '%s (%s)',
  (_fault, _where, alarm, test) => {
    it('is made to happen by a test that exists', () => {
      const [, file = '', title = ''] = /^`(tests\/[\w/.]+)` › (.+)$/.exec(test) ?? [];
      expect(read(file)).toContain(title);
    });

    it('rings an alarm that exists, or none is needed', () => {
      if (alarm === '—') return;
      expect(alarms).toMatch(new RegExp(`\\b${/^`(\w+)`$/.exec(alarm)?.[1] ?? 'no alarm'}\\b`));
    });
  },
);
