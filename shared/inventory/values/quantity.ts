import { convert } from '../../units/convert.ts';
import type { UnitId } from '../../units/units.ts';

/** A unit of an inventory file: those of the project, and sizes written in tenths of an inch (45 for 4½ in). */
export type SourceUnit = UnitId | 'tenth-in';

export interface QuantityText {
  readonly value: number;
  /** The unit as written beside the number; null when there is none. */
  readonly unit: SourceUnit | null;
  /** True when the unit was recognised though misspelled (`2.5ftt`). */
  readonly misspelled: boolean;
}

/** Spellings of each unit, without spaces and in lower case. */
const spellings: Readonly<Record<string, SourceUnit>> = {
  '"': 'in',
  "''": 'in',
  '”': 'in',
  '″': 'in',
  in: 'in',
  'in.': 'in',
  inch: 'in',
  inches: 'in',
  pulg: 'in',
  pulgadas: 'in',
  mm: 'mm',
  dn: 'mm',
  millimeter: 'mm',
  millimeters: 'mm',
  "'": 'ft',
  '’': 'ft',
  '′': 'ft',
  ft: 'ft',
  'ft.': 'ft',
  foot: 'ft',
  feet: 'ft',
  pies: 'ft',
  pie: 'ft',
  m: 'm',
  meter: 'm',
  meters: 'm',
  metre: 'm',
  metres: 'm',
  metros: 'm',
  gpm: 'gpm',
  'gal/min': 'gpm',
  usgpm: 'gpm',
  'g.p.m.': 'gpm',
  'm³/h': 'm3/h',
  'm3/h': 'm3/h',
  'm³/hr': 'm3/h',
  'm3/hr': 'm3/h',
  cmh: 'm3/h',
  'l/min': 'L/min',
  lpm: 'L/min',
  'l/m': 'L/min',
  'lt/min': 'L/min',
  'l/s': 'L/s',
  lps: 'L/s',
  'l/sec': 'L/s',
  'lt/s': 'L/s',
  mgd: 'MGD',
};

/** The unit of a spelling such as `m³/h`, `inches` or `"`, or of a `--unit` choice. Null when it is none. */
export function readUnit(text: string): { unit: SourceUnit; misspelled: boolean } | null {
  const spelled = text.replace(/\s+/g, '').toLowerCase();
  if (spelled === 'tenth-in') return { unit: 'tenth-in', misspelled: false };
  const exact = spellings[spelled];
  if (exact !== undefined) return { unit: exact, misspelled: false };
  // A letter typed twice is the one slip that can be undone with no doubt about what was meant.
  const undoubled = spellings[spelled.replace(/([a-z])\1/g, '$1')];
  return undoubled === undefined ? null : { unit: undoubled, misspelled: true };
}

const number =
  /^(?<whole>[-+]?\d[\d,. ]*\d|[-+]?\d|[-+]?[.,]\d+)(?:\.(?=\D|$))?(?:[ -]?(?<top>\d{1,2})\/(?<bottom>\d{1,2}))?/;
const fraction = /^(?<top>\d{1,2})\/(?<bottom>\d{1,2})/;

/**
 * A number that may carry thousands marks, a decimal comma (`commaIsDecimal`) or a fraction: `1,250`, `2,5`, `2 1/2`,
 * `2-1/2`, `.5`. Null for anything else.
 */
export function readNumber(text: string, commaIsDecimal = false): number | null {
  const plain = text.trim();
  if (plain === '') return null;
  // By far the most common case, and the fast one.
  const simple = Number(plain);
  if (Number.isFinite(simple) && !/^0x|e/i.test(plain)) return simple;
  const parsed = leading(plain, commaIsDecimal);
  return parsed?.rest === '' ? parsed.value : null;
}

/**
 * A number with its unit if it has one: `2.5ft`, `DN150`, `350 m³/h`, `2 1/2"`. Null when it is not a number, or the
 * text behind it is no unit known here (then `unknownUnit` says what it was).
 */
export function readQuantity(
  text: string,
  commaIsDecimal = false,
): QuantityText | { unknownUnit: string } | null {
  const plain = text.trim();
  const bare = readNumber(plain, commaIsDecimal);
  if (bare !== null) return { value: bare, unit: null, misspelled: false };
  const prefixed = /^(?:dn|ø)\s*(?=\d)/i.exec(plain);
  if (prefixed) {
    const value = readNumber(plain.slice(prefixed[0].length), commaIsDecimal);
    return value === null ? null : { value, unit: 'mm', misspelled: false };
  }
  const parsed = leading(plain, commaIsDecimal);
  if (!parsed) return null;
  const unit = readUnit(parsed.rest);
  return unit ? { value: parsed.value, ...unit } : { unknownUnit: parsed.rest };
}

function leading(text: string, commaIsDecimal: boolean): { value: number; rest: string } | null {
  const only = fraction.exec(text);
  if (only) return over(0, only, text);
  const match = number.exec(text);
  if (!match) return null;
  let digits = match.groups?.whole ?? '';
  // "2 1/2": the greedy run of digits and spaces has taken the top of the fraction with it.
  const split = /^(\d+)[ -](\d{1,2})$/.exec(digits);
  const behind = text.slice(match[0].length);
  if (split && behind.startsWith('/')) {
    const bottom = /^\/(\d{1,2})/.exec(behind);
    if (!bottom || Number(bottom[1]) === 0) return null;
    return {
      value: Number(split[1]) + Number(split[2]) / Number(bottom[1]),
      rest: behind.slice(bottom[0].length).trim(),
    };
  }
  digits = digits.replace(/\s/g, '');
  digits = commaIsDecimal
    ? digits.replaceAll('.', '').replace(',', '.')
    : digits.replace(/,(?=\d{3}(?:\D|$))/g, '');
  const value = Number(digits);
  if (!Number.isFinite(value)) return null;
  return over(value, match, text);
}

function over(whole: number, match: RegExpExecArray, text: string): { value: number; rest: string } | null {
  const { top, bottom } = match.groups ?? {};
  const rest = text.slice(match[0].length).trim();
  if (top === undefined) return { value: whole, rest };
  return Number(bottom) === 0 ? null : { value: whole + Number(top) / Number(bottom), rest };
}

/** `value` of `from`, in the unit the inventory keeps. Exact factors; see shared/units. */
export function toUnit(value: number, from: SourceUnit, to: UnitId): number {
  return from === 'tenth-in' ? convert(value / 10, 'in', to) : convert(value, from, to);
}
