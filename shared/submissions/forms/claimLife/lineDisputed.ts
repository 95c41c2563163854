import * as z from 'zod';
import { longText } from '../../fields.ts';
import { form } from '../../form.ts';
import { day, deskOnly, lineId, remarks, shortReason, someCents } from './common.ts';

/** The adjuster does not accept lines of the statement: which, by how much, and in what words. */
export const lineDisputed = form({
  kind: 'line-disputed',
  ...deskOnly,
  personal: [],
  body: z.strictObject({
    saidOn: day,
    /** The revision that was in the adjuster's hands. */
    revision: z.number().int().min(1).max(999),
    lines: z
      .array(
        z.strictObject({
          /** Null: the dispute is about the demand as a whole. */
          lineId: lineId.nullable(),
          reason: shortReason,
          disputedCents: someCents,
          /** In the adjuster's words. */
          words: longText,
        }),
      )
      .min(1)
      .max(200),
    ...remarks,
  }),
});
