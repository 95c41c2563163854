import { laterLetterKinds } from '../../../../../shared/submissions/forms/claimLife/letterSent.ts';
import type { LaterLetterKind } from '../../../../../shared/letters/later/letter.ts';

/** What was typed of a letter, kept on the device at each keystroke until it is recorded. */
export interface Kept {
  readonly submissionId: string;
  readonly letter: LaterLetterKind;
  readonly answers: string | null;
  readonly text: string;
  readonly to: string;
  readonly how: string;
  readonly on: string;
}

/** A draft is its author's: another who signs in on the device does not find it. */
export const keptKey = (personId: string, claimId: string): string => `letter.${personId}.${claimId}`;

/** Whether what the device holds is such a letter; it may be anything, or of an older version. */
export const isKept = (value: unknown): value is Kept =>
  typeof value === 'object' &&
  value !== null &&
  ['submissionId', 'letter', 'text', 'to', 'how', 'on'].every(
    (name) => typeof (value as Record<string, unknown>)[name] === 'string',
  ) &&
  (laterLetterKinds as readonly string[]).includes((value as Kept).letter);
