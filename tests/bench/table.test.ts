import { describe, expect, it } from 'vitest';
import { formatNumber, formatRatio, formatTable, overLimit } from './table.ts';

describe('the bench table', () => {
  it.each([
    [0.012345, '0.0123'],
    [9.876, '9.88'],
    [250, '250'],
    [1234.5, '1,235'],
    [250_000, '250,000'],
    [Number.NaN, 'NaN'],
  ])('writes %d as %s', (value, text) => {
    expect(formatNumber(value)).toBe(text);
  });

  it.each([
    [10, 100, '10 × less'],
    [150, 100, '1.5 × more'],
    [100, 100, '1 × more'],
    [0, 100, ''],
  ])('compares %d with %d', (value, beside, text) => {
    expect(formatRatio(value, beside)).toBe(text);
  });

  it('names what is over the limit that was promised, and a figure that is none', () => {
    const row = (value: number, atMost?: number) => ({
      name: 'script',
      value,
      unit: 'kB',
      ...(atMost === undefined ? {} : { atMost }),
    });
    expect(overLimit([row(149, 150), row(150, 150), row(900)])).toEqual([]);
    expect(overLimit([row(162, 150)])).toEqual(['script: 162 kB, at most 150 were promised']);
    expect(overLimit([row(Number.NaN, 150)])).toHaveLength(1);
  });

  it('lines up, with the alternative where there is one', () => {
    const table = formatTable([
      { name: 'nearest', value: 2, unit: 'ms', beside: { name: 'brute force', value: 4000 } },
      { name: 'fold of 100,000', value: 1500, unit: 'ms' },
    ]);
    expect(table).toBe(
      [
        'measure          value  unit  beside       value  that is',
        '───────────────  ─────  ────  ───────────  ─────  ────────────',
        'nearest              2  ms    brute force  4,000  2,000 × less',
        'fold of 100,000  1,500  ms',
      ].join('\n'),
    );
  });
});
