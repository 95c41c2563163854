import { problem, type Problem } from '../problems/problem.ts';
import { HOUR_MS, timeOf, type Extra, type Piece } from './hours.ts';
import { authorityOf, type DraftLine, type LineKind } from './line.ts';
import { holds } from './machineHolds.ts';
import { decimal, dollarText, toCents } from './money.ts';
import type { RateBookEdition } from './rateBook.ts';
import type { WorkRecord } from './work.ts';

/** A machine with the rate that the edition of the strike's day has for it. */
export interface Priced {
  readonly order: string;
  readonly machine: WorkRecord['machines'][number];
  readonly rate: RateBookEdition['machines'][number] | undefined;
  readonly edition: RateBookEdition | null;
  readonly missing: Problem | null;
  readonly date: string;
}

function common({ order, machine, rate, edition, missing, date }: Priced, kind: LineKind) {
  const { machineCode, description } = machine;
  return {
    section: 'machines',
    kind,
    order: `${order}\u0000${kind}`,
    item: machineCode,
    description: rate?.title ?? description,
    hoursWorked: null,
    time: null,
    fraction: null,
    holdsOverhead: holds(rate, 'overhead') ? true : undefined,
    editionId: edition?.editionId ?? null,
    authority: edition && rate ? authorityOf(edition, rate.authorityId) : null,
    dateBasis: { rule: 'strike', dates: date === '' ? [] : [date] },
    problems: rate
      ? []
      : [
          missing ??
            problem('no-machine-rate', '', { machineCode, date, editionId: edition?.editionId ?? '' }),
        ],
  } as const satisfies Partial<DraftLine>;
}

/** By the hour, in use or standing by: hours worked, hours billed and why they differ. */
export function hoursLine(
  priced: Priced,
  kind: 'machine-hours' | 'machine-standby',
  rateUsd: string | null,
  pieces: readonly Piece[],
  extras: readonly Extra[] = [],
): DraftLine {
  const time = timeOf(pieces, extras);
  const dollars = rateUsd === null ? null : decimal(rateUsd).times(time.ms);
  const amountCents = dollars && toCents(dollars, HOUR_MS);
  return {
    ...common(priced, kind),
    quantity: time.quantity,
    unit: 'hour',
    hoursWorked: time.hoursWorked,
    days: time.days,
    rateUsd,
    amountCents,
    exactUsd: dollars ? { numerator: dollars, divisor: HOUR_MS } : undefined,
    submissionIds: time.submissionIds,
    arithmetic:
      amountCents === null
        ? time.spelled
        : `${time.spelled} × $${rateUsd ?? ''}/h = $${dollarText(amountCents)}`,
  };
}

/** By the day: each calendar day of the utility on which the machine was in use, however long. */
export function daysLine(priced: Priced, rateUsd: string, pieces: readonly Piece[]): DraftLine {
  const time = timeOf(pieces);
  const quantity = String(time.days.length);
  const dollars = decimal(rateUsd).times(quantity);
  const amountCents = toCents(dollars);
  return {
    ...common(priced, 'machine-days'),
    quantity,
    unit: 'day',
    days: time.days,
    rateUsd,
    amountCents,
    exactUsd: { numerator: dollars, divisor: 1 },
    submissionIds: time.submissionIds,
    arithmetic: `${quantity} d × $${rateUsd}/d = $${dollarText(amountCents)}`,
  };
}

/** Hours of a machine whose rate is by the mile, with no miles recorded: shown, so that somebody adds them. */
export const unpricedHours = (priced: Priced, pieces: readonly Piece[], why: Problem): DraftLine => ({
  ...hoursLine(priced, 'machine-hours', null, pieces),
  authority: null,
  problems: [why],
});

export function milesLine(priced: Priced, miles: number, submissionIds: readonly string[]): DraftLine {
  const { rate, machine } = priced;
  const quantity = decimal(miles).toFixed();
  const byMile = rate?.unit === 'mile' ? rate.rateUsd : null;
  const dollars = byMile === null ? null : decimal(byMile).times(quantity);
  const amountCents = dollars && toCents(dollars);
  const line = common(priced, 'machine-miles');
  return {
    ...line,
    quantity,
    unit: 'mile',
    days: [],
    rateUsd: byMile,
    amountCents,
    exactUsd: dollars ? { numerator: dollars, divisor: 1 } : undefined,
    authority: byMile === null ? null : line.authority,
    submissionIds,
    arithmetic:
      amountCents === null
        ? `${quantity} mi`
        : `${quantity} mi × $${byMile ?? ''}/mi = $${dollarText(amountCents)}`,
    problems:
      rate && byMile === null
        ? [problem('machine-needs-hours', '', { machineCode: machine.machineCode })]
        : line.problems,
  };
}
