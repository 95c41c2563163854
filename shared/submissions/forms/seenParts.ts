import * as z from 'zod';
import { seen } from '../fields.ts';

/** What can be seen of a struck hydrant's parts, by whoever looks first or later. Everything may be unknown. */
export const seenParts = {
  breakawayFlangeParted: seen,
  stemCouplingParted: seen,
  nozzleSection: z.enum(['sound', 'damaged', 'unknown']),
  lowerBarrel: z.enum(['sound', 'damaged', 'unknown']),
  belowGrade: z.enum(['no-sign', 'suspected', 'found', 'unknown']),
  isolationValve: z.enum(['holds', 'does-not-hold', 'not-tried', 'none-fitted']),
  mainValve: z.enum(['holds', 'does-not-hold', 'unknown']),
  // Asked since damage is judged from what was found; left out by reports of before and by who cannot say.
  barrelStands: z.enum(['upright', 'leans', 'out-of-place', 'unknown']).optional(),
  ground: z.enum(['firm', 'washed-out', 'water-rising', 'unknown']).optional(),
  main: z.enum(['no-sign', 'suspected', 'found', 'unknown']).optional(),
  /** The break-off check valve that some wet barrels have below the break. */
  checkValve: z.enum(['holds', 'does-not-hold', 'none-fitted', 'unknown']).optional(),
};
