/**
 * Numbers that must be unique in the utility (claim number, packet revision, edition): one conditional put each.
 * `take` answers whether `owner` holds the name now; taking again as the same owner answers true (a retry).
 */
export interface Unique {
  take(
    space: string,
    name: string,
    owner: string,
  ): Promise<{ readonly taken: boolean; readonly owner: string }>;
  /** Names of one space, strongly consistent; to propose the next number. */
  names(space: string): Promise<readonly string[]>;
}
