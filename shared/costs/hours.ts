import { problem } from '../problems/problem.ts';
import { LONGEST_STRETCH_MS, localDate, splitByDay } from './days.ts';
import { distinctSorted, groupBy, spell, type DateRule, type DraftLine } from './line.ts';
import { decimal, shownDecimal } from './money.ts';
import type { Span, Stretch } from './stretches.ts';

export const HOUR_MS = 3_600_000;

/** Hours of the rate book as whole milliseconds; a hundredth of an hour is 36 s. */
export const msOfHours = (hours: string): number => decimal(hours).times(HOUR_MS).toNumber();

/** How long spans that do not overlap lasted together. */
export const spanMs = (spans: readonly Span[]): number =>
  spans.reduce((ms, { fromMs, toMs }) => ms + toMs - fromMs, 0);

/** Stretches short enough to be billed, and those that nobody can have meant. */
export function billable(stretches: readonly Stretch[]): {
  readonly short: readonly Stretch[];
  readonly tooLong: readonly Stretch[];
} {
  const fits = ({ fromMs, toMs }: Stretch): boolean => toMs - fromMs <= LONGEST_STRETCH_MS;
  return { short: stretches.filter(fits), tooLong: stretches.filter((stretch) => !fits(stretch)) };
}

/**
 * Stretches that are too long, as a line without an amount: left out without a line, the bill would pass for whole. Its
 * days are not counted out, since they may be thousands.
 */
export function tooLongLine(
  what: Pick<DraftLine, 'section' | 'kind' | 'item' | 'description'> & { readonly rule: DateRule },
  stretches: readonly Stretch[],
  timeZone: string,
): DraftLine {
  const { rule, ...line } = what;
  const ms = stretches.reduce((total, { fromMs, toMs }) => total + toMs - fromMs, 0);
  return {
    ...line,
    order: `\uffff${line.kind}\u0000${line.item}\u0000${line.description}`,
    quantity: shownHours(ms),
    unit: 'hour',
    hoursWorked: shownHours(ms),
    time: null,
    days: [],
    rateUsd: null,
    fraction: null,
    amountCents: null,
    editionId: null,
    authority: null,
    dateBasis: {
      rule,
      dates: distinctSorted(
        stretches.map(({ fromMs }) => localDate(new Date(fromMs).toISOString(), timeZone)),
      ),
    },
    submissionIds: distinctSorted(stretches.map(({ submissionId }) => submissionId)),
    arithmetic: spell(ms),
    problems: [problem('stretch-too-long', '', { item: line.item })],
  };
}

/** What a stretch lasted on one day of the utility's calendar. */
export interface Piece {
  readonly date: string;
  readonly fromMs: number;
  readonly toMs: number;
  readonly ms: number;
  readonly submissionId: string;
}

/** Time that is paid and was not worked (below zero: worked and not paid), and why, in signs: `(2 h < 3 h)`. */
export interface Extra {
  readonly date: string;
  /** Its place in the order of telling, a moment; those of one moment with the same reason are told as one. */
  readonly unitMs: number;
  readonly ms: number;
  readonly why: string;
  readonly submissionId: string;
}

const byDate = (pieces: readonly Piece[]): { date: string; ms: number }[] =>
  groupBy(pieces, ({ date }) => date).map(([date, of]) => ({
    date,
    ms: of.reduce((sum, { ms }) => sum + ms, 0),
  }));

/** What is added or taken off, each reason of each call once, in the order of time, steps before minimums. */
function told(extras: readonly Extra[]): { readonly ms: number; readonly why: string }[] {
  const byUnit = new Map<string, { unitMs: number; ms: number; why: string }>();
  for (const { unitMs, ms, why } of extras) {
    const key = `${unitMs} ${why}`;
    byUnit.set(key, { unitMs, why, ms: (byUnit.get(key)?.ms ?? 0) + ms });
  }
  return [...byUnit.values()].sort((a, b) => a.unitMs - b.unitMs);
}

const shownHours = (ms: number): string => shownDecimal(decimal(ms), HOUR_MS, 4);

/** What a line of hours says of its time, whoever or whatever worked. */
export interface LineTime {
  /** Paid. */
  readonly ms: number;
  readonly quantity: string;
  readonly hoursWorked: string;
  readonly days: { date: string; seconds: number }[];
  readonly submissionIds: string[];
  /** From hours worked, day by day, to hours paid: `1 h + 1 h + 1 h (2 h < 3 h) = 3 h`. */
  readonly spelled: string;
}

export function timeOf(pieces: readonly Piece[], extras: readonly Extra[] = []): LineTime {
  const worked = byDate(pieces);
  const onlyPaid = distinctSorted(extras.map(({ date }) => date)).map((date) => ({ date, ms: 0 }));
  const days = worked.length > 0 ? worked : onlyPaid;
  const workedMs = worked.reduce((sum, day) => sum + day.ms, 0);
  const ms = extras.reduce((sum, extra) => sum + extra.ms, workedMs);
  const terms = [
    ...days.map((day, index) => `${index === 0 ? '' : ' + '}${spell(day.ms)}`),
    ...told(extras).map((extra) => ` ${extra.ms < 0 ? '-' : '+'} ${spell(Math.abs(extra.ms))} ${extra.why}`),
  ];
  return {
    ms,
    quantity: shownHours(ms),
    hoursWorked: shownHours(workedMs),
    days: days.map((day) => ({ date: day.date, seconds: day.ms / 1000 })),
    submissionIds: distinctSorted([...pieces, ...extras].map(({ submissionId }) => submissionId)),
    spelled: terms.length > 1 ? `${terms.join('')} = ${spell(ms)}` : terms.join(''),
  };
}

export const piecesOf = (stretches: readonly Stretch[], timeZone: string): Piece[] =>
  stretches.flatMap(({ fromMs, toMs, submissionId }) =>
    splitByDay(fromMs, toMs, timeZone).map((slice) => ({
      date: slice.date,
      fromMs: slice.fromMs,
      toMs: slice.toMs,
      ms: slice.ms,
      submissionId,
    })),
  );
