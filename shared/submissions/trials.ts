import type { Recorded } from './recorded.ts';

/** What was recorded in earnest. A trial (`test: true`) is kept like every fact, and shown, told and counted nowhere. */
export const withoutTrials = (recorded: readonly Recorded[]): readonly Recorded[] =>
  recorded.filter(({ submission }) => submission.test !== true);
