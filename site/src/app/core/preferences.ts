import type { System } from '../../../../shared/units/units.ts';
import { isLocale, type Locale } from '../../../../shared/words/index.ts';
import { loadAllWords, loadFirstWords } from '../words/load.ts';
import { observable } from './observable.ts';
import { readStored, writeStored } from './storage.ts';

/** How the screen looks: as the device has it, or chosen here; `sunlight` is black on white and bolder. */
export const looks = ['auto', 'light', 'dark', 'sunlight'] as const;
export type Look = (typeof looks)[number];

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

const chosenLook = (): Look => looks.find((look) => look === readStored('look')) ?? 'auto';
/** The style sheets follow the root element (`tokens.css`). */
function showLook(look: Look): void {
  if (look === 'auto') delete document.documentElement.dataset['look'];
  else document.documentElement.dataset['look'] = look;
}
export const look = observable<Look>('auto');

export const preferences = observable<Preferences>({ locale: 'en', units: 'us' });

/** Once true, a change of language waits for its words; before that the start of the app does. */
const drawn = { yes: false };
export const wordsAreDrawn = (): void => {
  drawn.yes = true;
};

/** A language without its words would be a screen of empty labels: it is taken when they are here. */
async function take(next: Preferences): Promise<void> {
  if (drawn.yes && next.locale !== preferences.get().locale) {
    if (!(await loadFirstWords(next.locale))) return;
    void loadAllWords(next.locale);
  }
  preferences.set(next);
  document.documentElement.lang = next.locale;
}

/** Applies what was chosen here, over the utility's setting, over English and US units. */
export function applyPreferences(utility: Partial<Preferences> | null): void {
  // Whatever language stands: who chose a look has it after every reload.
  look.set(chosenLook());
  showLook(look.get());
  const next: Preferences = {
    locale: chosenLocale() ?? utility?.locale ?? 'en',
    units: chosenUnits() ?? utility?.units ?? 'us',
  };
  const current = preferences.get();
  if (current.locale !== next.locale || current.units !== next.units) void take(next);
  else document.documentElement.lang = next.locale;
}

export function chooseLocale(locale: Locale): void {
  writeStored('locale', locale);
  void take({ ...preferences.get(), locale });
}

export function chooseUnits(units: System): void {
  writeStored('units', units);
  preferences.set({ ...preferences.get(), units });
}

export function chooseLook(next: Look): void {
  writeStored('look', next);
  look.set(next);
  showLook(next);
}
