import { describe, expect, it } from 'vitest';
import { stackedBarsSvg } from '../../../shared/drawing/stackedBarsSvg.ts';

const drawn = (rows: { label: string; values: number[] }[]): string =>
  stackedBarsSvg({
    title: 'Money <b>',
    description: 'By year',
    idPrefix: 'f',
    series: [
      { label: 'came', fill: 'solid' },
      { label: 'left', fill: 'open' },
    ],
    rows: rows.map((row) => ({ ...row, note: '$1' })),
  });
/** The bars of the drawing: place and width. The two boxes of the legend come first. */
const bars = (svg: string): number[][] =>
  [...svg.matchAll(/<rect x="([\d.]+)" y="[\d.]+" width="([\d.]+)"/g)]
    .slice(2)
    .map(([, x, width]) => [Number(x), Number(width)]);

describe('bars of parts', () => {
  it('are as long as their values, on one scale, end to end', () => {
    const [a, b, c] = bars(
      drawn([
        { label: '2026', values: [300, 100] },
        { label: '2025', values: [100, 0] },
      ]),
    );
    expect(a![1]! / b![1]!).toBeCloseTo(3, 3);
    expect(b![0]).toBeCloseTo(a![0]! + a![1]!, 1);
    expect(c![1]).toBeCloseTo(b![1]!, 1);
    expect(c![0]).toBe(a![0]);
  });
  it('draw nothing for nothing, and no number that is none', () => {
    const svg = drawn([{ label: '2026', values: [0, 0] }]);
    expect(bars(svg)).toEqual([]);
    expect(svg).not.toMatch(/NaN|Infinity/);
    expect(drawn([])).not.toMatch(/NaN|Infinity/);
  });
  it('carry words as words', () => expect(drawn([])).toContain('Money &lt;b&gt;'));
});
