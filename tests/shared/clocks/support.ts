import { clocksOf } from '../../../shared/clocks/clocks.ts';
import type { Deadline } from '../../../shared/clocks/deadline.ts';
import { clockSettings, type ClockRule } from '../../../shared/clocks/settings.ts';
import { effectiveFacts } from '../../../shared/submissions/effective.ts';
import type { Recorded } from '../../../shared/submissions/recorded.ts';
import type { FactKind } from '../../../shared/submissions/kinds.ts';
import type { BodyOf, Fact, Submission } from '../../../shared/submissions/submission.ts';
import type { UtilitySettings } from '../../../shared/utility/settings.ts';
import { fact, onClaim, recorded, uuid } from '../../support/submissions.ts';

/** A rule of no real place. */
export const rule = (over: Partial<ClockRule> & Pick<ClockRule, 'clock' | 'from'>): ClockRule => ({
  count: 30,
  unit: 'calendar-days',
  ifNotWorking: 'stays',
  whose: 'utility',
  citation: 'Invented Code 1-2',
  jurisdiction: 'Nowhere',
  confirmedBy: null,
  ...over,
});

export const settingsWith = (
  rules: readonly ClockRule[],
  more: object = {},
): Pick<UtilitySettings, 'clocks' | 'limitation' | 'timeZone'> => ({
  timeZone: 'America/New_York',
  clocks: clockSettings.parse({ rules, ...more }),
});

export const opened = (over: Partial<BodyOf<'claim-opened'>> = {}): Fact<'claim-opened'> =>
  fact('claim-opened', 1, onClaim(1), over);
export const told = <K extends FactKind>(kind: K, number: number, body: Partial<BodyOf<K>>): Fact<K> =>
  fact(kind, number, onClaim(1), body);
export { uuid };

/** With the packets that bear the demands out, and recorded after all of it: without them no demand counts. */
export function borneOut(submissions: readonly Submission[]): Recorded[] {
  const demanded = new Map(
    submissions.flatMap((one) =>
      one.kind === 'demand-sent' ? [[one.body.revision, one.body.amountCents] as const] : [],
    ),
  );
  const packets = [...demanded].map(([revision, demandCents]) =>
    told('packet-frozen', 900 + revision, { revision, demandCents }),
  );
  return [...packets, ...submissions].map((one) => recorded(one, '2040-01-01T12:00:00Z'));
}

/** The dates of one claim that was struck on 3 March 2026. */
export function dates(
  submissions: readonly Submission[],
  settings: ReturnType<typeof settingsWith>,
  today: string,
  struckOn = '2026-03-03',
): Record<string, Deadline> {
  const { facts } = effectiveFacts(borneOut(submissions));
  return Object.fromEntries(clocksOf({ facts, struckOn, settings, today }).map((one) => [one.id, one]));
}

export const demand = (number: number, sentOn: string, over: object = {}) =>
  told('demand-sent', number, { sentOn, amountCents: 500_000, ...over });
export const answered = (number: number, body: object) =>
  told('deadline-answered', number, { until: null, ...body });

/** Dates after a demand, an offer and a letter: some set for payers, some the utility’s own. */
export const payer = settingsWith([
  rule({
    clock: 'acknowledge-by',
    from: 'demand-sent',
    count: 10,
    unit: 'working-days',
    whose: 'payer-target',
  }),
  rule({ clock: 'answer-by', from: 'demand-sent', count: 15, whose: 'payer-target' }),
  rule({ clock: 'pay-by', from: 'demand-sent', count: 60 }),
  rule({ clock: 'pay-by', from: 'offer-answered', count: 30, whose: 'payer-target' }),
  rule({ clock: 'follow-up-by', from: 'demand-sent', count: 30 }),
  rule({ clock: 'follow-up-by', from: 'letter-sent', count: 14 }),
]);
