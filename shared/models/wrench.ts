import * as z from 'zod';
import { problemIssue } from '../problems/fromZod.ts';
import { manualPage, manualTitle } from '../tightening/record.ts';

/** What turns a nut: most operating nuts are five-sided, some are square (common practice, no source). */
export const wrenchShapes = ['pentagon', 'square', 'hex', 'other'] as const;
/** Across two flats, or from a point to the flat across from it, as five-sided nuts are measured. */
export const wrenchMeasures = ['flat-to-flat', 'point-to-flat'] as const;
export const wrenchUnits = ['in', 'mm'] as const;

/** Sizes that a nut on a hydrant could plausibly have, with room, in each unit. */
const largest = { in: 12, mm: 300 } as const;

/** A wrench that the job needs: what it fits, and its size in the unit in which it is stamped. */
export const wrench = z
  .strictObject({
    /** What it turns, as the manual calls it. */
    fits: z.string().trim().min(1).max(200),
    shape: z.enum(wrenchShapes),
    size: z.number().gt(0).max(largest.mm),
    unit: z.enum(wrenchUnits),
    measured: z.enum(wrenchMeasures).nullable(),
  })
  .superRefine(({ size, unit }, ctx) => {
    if (size > largest[unit])
      ctx.addIssue(problemIssue('above-maximum', ['size'], { maximum: largest[unit] }));
  });
export type Wrench = z.output<typeof wrench>;

/** What is put where, and the page that says so. */
export const lubricant = z.strictObject({
  /** Where it goes: stem threads, gasket, oil reservoir. */
  where: z.string().trim().min(1).max(200),
  /** What it is, as the manual has it. */
  what: z.string().trim().min(1).max(200),
  manual: manualTitle.nullable(),
  page: manualPage.nullable(),
});
export type Lubricant = z.output<typeof lubricant>;
