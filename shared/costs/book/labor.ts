import * as z from 'zod';
import { problemIssue } from '../../problems/fromZod.ts';
import { holidayRule, weekday } from '../../time/holidays.ts';
import { code, dollars, fraction, hours, multiplier, title } from './decimals.ts';

/** `HH:MM` of the utility's day; 24:00 is its end. */
const clock = z.string().regex(/^(([01]\d|2[0-3]):[0-5]\d|24:00)$/);

/** Hours counted up to whole steps: of each call (an unbroken run of one worker's hours) or of each day. */
export const increment = z.strictObject({
  minutes: z.int().min(1).max(60),
  toward: z.enum(['up', 'nearest']),
  of: z.enum(['call', 'day']),
});

/** What time outside the working hours, or on a holiday, is paid at. */
const premium = z.strictObject({
  multiplier,
  /** Hours that a call is paid for at least; null: as worked. */
  minimumHours: hours.nullable(),
  /** Whether the minimum holds when the call runs into, or straight on from, working hours. */
  minimumWhenAdjoining: z.boolean(),
});

/**
 * When time counts as what. Multipliers never pile up: of those that apply to a moment the highest counts
 * (common practice, no source; 29 CFR 778.201 credits such premiums against overtime).
 */
export const payRules = z.strictObject({
  payRulesId: code,
  title,
  /** Working hours by day of the week, in the utility's time zone; a shift past midnight is two entries. */
  workingHours: z
    .array(
      z
        .strictObject({ days: z.array(weekday).min(1).max(7), from: clock, to: clock })
        .superRefine(({ from, to }, ctx) => {
          if (to <= from) ctx.addIssue(problemIssue('working-hours-end-before-start', ['to']));
        }),
    )
    .max(21),
  /** Hours a call within working hours is paid for at least; null: as worked. */
  workingMinimumHours: hours.nullable(),
  otherHours: premium,
  /** On a holiday; null: a holiday is a day like any other. */
  holiday: premium.nullable(),
  holidays: z.array(holidayRule).max(40),
  /** Past this many hours in the fixed week (29 CFR 778.105); null: not paid. Hours of other jobs come with the work. */
  week: z.strictObject({ startsOn: weekday, overHours: hours, multiplier }).nullable(),
  increment: increment.nullable(),
  authorityId: code,
});
export type PayRules = z.infer<typeof payRules>;

/** Fringe for an hour: a share of that hour's wage, or dollars for each hour. */
const fringeOf = z.union([z.strictObject({ share: fraction }), z.strictObject({ usdPerHour: dollars })]);
export type FringeOf = z.infer<typeof fringeOf>;

export const laborRate = z.strictObject({
  laborClass: code,
  title,
  hourlyUsd: dollars,
  /** Fringe as a share of the hourly rate; "0" where the rate already holds it. */
  fringeFraction: fraction,
  /** Where fringe is an amount, or another one for time paid at a premium. It takes the place of `fringeFraction`. */
  fringe: z.strictObject({ regular: fringeOf, premium: fringeOf }).optional(),
  /** Which pay rules hold for this class; left out: every hour at the hourly rate. */
  payRulesId: code.optional(),
  authorityId: code,
});
