import * as z from 'zod';

/**
 * Where parts are kept, in the utility's own words: a shelf (`Yard, shelf B2`) or a truck (`Truck 1`). Signs that nobody
 * sees would make two places look alike.
 */
export const stockPlace = z
  .string()
  .trim()
  .normalize('NFC')
  .min(1)
  .max(80)
  .regex(/^[^\p{Cc}\p{Cf}\u2028\u2029]+$/u);

/**
 * One name for however it was typed: `truck  1` is `Truck 1`, `bw-gsk` is `BW-GSK`. Only for telling places and part
 * numbers apart; what people see is what somebody wrote.
 */
export const nameKey = (name: string): string =>
  name.normalize('NFC').trim().replace(/\s+/gu, ' ').toUpperCase();
