import type { Spent, UploadsOfDay } from '../../../shared/evidence/uploadBudget.ts';

/** What each person was given upload addresses for on the last day that they asked for any. */
export interface Uploads {
  /**
   * Decides by what was counted before and keeps what is counted now. Of two who ask at once for one person, each is
   * decided by what the other left. Throws `StoreUnavailable` where that stays contended.
   */
  count(personId: string, decide: (before: UploadsOfDay | null) => Spent): Promise<Spent>;
}
