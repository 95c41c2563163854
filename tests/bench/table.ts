import type { BenchRow } from './row.ts';

const grouped = new Intl.NumberFormat('en-US', { maximumFractionDigits: 0 });

/** Three significant digits say all that a measurement of this kind knows. */
export function formatNumber(value: number): string {
  if (!Number.isFinite(value)) return String(value);
  if (Math.abs(value) >= 1000) return grouped.format(value);
  return String(Number(value.toPrecision(3)));
}

/** How the measure compares with its alternative: `12 × less`, `1.3 × more`. */
export function formatRatio(value: number, beside: number): string {
  if (value === 0 || beside === 0) return '';
  return value >= beside
    ? `${formatNumber(value / beside)} × more`
    : `${formatNumber(beside / value)} × less`;
}

/** What is over its limit, a sentence each. */
export const overLimit = (rows: readonly BenchRow[]): string[] =>
  rows.flatMap(({ name, value, unit, atMost }) =>
    // A figure that is none keeps no promise.
    atMost === undefined || value <= atMost
      ? []
      : [`${name}: ${formatNumber(value)} ${unit}, at most ${formatNumber(atMost)} were promised`],
  );

export function formatTable(rows: readonly BenchRow[]): string {
  const cells = [
    ['measure', 'value', 'unit', 'beside', 'value', 'that is'],
    ...rows.map(({ name, value, unit, beside }) => [
      name,
      formatNumber(value),
      unit,
      beside?.name ?? '',
      beside ? formatNumber(beside.value) : '',
      beside ? formatRatio(value, beside.value) : '',
    ]),
  ];
  const numeric = new Set([1, 4]);
  const widths = (cells[0] ?? []).map((_, column) =>
    Math.max(...cells.map((row) => row[column]?.length ?? 0)),
  );
  const line = (row: readonly string[]): string =>
    row
      .map((cell, column) =>
        numeric.has(column) ? cell.padStart(widths[column] ?? 0) : cell.padEnd(widths[column] ?? 0),
      )
      .join('  ')
      .trimEnd();
  const [head = [], ...body] = cells;
  return [line(head), widths.map((width) => '─'.repeat(width)).join('  '), ...body.map(line)].join('\n');
}
