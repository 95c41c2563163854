import * as z from 'zod';

/** What a utility may set of fire cover. What is left out keeps its standard. */
export const fireCoverRules = z.strictObject({
  /** Hose that an engine carries, feet. */
  hoseFt: z.int().min(100).max(5000).optional(),
  /** Credit that every place must have, gpm; 0 asks only for a hydrant within 1,000 ft. */
  needGpm: z.int().min(0).max(12_000).optional(),
  /** Spacing of the grid on which cover is looked for where no addresses are loaded, feet. */
  gridStepFt: z.int().min(100).max(1000).optional(),
});
export type FireCoverRules = z.infer<typeof fireCoverRules>;

export type FireCoverSettings = { readonly [Key in keyof FireCoverRules]-?: number };

/**
 * Hose: the complement that the rating schedule's distances suppose, 1,200 ft (as cities print it in their rating
 * reports). Need: the least needed fire flow that the same rater gives any building, 500 gpm (as fire departments quote
 * its guide; second-hand). Grid: a block's depth, so that no house is farther than about 180 ft from a point (common
 * practice, no source).
 */
export const standardFireCover: FireCoverSettings = { hoseFt: 1200, needGpm: 500, gridStepFt: 250 };

export const fireCoverFrom = (rules: FireCoverRules = {}): FireCoverSettings => ({
  hoseFt: rules.hoseFt ?? standardFireCover.hoseFt,
  needGpm: rules.needGpm ?? standardFireCover.needGpm,
  gridStepFt: rules.gridStepFt ?? standardFireCover.gridStepFt,
});
