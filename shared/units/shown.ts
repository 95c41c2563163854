import { localeTags, type Locale } from '../words/locales.ts';
import { convert } from './convert.ts';
import type { System, UnitId } from './units.ts';

/* Without the catalogue of words, so that a page's script can write a quantity as the page does. */

/**
 * How a unit is shown in each system and to how many decimals at most. A trailing zero is dropped (2.5 in, 42 psi),
 * halves go away from zero, and the value behind the display is never rounded.
 */
interface Display {
  readonly unit: UnitId;
  readonly decimals: number;
}

const psi: Display = { unit: 'psi', decimals: 1 };
const kPa: Display = { unit: 'kPa', decimals: 0 };
const gpm: Display = { unit: 'gpm', decimals: 0 };
const litresPerMinute: Display = { unit: 'L/min', decimals: 0 };
// Calipers on an outlet read a thousandth of an inch; a tenth of a millimetre is as fine.
const inch: Display = { unit: 'in', decimals: 3 };
const millimetre: Display = { unit: 'mm', decimals: 1 };
const foot: Display = { unit: 'ft', decimals: 1 };
const metre: Display = { unit: 'm', decimals: 1 };
const mile: Display = { unit: 'mi', decimals: 1 };
const kilometre: Display = { unit: 'km', decimals: 1 };
const gallon: Display = { unit: 'gal', decimals: 0 };
const litre: Display = { unit: 'L', decimals: 0 };
const footPound: Display = { unit: 'lbf.ft', decimals: 1 };
const newtonMetre: Display = { unit: 'N.m', decimals: 1 };

const pressure = { us: psi, metric: kPa };
const flow = { us: gpm, metric: litresPerMinute };
const small = { us: inch, metric: millimetre };
const distance = { us: foot, metric: metre };
const road = { us: mile, metric: kilometre };
const volume = { us: gallon, metric: litre };
const torque = { us: footPound, metric: newtonMetre };

/** Every unit has its partner in the other system, so a screen can be read in either. */
export const displays: Readonly<Record<UnitId, Readonly<Record<System, Display>>>> = {
  psi: pressure,
  kPa: pressure,
  bar: pressure,
  gpm: flow,
  MGD: flow,
  'L/s': flow,
  'L/min': flow,
  'm3/h': flow,
  in: small,
  mm: small,
  ft: distance,
  m: distance,
  mi: road,
  km: road,
  gal: volume,
  L: volume,
  m3: volume,
  'lbf.ft': torque,
  'N.m': torque,
};

const formats = new Map<string, Intl.NumberFormat>();

/** A plain number in the reader's language: at most `decimals` decimals, thousands set apart. */
export function formatNumber(value: number, locale: Locale, decimals: number): string {
  const key = `${locale}${decimals}`;
  let format = formats.get(key);
  if (!format) {
    format = new Intl.NumberFormat(localeTags[locale], {
      maximumFractionDigits: decimals,
      useGrouping: 'always',
    });
    formats.set(key, format);
  }
  // Without this a reading of -0.01 would be shown as "-0".
  return format.format(Number(value.toFixed(decimals)) === 0 ? 0 : value);
}

/**
 * A quantity as `formatQuantity` (`format.ts`) writes it, with the unit's sign from wherever the caller has its words.
 *
 * @throws RangeError when the value is not finite: a missing value has its own words and is never shown as a number.
 */
export function writeQuantity(
  value: number,
  unit: UnitId,
  { system, locale }: { readonly system: System; readonly locale: Locale },
  symbolOf: (unit: UnitId) => string,
): string {
  if (!Number.isFinite(value)) throw new RangeError(`cannot show ${value} ${unit}`);
  const shown = displays[unit][system];
  return `${formatNumber(convert(value, unit, shown.unit), locale, shown.decimals)} ${symbolOf(shown.unit)}`;
}
