import * as z from 'zod';
import { hydrantId } from '../inventory/hydrant.ts';

/** Money of a year as the public may see it: whole thousands of dollars, or not at all. */
const publicSum = z.int().min(0).multipleOf(1000).nullable();

const publicYear = z.strictObject({
  year: z.int().min(1900).max(2999),
  /** False for the year that is not over: its figures go on growing. */
  over: z.boolean(),
  strikes: z.int().min(0),
  /** Of its strikes, by month of the year, January first. */
  byMonth: z.array(z.int().min(0)).length(12),
  /** Of its strikes, those whose hydrant is back, and how long that took, whole hours. */
  returned: z.strictObject({
    strikes: z.int().min(0),
    medianHours: z.int().min(0).nullable(),
    longestHours: z.int().min(0).nullable(),
  }),
  /** Of its strikes, those whose hydrant is still out. */
  stillOut: z.int().min(0),
  /** Days out of service within the year, added up over hydrants; a hydrant that was out for two reasons counts once. */
  daysOut: z.strictObject({ strike: z.int().min(0), other: z.int().min(0) }),
  /** Of claims for the year's strikes, dollars. Null: too few to be told without telling somebody's. */
  money: z.strictObject({ billedDollars: publicSum, recoveredDollars: publicSum }),
  /** Hydrants of the inventory that were struck in the year and had been before, or were twice. */
  again: z.array(
    z.strictObject({
      hydrantId,
      place: z.string().nullable(),
      inYear: z.int().min(1),
      /** Since the first year there is. */
      everSo: z.int().min(2),
    }),
  ),
});

/** A utility's years, newest first. */
export const publicYears = z.strictObject({
  /** The first thing on record; what was before it is in no figure. Null: nothing is. */
  since: z.iso.datetime().nullable(),
  years: z.array(publicYear),
});
export type PublicYear = z.infer<typeof publicYear>;
export type PublicYears = z.infer<typeof publicYears>;
