import type { Lubricant, Wrench } from '../models/wrench.ts';
import { formatNumber, type Reader } from '../units/format.ts';
import { say, type Locale } from '../words/index.ts';

/** Pieces as they are read: whole, or to a thousandth where somebody counted so. */
export const sayQuantity = (quantity: number, locale: Locale): string => formatNumber(quantity, locale, 3);

/** `1 1/8`: a size in sixteenths of an inch as it is stamped on a wrench; another to three decimals. */
function sayInches(size: number, locale: Locale): string {
  let top = Math.round(size * 16);
  if (Math.abs(size * 16 - top) > 1e-9) return formatNumber(size, locale, 3);
  let bottom = 16;
  while (top % 2 === 0 && bottom > 1) [top, bottom] = [top / 2, bottom / 2];
  const whole = Math.floor(top / bottom);
  const rest = top % bottom;
  return [whole > 0 ? String(whole) : '', rest > 0 ? `${rest}/${bottom}` : ''].filter(Boolean).join('\u00a0');
}

/** `Operating nut: pentagon 1 1/2 in, point to flat`. In the unit it is stamped in: a wrench is not converted. */
export const sayWrenchToBring = ({ fits, shape, size, unit, measured }: Wrench, { locale }: Reader): string =>
  say(locale, 'kit.wrench', {
    fits,
    shape,
    size: `${unit === 'in' ? sayInches(size, locale) : formatNumber(size, locale, 1)} ${unit}`,
    // A choice in the catalogue is named without a hyphen.
    measured: (measured ?? 'none').replaceAll('-', '_'),
  });

/** `Stem threads: food-grade grease, by Invented manual, page 19`. */
export const sayLubricant = ({ where, what, manual, page }: Lubricant, { locale }: Reader): string =>
  say(locale, 'kit.lubricant', { where, what, manual: manual ?? 'none', page: page ?? 'none' });
