import { withoutInvisible } from '../../packet/invisible.ts';

/**
 * Text as it is compared: how it was broken into lines, spaced or joined on paper does not count, its signs do.
 * Compatibility forms are folded (Unicode NFKC), so that a ligature is its letters and `½` is `1/2`.
 */
export const plain = (text: string): string =>
  withoutInvisible(text)
    .normalize('NFKC')
    .replace(/\u2044/g, '/')
    .replace(/[\u2010\u2011]/g, '-')
    .replace(/\s+/g, '');

/** Whether paper may show this sign so: one that no embedded face has is printed as a question mark. */
export const isPrintedAs = (sign: string | undefined, printed: string | undefined): boolean =>
  sign === printed || (printed === '?' && (sign?.codePointAt(0) ?? 0) > 127);
