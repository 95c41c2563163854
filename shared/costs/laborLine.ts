import { problem } from '../problems/problem.ts';
import type { FringeOf, PayRules } from './book/labor.ts';
import type { EditionFound } from './editions.ts';
import { HOUR_MS, timeOf, type Extra, type Piece } from './hours.ts';
import { authorityOf, timeClasses, type DraftLine } from './line.ts';
import { decimal, dollarText, toCents, type Decimal } from './money.ts';
import type { RateBookEdition } from './rateBook.ts';
import type { TimeAs } from './timeClasses.ts';

/** Time of one worker that is paid alike. */
export interface LaborGroup {
  readonly workerId: string;
  readonly laborClass: string;
  readonly found: EditionFound;
  /** Null without pay rules. */
  readonly time: TimeAs | null;
  /** Those that the class is paid by; null without. */
  readonly rules: PayRules | null;
  readonly pieces: readonly Piece[];
  readonly extras: readonly Extra[];
}

type Rate = RateBookEdition['labor'][number];

/** What an hour costs, exactly, and how it is written: `$12/h × 1.5 × (1 + 0.0765)`. */
function hourOf(
  { hourlyUsd, fringeFraction, fringe }: Rate,
  time: TimeAs | null,
): { readonly usd: Decimal; readonly fraction: string | null; readonly text: string } {
  const multiplier = time?.multiplier ?? '1';
  const atPremium = Number(multiplier) > 1;
  const wage = decimal(hourlyUsd).times(multiplier);
  const wageText = `$${hourlyUsd}/h${atPremium ? ` × ${multiplier}` : ''}`;
  const bears: FringeOf =
    fringe === undefined ? { share: fringeFraction } : atPremium ? fringe.premium : fringe.regular;
  if ('share' in bears) {
    const share = decimal(bears.share);
    return {
      usd: wage.times(share.plus(1)),
      fraction: bears.share,
      text: share.eq(0) ? wageText : `${wageText} × (1 + ${bears.share})`,
    };
  }
  const perHour = decimal(bears.usdPerHour);
  return {
    usd: wage.plus(perHour),
    fraction: null,
    text: perHour.eq(0) ? wageText : `(${wageText} + $${bears.usdPerHour}/h)`,
  };
}

/** The line of a group: hours worked, hours paid and why they differ, the rate, and the amount rounded once. */
export function laborLine({
  workerId,
  laborClass,
  found,
  time,
  rules,
  pieces,
  extras,
}: LaborGroup): DraftLine {
  const { edition } = found;
  const spent = timeOf(pieces, extras);
  const rate = edition?.labor.find((item) => item.laborClass === laborClass);
  const dates = spent.days.map(({ date }) => date);
  const kind = time === null ? '' : `\u0000${timeClasses.indexOf(time.as)}\u0000${time.multiplier}`;
  const base = {
    section: 'labor',
    kind: 'labor',
    order: `${laborClass}\u0000${workerId}\u0000${dates[0] ?? ''}${kind}`,
    item: workerId,
    quantity: spent.quantity,
    unit: 'hour',
    hoursWorked: spent.hoursWorked,
    days: spent.days,
    time,
    dateBasis: { rule: 'day-worked', dates },
    submissionIds: spent.submissionIds,
  } as const;
  if (!edition || !rate)
    return {
      ...base,
      description: laborClass,
      rateUsd: null,
      fraction: null,
      amountCents: null,
      editionId: edition?.editionId ?? null,
      authority: null,
      arithmetic: spent.spelled,
      problems: [
        found.problem ??
          problem('no-labor-rate', '', {
            laborClass,
            date: dates[0] ?? '',
            editionId: found.edition.editionId,
          }),
      ],
    };
  const hour = hourOf(rate, time);
  const payAuthority = rules === null ? null : authorityOf(edition, rules.authorityId);
  const dollars = hour.usd.times(spent.ms);
  const amountCents = toCents(dollars, HOUR_MS);
  return {
    ...base,
    description: rate.title,
    rateUsd: rate.hourlyUsd,
    fraction: hour.fraction,
    amountCents,
    exactUsd: { numerator: dollars, divisor: HOUR_MS },
    editionId: edition.editionId,
    authority: authorityOf(edition, rate.authorityId),
    ...(payAuthority === null ? {} : { payAuthority }),
    arithmetic: `${spent.spelled} × ${hour.text} = $${dollarText(amountCents)}`,
    problems: [],
  };
}
