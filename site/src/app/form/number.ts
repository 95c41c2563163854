/** Vulgar fractions that a phone's keypad offers. */
const vulgar: Readonly<Record<string, number>> = {
  '½': 1 / 2,
  '¼': 1 / 4,
  '¾': 3 / 4,
  '⅛': 1 / 8,
  '⅜': 3 / 8,
  '⅝': 5 / 8,
  '⅞': 7 / 8,
};

/**
 * A number as people write it: `42`, `42.5`, `1,234.5`, and for measures of pipe `2 1/2`, `2½`. Null when it is not one.
 * A comma is a thousands separator or nothing: `2,5` is refused, because guessing wrong would be wrong a hundredfold.
 */
export function readNumber(typed: string): number | null {
  const text = typed.trim().replaceAll('\u00a0', ' ');
  if (/^[+-]?(\d+|\d{1,3}(,\d{3})+)(\.\d*)?$/.test(text) || /^[+-]?\.\d+$/.test(text))
    return Number(text.replaceAll(',', ''));
  const mixed = /^(?:(\d+)[ -])?(\d+)\/(\d+)$/.exec(text);
  if (mixed) {
    const [, whole = '0', over = '', under = ''] = mixed;
    return Number(under) === 0 ? null : Number(whole) + Number(over) / Number(under);
  }
  const sign = vulgar[text.at(-1) ?? ''];
  const before = text.slice(0, -1).trim();
  return sign !== undefined && /^\d*$/.test(before) ? Number(before) + sign : null;
}

/** Whole cents from dollars as typed (`1,234.50`, `$12`); null when it is not an amount of whole cents. */
export function readCents(typed: string): number | null {
  const text = typed.trim().replace(/^\$\s*/, '');
  if (!/^(\d+|\d{1,3}(,\d{3})+)(\.\d{1,2})?$/.test(text)) return null;
  const [dollars = '0', part = ''] = text.replaceAll(',', '').split('.');
  return Number(dollars) * 100 + Number(part.padEnd(2, '0'));
}

/** Cents as they would be typed: `12.50`. */
export const writeCents = (cents: number): string =>
  `${Math.floor(cents / 100)}.${String(cents % 100).padStart(2, '0')}`;

/** A share as it would be typed in percent: what was typed comes back as it was typed, to the last digit. */
export function writePercent(share: number): string {
  for (const digits of [12, 15, 16, 17]) {
    const percent = Number((share * 100).toPrecision(digits));
    if (percent / 100 === share) return String(percent);
  }
  return String(share * 100);
}
