import { hashTexts } from '../inventory/check/hash.ts';

/** Letters and digits that are not taken for each other over a bad line: no B D E P T V, no 0 1 5 9. */
const letters = 'AFHKMRWXY';
const digits = '234678';

/**
 * What people say on the telephone for one outage: two letters and four digits, `HK 4728`. Follows from what it is of, so
 * the same outage has the same whoever computes it. 105,000 of them; a second outage with the same within days is told
 * apart by its hydrant, which every message names.
 */
export function referenceOf(subject: string, outageId: string): string {
  let left = hashTexts([subject, outageId], new Set());
  const take = (from: string): string => {
    const sign = from.charAt(left % from.length);
    left = Math.floor(left / from.length);
    return sign;
  };
  const word = take(letters) + take(letters);
  return `${word} ${take(digits)}${take(digits)}${take(digits)}${take(digits)}`;
}
