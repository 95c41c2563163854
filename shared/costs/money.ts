import { Big, type BigConstructor } from 'big.js';

/**
 * Exact decimals for money. A product is exact; the one division that turns it into cents rounds once, half up, by
 * the exact remainder. This is the only place of the project that rounds money.
 */
const Exact: BigConstructor = Big();
Exact.DP = 0;
Exact.RM = 1; // Half up: amounts are never negative, so up is away from zero.

export type Decimal = Big;

export const decimal = (value: string | number): Decimal => new Exact(value);

/**
 * Whole cents of `dollars / divisor`, half a cent up.
 *
 * @throws RangeError beyond what a whole number of cents can hold exactly.
 */
export function toCents(dollars: Decimal, divisor: number | string = 1): number {
  const cents = dollars.times(100).div(divisor).toNumber();
  if (!Number.isSafeInteger(cents))
    throw new RangeError(`${dollars.toString()} dollars is beyond exact cents`);
  return cents;
}

/** Cents as dollars in plain text, for arithmetic: `23450` is `234.50`. */
export function dollarText(cents: number): string {
  const [sign, size] = cents < 0 ? ['-', -cents] : ['', cents];
  return `${sign}${Math.floor(size / 100)}.${String(size % 100).padStart(2, '0')}`;
}

/** Cents as a person reads them: `123456` is `$1,234.56`. The same in every language of one country. */
export function formatCents(cents: number): string {
  const [whole = '', rest = ''] = dollarText(cents).split('.');
  const grouped = whole.replace(/\B(?=(\d{3})+$)/g, ',');
  return grouped.startsWith('-') ? `-$${grouped.slice(1)}.${rest}` : `$${grouped}.${rest}`;
}

/** Dollars within a text, as a person reads them: `2 × $1048.0901` is `2 × $1,048.0901`. Digits past the point stay. */
export const groupedDollars = (text: string): string =>
  text.replaceAll(/\$\d{4,}/g, (dollars) => dollars.replaceAll(/\B(?=(?:\d{3})+$)/g, ','));

/** A decimal to at most `places`, half up, with no trailing zero: for quantities that are shown, never for money. */
export function shownDecimal(numerator: Decimal, divisor: number, places: number): string {
  const power = 10 ** places;
  const scaled = numerator.times(power).div(divisor);
  const digits = scaled.toFixed(0).padStart(places + 1, '0');
  const text = `${digits.slice(0, -places)}.${digits.slice(-places)}`;
  return text.replace(/\.?0+$/, '');
}
