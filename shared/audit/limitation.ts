import { lastDay, workCalendar } from '../clocks/count.ts';
import { clockSettings } from '../clocks/settings.ts';
import { ownLimitation } from '../clocks/ownLimitation.ts';
import type { LocalDate } from '../costs/days.ts';
import type { UtilitySettings } from '../utility/settings.ts';
import type { AuditCase } from './case.ts';

/**
 * The last day to sue for a strike, by the utility's own settings: the older one in whole years, or the rules of its
 * clocks that count from the strike and hold for every payer; of several the earliest. Never built in: published tables
 * differ from each other, so each carries its citation and counsel confirms. Null while there is none, or no day to
 * count from.
 */
export function limitationOf(
  settings: Pick<UtilitySettings, 'limitation' | 'clocks'>,
  struckOn: LocalDate,
): AuditCase['limitation'] {
  if (struckOn === '') return null;
  const calendar = workCalendar(settings.clocks ?? noClocks);
  const days = [...ownLimitation(settings), ...(settings.clocks?.rules ?? [])]
    .filter(
      ({ clock, from, payerKinds }) =>
        clock === 'limitation' && from === 'strike' && payerKinds === undefined,
    )
    .map((rule) => ({ lastDay: lastDay(struckOn, rule, calendar), citation: rule.citation }));
  return days.sort((a, b) => a.lastDay.localeCompare(b.lastDay))[0] ?? null;
}

const noClocks = clockSettings.parse({ rules: [] });
