import type { UtilitySettings } from '../utility/settings.ts';
import type { ClockRule } from './settings.ts';

/** The setting that was there before the rules were, as a rule: whole years after the strike's day. */
export function ownLimitation({ limitation }: Pick<UtilitySettings, 'limitation'>): ClockRule[] {
  if (!limitation) return [];
  return [
    {
      clock: 'limitation',
      from: 'strike',
      count: limitation.years,
      unit: 'years',
      ifNotWorking: 'stays',
      whose: 'utility',
      citation: limitation.citation,
      jurisdiction: '',
      confirmedBy: null,
    },
  ];
}
