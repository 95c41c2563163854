import { Temporal } from 'temporal-polyfill';
import type { BodyOf } from '../submissions/submission.ts';
import type { LocalDate } from './days.ts';
import { decimal, dollarText, toCents } from './money.ts';

export interface CounterCalculation {
  /** Age of the component on the day of the strike: whole years, and days of the year it was in. */
  readonly age: { readonly years: number; readonly days: number; readonly ofDays: number };
  /** Whole cents. */
  readonly depreciationCents: number;
  readonly salvageCents: number;
  readonly bettermentCents: number;
  /** What all of it would take off, never more than the component cost. Whole cents. */
  readonly creditCents: number;
  /** The sum in signs that every language reads. */
  readonly arithmetic: string;
  /** The component was in use for as long as its life was expected to be, or longer. */
  readonly lifeSpent: boolean;
}

/**
 * What an adjuster would take off for age, betterment and salvage: straight line on the destroyed component,
 * (age ÷ life) × original cost, 23 CFR 645.117(h)(2); credits never exceed cost, (h)(5). A component installed after
 * the strike has no age.
 */
export function counterCalculation(
  {
    installedOn,
    serviceLifeYears,
    originalCostCents,
    salvageCents,
    bettermentCents,
  }: Pick<
    BodyOf<'counter-calculation'>,
    'installedOn' | 'serviceLifeYears' | 'originalCostCents' | 'salvageCents' | 'bettermentCents'
  >,
  struckOn: LocalDate,
): CounterCalculation {
  const age = ageOf(Temporal.PlainDate.from(installedOn), Temporal.PlainDate.from(struckOn));
  const life = decimal(serviceLifeYears);
  // (years + days ÷ ofDays) ÷ life, over one divisor so that there is one division.
  const lived = decimal(age.years).times(age.ofDays).plus(age.days);
  const lifeSpent = lived.gte(life.times(age.ofDays));
  const original = dollarText(originalCostCents);
  const depreciationCents = lifeSpent
    ? originalCostCents
    : toCents(decimal(original).times(lived), life.times(age.ofDays).toFixed());
  const sumCents = depreciationCents + salvageCents + bettermentCents;
  const creditCents = Math.min(sumCents, originalCostCents);
  const years = age.days === 0 ? String(age.years) : `(${age.years} + ${age.days}/${age.ofDays})`;
  const parts = [
    `$${original} × ${lifeSpent ? '1' : `${years} / ${serviceLifeYears}`} = $${dollarText(depreciationCents)}`,
    ...(salvageCents + bettermentCents === 0
      ? []
      : [
          `$${dollarText(depreciationCents)} + $${dollarText(salvageCents)} + $${dollarText(bettermentCents)} = $${dollarText(sumCents)}`,
        ]),
    ...(sumCents > creditCents ? [`≤ $${dollarText(creditCents)}`] : []),
  ];
  return {
    age,
    depreciationCents,
    salvageCents,
    bettermentCents,
    creditCents,
    arithmetic: parts.join('; '),
    lifeSpent,
  };
}

/** Whole years since a day and the days of the year begun, so that an anniversary is a whole number of years. */
function ageOf(installed: Temporal.PlainDate, on: Temporal.PlainDate): CounterCalculation['age'] {
  if (Temporal.PlainDate.compare(on, installed) <= 0) return { years: 0, days: 0, ofDays: 365 };
  const { years } = installed.until(on, { largestUnit: 'year' });
  const last = installed.add({ years });
  const next = installed.add({ years: years + 1 });
  return { years, days: last.until(on).days, ofDays: last.until(next).days };
}
