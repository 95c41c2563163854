import { problem, type Problem } from '../../problems/problem.ts';
import type { ScheduleRow } from './scheduleRow.ts';

/** A rate so many times the middle one of its name, or so small a part of it, is looked at (common practice, no source). */
const FAR_FROM_THE_MIDDLE = 5;

/** The first number in a size or a power: `to 30`, `to15`, `12-CY`, `19,000 LBS`. Null where there is none. */
export function sizeNumber(text: string): number | null {
  const found = /\d{1,3}(?:,\d{3})+(?:\.\d+)?|\d+(?:\.\d+)?|\.\d+/.exec(text)?.[0];
  return found === undefined ? null : Number(found.replaceAll(',', ''));
}

/** What a size is measured in, so that 14 ft is not set beside 103 lbs: its letters. */
const measureOf = (text: string): string => text.toLowerCase().replaceAll(/[^a-z"']/g, '');

/** A row's size among its name: by power where all have one, else by a capacity in one measure. */
function bySize(rows: readonly ScheduleRow[]): Map<ScheduleRow, number> | null {
  const powers = rows.map(({ hp }) => sizeNumber(hp));
  if (powers.every((power) => power !== null))
    return new Map(rows.map((row, at) => [row, powers[at] as number]));
  const sizes = rows.map(({ size }) => sizeNumber(size));
  const measures = new Set(rows.map(({ size }) => measureOf(size)));
  if (sizes.every((size) => size !== null) && measures.size === 1)
    return new Map(rows.map((row, at) => [row, sizes[at] as number]));
  return null;
}

const groups = <K>(rows: readonly ScheduleRow[], key: (row: ScheduleRow) => K): ScheduleRow[][] => {
  const found = new Map<K, ScheduleRow[]>();
  for (const row of rows) found.set(key(row), [...(found.get(key(row)) ?? []), row]);
  return [...found.values()].filter((each) => each.length > 1);
};

function middle(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const half = sorted.length / 2;
  return sorted.length % 2 === 1
    ? (sorted[Math.floor(half)] ?? 0)
    : ((sorted[half - 1] ?? 0) + (sorted[half] ?? 0)) / 2;
}

/**
 * What is odd about rows beside each other: a code that stands twice; machines of one name, size and power at different
 * rates; a bigger machine that costs less than a smaller one; a rate far from the others of its name. All of them occur
 * in schedules as published, so they are shown and not put right.
 */
export function doubtsAmong(rows: readonly ScheduleRow[]): Map<ScheduleRow, Problem[]> {
  const doubts = new Map<ScheduleRow, Problem[]>();
  const add = (row: ScheduleRow, found: Problem): void => {
    doubts.set(row, [...(doubts.get(row) ?? []), found]);
  };
  for (const twice of groups(
    rows.filter(({ code }) => code !== ''),
    ({ code }) => code.toLowerCase(),
  ))
    for (const row of twice)
      add(
        row,
        problem('schedule-code-twice', 'code', {
          code: row.code,
          lines: twice.map(({ line }) => line).join(', '),
        }),
      );

  const priced = rows.filter(({ unit, rateUsd }) => unit !== null && rateUsd !== null);
  const named = (row: ScheduleRow): string => `${row.equipment.toLowerCase()}\u0000${row.unit ?? ''}`;
  for (const alike of groups(priced, named)) {
    for (const same of groups(alike, ({ size, hp }) => `${size}\u0000${hp}`.toLowerCase()))
      if (new Set(same.map(({ rateUsd }) => Number(rateUsd))).size > 1)
        for (const row of same)
          add(
            row,
            problem('schedule-same-machine-other-rate', 'rate', {
              codes: same
                .filter((other) => other !== row)
                .map(({ code, rateUsd }) => `${code} ($${rateUsd ?? ''})`)
                .join(', '),
            }),
          );
    const sizes = bySize(alike);
    if (sizes)
      for (const row of alike) {
        const smaller = alike
          .filter((other) => (sizes.get(other) ?? 0) < (sizes.get(row) ?? 0))
          .filter((other) => Number(other.rateUsd) > Number(row.rateUsd))
          .sort((a, b) => Number(b.rateUsd) - Number(a.rateUsd))[0];
        if (smaller)
          add(
            row,
            problem('schedule-bigger-cheaper', 'rate', {
              code: smaller.code,
              rate: smaller.rateUsd ?? '',
              own: row.rateUsd ?? '',
            }),
          );
      }
    if (alike.length < 3) continue;
    const rate = middle(alike.map(({ rateUsd }) => Number(rateUsd)));
    for (const row of alike) {
      const times = Number(row.rateUsd) / rate;
      if (times > FAR_FROM_THE_MIDDLE || times < 1 / FAR_FROM_THE_MIDDLE)
        add(row, problem('schedule-rate-far', 'rate', { rate: row.rateUsd ?? '', middle: rate.toFixed(2) }));
    }
  }
  return doubts;
}
