import * as z from 'zod';
import { damageClasses } from '../../strikes/damage.ts';
import { code, dollars, fraction, title } from './decimals.ts';

/** What an addition may be taken on: lines as they print, so that a reader can add up its base. */
export const overheadBases = [
  'labor',
  'labor-regular',
  'labor-premium',
  'machines',
  'stock',
  'invoiced-parts',
  'handling',
  'sales-tax',
  'contractors',
  'water',
  'flow-test',
  'fees',
] as const;

/**
 * A share on stated classes of lines, with its authority: fringe, general administration, stores, a contractor's markup.
 * `onOverheads` makes one stand on another, so that a compound factor is a chain of shares. A machine whose rate holds
 * overhead never enters a base.
 */
export const overhead = z.strictObject({
  overheadId: code,
  title,
  fraction,
  on: z.array(z.enum(overheadBases)).max(overheadBases.length),
  onOverheads: z.array(code).max(20),
  /** Never more than this; null: no limit. */
  limitUsd: dollars.nullable(),
  authorityId: code,
});

/** What a flat price may stand in for. */
export const coverable = ['labor', 'machines', 'materials', 'contractors', 'water', 'flow-test'] as const;

/** One price for a kind of repair, in place of time and materials; `extras` are billed beside it all the same. */
export const flatTariff = z.strictObject({
  tariffId: code,
  title,
  damage: z.array(z.enum(damageClasses)).min(1),
  usd: dollars,
  covers: z.array(z.enum(coverable)).min(1).max(coverable.length),
  extras: z.strictObject({
    laborClasses: z.array(code).max(200),
    machineCodes: z.array(code).max(200),
    partNumbers: z.array(code).max(500),
  }),
  authorityId: code,
});

/** So much for each strike, for all kinds of damage (empty list) or some. */
export const jobFee = z.strictObject({
  feeId: code,
  title,
  usd: dollars,
  damage: z.array(z.enum(damageClasses)).max(damageClasses.length),
  authorityId: code,
});

export const salesTax = z.strictObject({
  fraction,
  on: z.array(z.enum(['stock', 'invoiced-parts', 'handling', 'contractors'])).min(1),
  authorityId: code,
});

/** Water by the utility's unit. `basis` says what the price is: what it sells at, or what it costs to produce. */
export const waterPrice = z.strictObject({
  usd: dollars,
  per: z.enum(['1000-gal', '100-ft3', 'm3']),
  basis: z.enum(['retail', 'wholesale', 'production-cost', 'tariff']),
  authorityId: code,
});

/** The whole statement to a coarser step than the cent, as some tariffs say ("to the nearest ten dollars"). */
export const totalRounding = z.strictObject({
  nearestUsd: dollars,
  toward: z.enum(['nearest', 'up', 'down']),
  authorityId: code,
});
