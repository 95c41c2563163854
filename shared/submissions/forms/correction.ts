import * as z from 'zod';
import { longText, submissionId } from '../fields.ts';

/**
 * Replaces an earlier submission, or withdraws it. The target is the fact itself, or, when it was corrected before,
 * the latest correction: corrections chain in a line, and a second one of the same target is refused. The
 * replacement is checked by the form of `targetKind`, which must be the kind of the fact at the chain's start.
 */
export const correctionBody = z.strictObject({
  targetId: submissionId,
  targetKind: z.string().min(1).max(40),
  reason: longText,
  /** The whole new body; null withdraws. */
  replacement: z.record(z.string(), z.unknown()).nullable(),
});
export type CorrectionBody = z.infer<typeof correctionBody>;
