import type { ClockRule, ClockSettings } from '../../../shared/clocks/settings.ts';
import type { HolidayRule } from '../../../shared/time/holidays.ts';

/**
 * Clocks of the demo utility. Every count, citation and jurisdiction is invented and says so: no state's law is meant,
 * and counsel has confirmed none of it. The holidays are the federal ones by rule (5 U.S.C. 6103(a)).
 */
const example = (
  over: Pick<ClockRule, 'clock' | 'from' | 'count' | 'unit' | 'whose'> & Partial<ClockRule>,
  what: string,
): ClockRule => ({
  ifNotWorking: 'next-working-day',
  citation: `Example ${what}`,
  jurisdiction: 'invented',
  confirmedBy: null,
  ...over,
});

/** After each of these somebody looks at the claim again, so that none falls off the desk. */
const followedUp = (count: number, from: readonly ClockRule['from'][]): ClockRule[] =>
  from.map((start) =>
    example(
      { clock: 'follow-up-by', from: start, count, unit: 'calendar-days', whose: 'utility' },
      'office practice 3',
    ),
  );

const onDate = (name: string, month: number, day: number): HolidayRule => ({
  by: 'date',
  name,
  month,
  day,
  observed: true,
});
const onWeekday = (name: string, month: number, weekday: number, nth: 1 | 2 | 3 | 4 | -1): HolidayRule => ({
  by: 'weekday',
  name,
  month,
  weekday,
  nth,
});

export const demoClocks: ClockSettings = {
  rules: [
    example(
      {
        clock: 'acknowledge-by',
        from: 'demand-sent',
        count: 15,
        unit: 'calendar-days',
        whose: 'payer-target',
      },
      'insurance rule 10(a)',
    ),
    example(
      { clock: 'answer-by', from: 'demand-sent', count: 30, unit: 'calendar-days', whose: 'payer-target' },
      'insurance rule 10(b)',
    ),
    example(
      {
        clock: 'answer-by',
        from: 'dispute-answered',
        count: 15,
        unit: 'calendar-days',
        whose: 'payer-target',
      },
      'insurance rule 10(b)',
    ),
    example(
      { clock: 'pay-by', from: 'offer-answered', count: 30, unit: 'calendar-days', whose: 'payer-target' },
      'insurance rule 10(c)',
    ),
    example(
      { clock: 'follow-up-by', from: 'demand-sent', count: 21, unit: 'calendar-days', whose: 'utility' },
      'office practice 3',
    ),
    example(
      { clock: 'follow-up-by', from: 'letter-sent', count: 10, unit: 'working-days', whose: 'utility' },
      'office practice 3',
    ),
    ...followedUp(21, ['information-given', 'dispute-answered', 'claim-referred']),
    // These wait for the utility itself.
    ...followedUp(10, ['line-disputed', 'payment-received', 'claim-denied', 'claim-reopened']),
    example(
      {
        clock: 'information-due',
        from: 'information-asked',
        count: 10,
        unit: 'working-days',
        whose: 'utility',
      },
      'office practice 4',
    ),
    example(
      {
        clock: 'government-notice',
        from: 'strike',
        count: 6,
        unit: 'months',
        whose: 'utility',
        ifNotWorking: 'day-before',
      },
      'claims statute 7',
    ),
    example(
      {
        clock: 'own-policy-notice',
        from: 'strike',
        count: 60,
        unit: 'calendar-days',
        whose: 'utility',
        ifNotWorking: 'day-before',
      },
      'policy condition 2',
    ),
    example(
      {
        clock: 'limitation',
        from: 'strike',
        count: 3,
        unit: 'years',
        whose: 'utility',
        ifNotWorking: 'day-before',
      },
      'limitation statute 12',
    ),
    example(
      {
        clock: 'retention-end',
        from: 'claim-closed',
        count: 5,
        unit: 'years',
        whose: 'utility',
        ifNotWorking: 'stays',
      },
      'records schedule 40',
    ),
    example(
      {
        clock: 'retention-end',
        from: 'restitution-ordered',
        count: 10,
        unit: 'years',
        whose: 'utility',
        ifNotWorking: 'stays',
      },
      'judgment statute 5',
    ),
  ],
  holidays: [
    onDate('New Year’s Day', 1, 1),
    onWeekday('Martin Luther King Jr. Day', 1, 1, 3),
    onWeekday('Washington’s Birthday', 2, 1, 3),
    onWeekday('Memorial Day', 5, 1, -1),
    onDate('Juneteenth', 6, 19),
    onDate('Independence Day', 7, 4),
    onWeekday('Labor Day', 9, 1, 1),
    onWeekday('Columbus Day', 10, 1, 2),
    onDate('Veterans Day', 11, 11),
    onWeekday('Thanksgiving Day', 11, 4, 4),
    onDate('Christmas Day', 12, 25),
  ],
  workWeek: [1, 2, 3, 4, 5],
  limitationWarnDays: [365, 180, 90, 30],
  warnDays: [3],
};
