import * as z from 'zod';
import { code, dollars, hours, title } from './decimals.ts';
import { increment } from './labor.ts';

/** What a rate already pays for; none of it may be billed on top. */
export const heldByRate = ['operator', 'fuel', 'overhead'] as const;

export const machineRate = z.strictObject({
  machineCode: code,
  title,
  unit: z.enum(['hour', 'mile', 'day']),
  rateUsd: dollars,
  /** Rate while standing by, per hour; null: standing by is not billed. */
  standbyUsd: dollars.nullable(),
  /**
   * When standing by is billed at `standbyUsd`: always, or only on a day on which the machine was in use for more than
   * half of the working day of so many hours (FEMA IS-1000). Left out: always.
   */
  standbyOnlyIfUsedOverHalfOfHours: hours.optional(),
  /** The code and size of a published schedule from which the rate was taken. */
  schedule: z.strictObject({ code: title, size: title.nullable() }).optional(),
  includes: z.array(z.enum(heldByRate)).max(3).optional(),
  /** Works with nobody at it, such as an arrow board or a light tower: nobody is asked who ran it. */
  unattended: z.boolean().optional(),
  /** Hours billed at least on a day of use. */
  minimumHours: hours.optional(),
  increment: increment.optional(),
  authorityId: code,
});

/** From stock. `fuel`: nothing is billed for it beside a machine whose rate holds it. */
export const stockPrice = z.strictObject({
  partNumber: code,
  title,
  unitPriceUsd: dollars,
  fuel: z.boolean().optional(),
  authorityId: code,
});
