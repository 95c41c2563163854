import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compareStatements } from '../../shared/costs/compareStatements.ts';
import type { StatementLine } from '../../shared/costs/line.ts';

/** Two statements of the same work, side by side. Expected pairs are worked by hand (common practice, no source). */
let count = 0;
const line = (
  item: string,
  amountCents: number | null,
  more: Partial<StatementLine> = {},
): StatementLine => ({
  lineId: `line-${(count += 1)}`,
  section: 'labor',
  kind: 'labor',
  description: item,
  item,
  quantity: '1',
  unit: 'hour',
  hoursWorked: '1',
  time: null,
  days: [],
  rateUsd: null,
  fraction: null,
  amountCents,
  editionId: '2031-1',
  authority: null,
  dateBasis: { rule: 'day-worked', dates: [] },
  submissionIds: [],
  arithmetic: '',
  ...more,
});
const shown = (before: StatementLine[], after: StatementLine[]): unknown[] =>
  compareStatements({ lines: before }, { lines: after }).map((pair) => [
    pair.before?.amountCents ?? 'none',
    pair.after?.amountCents ?? 'none',
    pair.differenceCents,
  ]);

describe('two statements side by side', () => {
  it('pair the lines about the same thing, whatever their rate, edition and place', () => {
    expect(
      shown(
        [line('ana', 100), line('ben', 200)],
        [line('ben', 250, { editionId: '2031-2' }), line('ana', 90)],
      ),
    ).toEqual([
      [100, 90, -10],
      [200, 250, 50],
    ]);
  });

  it('an hour at a premium is not paired with a regular one', () => {
    const regular = { time: { as: 'working-hours', multiplier: '1' } } as const;
    const premium = { time: { as: 'holiday', multiplier: '2' } } as const;
    expect(shown([line('ana', 100, regular)], [line('ana', 200, premium)])).toEqual([
      [100, 'none', -100],
      ['none', 200, 200],
    ]);
  });

  it('lines that share all of it are paired in their order, and one more of them stands alone', () => {
    expect(
      shown([line('ana', 1), line('ana', 2)], [line('ana', 10), line('ana', 20), line('ana', 40)]),
    ).toEqual([
      [1, 10, 9],
      [2, 20, 18],
      ['none', 40, 40],
    ]);
  });

  it('what only one of them has stands with nothing beside it; a line without an amount counts as none', () => {
    expect(shown([line('ana', 100)], [])).toEqual([[100, 'none', -100]]);
    expect(shown([], [line('ana', 100)])).toEqual([['none', 100, 100]]);
    const [pair] = compareStatements({ lines: [line('ana', 100)] }, { lines: [line('ana', null)] });
    expect(pair).toMatchObject({ after: { amountCents: null }, differenceCents: -100 });
  });

  it('hold every line once, and the differences add up to that of the totals', () => {
    const lines = fc.array(
      fc
        .tuple(fc.constantFrom('ana', 'ben', 'truck'), fc.option(fc.integer({ min: -100_000, max: 100_000 })))
        .map(([item, cents]) => line(item, cents)),
      { maxLength: 12 },
    );
    const total = (of: StatementLine[]): number =>
      of.reduce((sum, { amountCents }) => sum + (amountCents ?? 0), 0);
    fc.assert(
      fc.property(lines, lines, (before, after) => {
        const pairs = compareStatements({ lines: before }, { lines: after });
        expect(pairs.flatMap((pair) => pair.before ?? [])).toEqual(before);
        const ids = (of: StatementLine[]): string[] => of.map(({ lineId }) => lineId).sort();
        expect(ids(pairs.flatMap((pair) => pair.after ?? []))).toEqual(ids(after));
        expect(pairs.reduce((sum, { differenceCents }) => sum + differenceCents, 0)).toBe(
          total(after) - total(before),
        );
      }),
    );
  });
});
