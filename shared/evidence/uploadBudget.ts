import * as z from 'zod';
import { problem, type Problem } from '../problems/problem.ts';
import type { Exhibit } from '../submissions/fields.ts';

/** How much one sign-in may send to the evidence store in a day of the utility's. */
export const uploadBudget = z.strictObject({
  files: z.int().min(1).max(10_000),
  megabytes: z.int().min(100).max(1_000_000),
});
export type UploadBudget = z.infer<typeof uploadBudget>;

/**
 * Five times the files of a crew's heaviest day that we can think of (400 photos of 10 MB), so that no honest one meets
 * it. No source; a setting.
 */
export const usualUploadBudget: UploadBudget = { files: 2000, megabytes: 20_000 };

/** What one person was given addresses for on one day. */
export interface UploadsOfDay {
  /** A day of the utility's, `YYYY-MM-DD`. */
  readonly day: string;
  readonly bytes: number;
  /** Beginnings of the files' hashes: the same file asked for again, after a line that was cut, counts once. */
  readonly files: readonly string[];
}

/** So much of a hash as tells two files of one person's day apart: 48 bits. */
const MARK_LENGTH = 12;

export type Spent =
  | { readonly outcome: 'counted'; readonly next: UploadsOfDay }
  | { readonly outcome: 'counted-before' }
  | { readonly outcome: 'over'; readonly problem: Problem };

/** Counts one more file of a person's day, unless that is over what one person may send. Of an earlier day nothing counts. */
export function spend(
  before: UploadsOfDay | null,
  { sha256, bytes }: Pick<Exhibit, 'sha256' | 'bytes'>,
  { day, budget }: { readonly day: string; readonly budget: UploadBudget },
): Spent {
  const today = before?.day === day ? before : { day, bytes: 0, files: [] };
  const mark = sha256.slice(0, MARK_LENGTH);
  if (today.files.includes(mark)) return { outcome: 'counted-before' };
  if (today.files.length + 1 > budget.files || today.bytes + bytes > budget.megabytes * 1e6)
    return {
      outcome: 'over',
      problem: problem('upload-budget', 'sha256', {
        files: today.files.length,
        megabytes: Math.round(today.bytes / 1e6),
        mostFiles: budget.files,
        mostMegabytes: budget.megabytes,
      }),
    };
  return { outcome: 'counted', next: { day, bytes: today.bytes + bytes, files: [...today.files, mark] } };
}
