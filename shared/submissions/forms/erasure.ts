import * as z from 'zod';
import { chosenId, shortText, submissionId } from '../fields.ts';
import { form } from '../form.ts';

/** Why personal fields had to go. Words: `erasure-ground.<code>`. */
export const erasureGrounds = ['retention-ended', 'person-asked', 'court-ordered', 'wrong-person'] as const;

/** Most submissions of one record whose personal fields one erasure takes. */
export const MOST_ERASED = 200;

/**
 * That personal fields of these submissions of the same record were erased, by whom and why. It names nobody: what it
 * tells must not bring back what it is about. Written by the command that erases, so that none goes untold.
 */
export const erasure = form({
  kind: 'erasure',
  subjects: ['hydrant', 'strike', 'claim'],
  writers: ['manager'],
  readers: ['clerk', 'manager'],
  personal: [],
  body: z.strictObject({
    targetIds: z.array(submissionId).min(1).max(MOST_ERASED),
    ground: z.enum(erasureGrounds),
    /** Number of the request, order or rule, by which it is found among the utility's papers. */
    reference: shortText.nullable(),
    decidedByWorkerId: chosenId,
  }),
});
