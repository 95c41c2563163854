import { Temporal } from 'temporal-polyfill';
import type { LocalDate } from '../costs/days.ts';
import type { UtilitySettings } from '../utility/settings.ts';
import type { AuditCase } from './case.ts';

/**
 * The last day to sue for a strike, by the utility's own setting: whole years after its day, 29 February counting as
 * the last of that month. Never built in: published tables differ from each other, so the setting carries its citation
 * and counsel confirms. Null while there is no setting, or no day to count from.
 */
export function limitationOf(
  settings: Pick<UtilitySettings, 'limitation'>,
  struckOn: LocalDate,
): AuditCase['limitation'] {
  if (!settings.limitation || struckOn === '') return null;
  const { years, citation } = settings.limitation;
  return { lastDay: Temporal.PlainDate.from(struckOn).add({ years }).toString(), citation };
}
