import { Temporal } from 'temporal-polyfill';
import type { BodyOf } from '../submissions/submission.ts';
import type { LocalDate } from './days.ts';
import { decimal, dollarText, shownDecimal, toCents } from './money.ts';

/** A year of the calendar on the average of four hundred (Gregorian), days: age in years does not hang on leap days. */
const DAYS_PER_YEAR = '365.2425';

export interface CounterCalculation {
  /** Age of the component on the day of the strike, years, to two places; never below zero. */
  readonly ageYears: string;
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
  const days = Math.max(
    0,
    Temporal.PlainDate.from(installedOn).until(Temporal.PlainDate.from(struckOn), { largestUnit: 'day' })
      .days,
  );
  const life = decimal(serviceLifeYears);
  const lifeSpent = decimal(days).gte(life.times(DAYS_PER_YEAR));
  const original = dollarText(originalCostCents);
  // One division, by life and days at once; scaled so that the divisor is whole.
  const depreciationCents = lifeSpent
    ? originalCostCents
    : toCents(decimal(original).times(days), life.times(DAYS_PER_YEAR).toFixed());
  const sumCents = depreciationCents + salvageCents + bettermentCents;
  const creditCents = Math.min(sumCents, originalCostCents);
  const ageYears = shownDecimal(decimal(days).times(10_000), 3_652_425, 2);
  const parts = [
    `$${original} × ${lifeSpent ? '1' : `${ageYears} / ${serviceLifeYears}`} = $${dollarText(depreciationCents)}`,
    ...(salvageCents + bettermentCents === 0
      ? []
      : [
          `$${dollarText(depreciationCents)} + $${dollarText(salvageCents)} + $${dollarText(bettermentCents)} = $${dollarText(sumCents)}`,
        ]),
    ...(sumCents > creditCents ? [`≤ $${dollarText(creditCents)}`] : []),
  ];
  return {
    ageYears,
    depreciationCents,
    salvageCents,
    bettermentCents,
    creditCents,
    arithmetic: parts.join('; '),
    lifeSpent,
  };
}
