import { say, type Locale, type WordParams } from '../words/index.ts';
import { convert } from './convert.ts';
import type { System, UnitId } from './units.ts';

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

export interface Reader {
  readonly system: System;
  readonly locale: Locale;
}

// One country, one way to write a number: Spanish as it is written in the United States (1,234.5). The comma and point
// of Spain in a claim paper would turn 1,234 gallons into one and a bit for whoever reads the English copy.
const numberLocales: Record<Locale, string> = { en: 'en-US', es: 'es-US' };
const formats = new Map<string, Intl.NumberFormat>();

/** A plain number in the reader's language: at most `decimals` decimals, thousands set apart. */
export function formatNumber(value: number, locale: Locale, decimals: number): string {
  const key = `${locale}${decimals}`;
  let format = formats.get(key);
  if (!format) {
    format = new Intl.NumberFormat(numberLocales[locale], {
      maximumFractionDigits: decimals,
      useGrouping: 'always',
    });
    formats.set(key, format);
  }
  // Without this a reading of -0.01 would be shown as "-0".
  return format.format(Number(value.toFixed(decimals)) === 0 ? 0 : value);
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
export function formatQuantity(value: number, unit: UnitId, { system, locale }: Reader): string {
  if (!Number.isFinite(value)) throw new RangeError(`cannot show ${value} ${unit}`);
  const shown = displays[unit][system];
  return `${formatNumber(convert(value, unit, shown.unit), locale, shown.decimals)} ${unitSymbol(shown.unit, locale)}`;
}

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
