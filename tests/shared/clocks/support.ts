import { clocksOf } from '../../../shared/clocks/clocks.ts';
import type { Deadline } from '../../../shared/clocks/deadline.ts';
import { clockSettings, type ClockRule } from '../../../shared/clocks/settings.ts';
import { effectiveFacts } from '../../../shared/submissions/effective.ts';
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

/** The dates of one claim that was struck on 3 March 2026. */
export function dates(
  submissions: readonly Submission[],
  settings: ReturnType<typeof settingsWith>,
  today: string,
  struckOn = '2026-03-03',
): Record<string, Deadline> {
  const { facts } = effectiveFacts(submissions.map((one) => recorded(one)));
  return Object.fromEntries(clocksOf({ facts, struckOn, settings, today }).map((one) => [one.id, one]));
}
