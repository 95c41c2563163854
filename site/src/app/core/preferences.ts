import type { System } from '../../../../shared/units/units.ts';
import { isLocale, type Locale } from '../../../../shared/words/index.ts';
import { observable } from './observable.ts';
import { readStored, writeStored } from './storage.ts';

/** Language and units of this device. Until somebody chooses, the utility's own. */
export interface Preferences {
  readonly locale: Locale;
  readonly units: System;
}

const chosenLocale = (): Locale | null => {
  const value = readStored('locale');
  return isLocale(value) ? value : null;
};
const chosenUnits = (): System | null => {
  const value = readStored('units');
  return value === 'us' || value === 'metric' ? value : null;
};

export const preferences = observable<Preferences>({ locale: 'en', units: 'us' });

/** Applies what was chosen here, over the utility's setting, over English and US units. */
export function applyPreferences(utility: Partial<Preferences> | null): void {
  const next: Preferences = {
    locale: chosenLocale() ?? utility?.locale ?? 'en',
    units: chosenUnits() ?? utility?.units ?? 'us',
  };
  const current = preferences.get();
  if (current.locale !== next.locale || current.units !== next.units) preferences.set(next);
  document.documentElement.lang = next.locale;
}

export function chooseLocale(locale: Locale): void {
  writeStored('locale', locale);
  preferences.set({ ...preferences.get(), locale });
  document.documentElement.lang = locale;
}

export function chooseUnits(units: System): void {
  writeStored('units', units);
  preferences.set({ ...preferences.get(), units });
}
