import { say, type Locale, type WordParams } from '../words/index.ts';
import { writeQuantity } from './shown.ts';
import type { System, UnitId } from './units.ts';

export { displays, formatNumber } from './shown.ts';

export interface Reader {
  readonly system: System;
  readonly locale: Locale;
}

/** The unit's sign in the reader's language: `psi`, `gpm`, `in` or `pulg`. */
export const unitSymbol = (unit: UnitId, locale: Locale): string =>
  say(locale, `hydraulics.unit.${unit}.symbol`);
/** The unit's full name, for a heading or a screen reader: `US gallons per minute`. */
export const unitName = (unit: UnitId, locale: Locale): string => say(locale, `hydraulics.unit.${unit}.name`);

/**
 * A quantity as a person reads it: `formatQuantity(982.4, 'gpm', { system: 'us', locale: 'en' })` is `982 gpm`, and
 * `3,719 L/min` in metric. Rounding is for display only: psi to 0.1, kPa to 1, gpm and L/min to 1, in to 0.001, mm, ft,
 * m, mi, km and torque to 0.1, gal and L to 1.
 *
 * @throws RangeError when the value is not finite: a missing value has its own words and is never shown as a number.
 */
export const formatQuantity = (value: number, unit: UnitId, reader: Reader): string =>
  writeQuantity(value, unit, reader, (shown) => unitSymbol(shown, reader.locale));

/** The ends of field names that carry a unit. */
const suffixes: readonly (readonly [string, UnitId])[] = [
  ['LbfFt', 'lbf.ft'],
  ['Gpm', 'gpm'],
  ['Gal', 'gal'],
  ['Psi', 'psi'],
  ['Ft', 'ft'],
  ['In', 'in'],
];

/**
 * The parameters of a sentence with every quantity written out for the reader: `{ dropPsi: 5 }` becomes
 * `{ dropPsi: '5 psi' }` or `'34 kPa'`. Sentences in the catalogue then hold no unit of their own. Names that end in no
 * unit pass unchanged.
 */
export function formatParams(params: WordParams, reader: Reader): WordParams {
  return Object.fromEntries(
    Object.entries(params).map(([name, value]) => {
      const unit = suffixes.find(([suffix]) => name.endsWith(suffix))?.[1];
      return [name, unit && typeof value === 'number' ? formatQuantity(value, unit, reader) : value];
    }),
  );
}
