import * as z from 'zod';
import { payerKinds } from '../submissions/forms/claimOpened.ts';
import { problemIssue } from '../problems/fromZod.ts';
import { relations } from '../problems/relations.ts';
import { holidayRule, weekday } from '../time/holidays.ts';

/** Clocks that a rule may set. */
export const ruledClocks = [
  'acknowledge-by',
  'answer-by',
  'pay-by',
  'follow-up-by',
  'information-due',
  'offer-expires',
  'own-policy-notice',
  'government-notice',
  'limitation',
  'retention-end',
] as const;
/** Every clock; the dates of a payment plan stand in the plan alone. */
export const clockNames = [...ruledClocks, 'instalment-due'] as const;
export type ClockName = (typeof clockNames)[number];

/** What a clock may start from: the day of the strike, or an event of the claim. */
export const starts = [
  'strike',
  'claim-opened',
  'demand-sent',
  'letter-sent',
  'claim-acknowledged',
  'adjuster-assigned',
  'information-asked',
  'information-given',
  'line-disputed',
  'dispute-answered',
  'offer-made',
  'offer-answered',
  'payment-received',
  'claim-denied',
  'claim-referred',
  'restitution-ordered',
  'claim-closed',
  'claim-reopened',
] as const;
export type Start = (typeof starts)[number];

/** From what each clock makes sense; anything else is a slip, and is refused with this list. */
export const startsOf: Readonly<Record<(typeof ruledClocks)[number], readonly Start[]>> = {
  'acknowledge-by': ['demand-sent', 'letter-sent'],
  'answer-by': ['demand-sent', 'letter-sent', 'claim-acknowledged', 'information-given', 'dispute-answered'],
  'pay-by': ['demand-sent', 'offer-answered', 'restitution-ordered'],
  'follow-up-by': [
    'demand-sent',
    'letter-sent',
    'claim-acknowledged',
    'adjuster-assigned',
    'information-given',
    'line-disputed',
    'dispute-answered',
    'offer-made',
    'offer-answered',
    'payment-received',
    'claim-denied',
    'claim-referred',
    'claim-reopened',
  ],
  'information-due': ['information-asked'],
  'offer-expires': ['offer-made'],
  'own-policy-notice': ['strike', 'claim-opened'],
  'government-notice': ['strike', 'claim-opened'],
  limitation: ['strike', 'claim-denied'],
  'retention-end': ['strike', 'payment-received', 'restitution-ordered', 'claim-referred', 'claim-closed'],
};

/** Clocks that may be a target that a rule sets for insurers. All others are the utility's own duty. */
const mayBeTarget: readonly ClockName[] = ['acknowledge-by', 'answer-by', 'pay-by'];

/** Days before the date on which it is warned of, far to near. */
const warnDays = z.array(z.int().min(0).max(3650)).min(1).max(12);
const words = (most: number) => z.string().trim().min(1).max(most);

/**
 * One clock: from which event, how long, by which rule. No rule is built in, because states differ and change: each is
 * the utility's own, with the source that it was taken from, and counsel's name once counsel has confirmed it.
 */
export const clockRule = z
  .strictObject({
    clock: z.enum(ruledClocks),
    from: z.enum(starts),
    count: z.int().min(1).max(20_000),
    /** Months and years end on the day of the same number, or on the month's last when it has none. */
    unit: z.enum(['calendar-days', 'working-days', 'months', 'years']),
    /** What happens when the last day is a Saturday, a Sunday or a holiday. */
    ifNotWorking: z.enum(['next-working-day', 'day-before', 'stays']),
    /** The utility's own date, or the target that a rule sets for insurers, which is no right of the utility's. */
    whose: z.enum(['utility', 'payer-target']),
    citation: words(200),
    /** The state or body whose rule it is; for the utility's own practice, the utility. */
    jurisdiction: words(80),
    /** Null: have counsel confirm. */
    confirmedBy: z.strictObject({ name: words(120), on: z.iso.date() }).nullable(),
    /**
     * Payers it is for. Left out: all; for the notice to the own insurer, claims on the own policy; for the notice to a
     * government, claims on one.
     */
    payerKinds: z.array(z.enum(payerKinds)).min(1).max(7).optional(),
    /** Left out: the setting's. */
    warnDays: warnDays.optional(),
  })
  .check(
    relations(({ clock, from, whose, count, unit }, ctx) => {
      // No rule runs longer than a hundred years; a count of days typed as years would put its date beyond any calendar.
      const most = { 'calendar-days': 20_000, 'working-days': 20_000, months: 1_200, years: 100 }[unit];
      if (count > most) ctx.addIssue(problemIssue('clock-too-long', ['count'], { most, unit }));
      if (!startsOf[clock].includes(from))
        ctx.addIssue(
          problemIssue('clock-starts-elsewhere', ['from'], { clock, allowed: startsOf[clock].join(', ') }),
        );
      if (whose === 'payer-target' && !mayBeTarget.includes(clock))
        ctx.addIssue(problemIssue('clock-is-the-utilitys', ['whose'], { clock }));
    }),
  );
export type ClockRule = z.infer<typeof clockRule>;

/** Who a rule is for, said or understood. */
export function payersOf({ clock, payerKinds: said }: ClockRule): readonly string[] {
  if (said) return said;
  if (clock === 'own-policy-notice') return ['own-policy'];
  if (clock === 'government-notice') return ['government'];
  return payerKinds;
}

/** Clocks of which several rules may apply at once: the earliest date stands, for retention the latest. */
export const oneDateOf: readonly ClockName[] = [
  'limitation',
  'retention-end',
  'own-policy-notice',
  'government-notice',
];

/** Every clock of a utility. Left out: no date is warned of but those that papers name, and the desk says so. */
export const clockSettings = z
  .strictObject({
    rules: z.array(clockRule).max(80),
    /** Days on which neither the utility nor a payer is taken to work. At most as many as leave a working day in each week. */
    holidays: z.array(holidayRule).max(40).default([]),
    /** Working days of the week, 1 is Monday. */
    workWeek: z.array(weekday).min(1).max(7).default([1, 2, 3, 4, 5]),
    /** Days before the date to sue, or to give notice to a government, on which it is warned of. */
    limitationWarnDays: warnDays.default([365, 180, 90, 30]),
    /** The same of every other date. */
    warnDays: warnDays.default([3]),
  })
  .check(
    relations(({ rules }, ctx) => {
      for (const [index, rule] of rules.entries()) {
        if (oneDateOf.includes(rule.clock)) continue;
        const twin = rules
          .slice(0, index)
          .findIndex(
            (other) =>
              other.clock === rule.clock &&
              other.from === rule.from &&
              payersOf(other).some((kind) => payersOf(rule).includes(kind)),
          );
        if (twin >= 0)
          ctx.addIssue(
            problemIssue('clock-rule-twice', ['rules', index], { clock: rule.clock, other: twin + 1 }),
          );
      }
    }),
  );
export type ClockSettings = z.infer<typeof clockSettings>;
