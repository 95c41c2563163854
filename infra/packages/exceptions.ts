/** A finding of `npm audit` that is known and lived with for a while, and why. */
export interface AuditException {
  /** The advisory's address as npm gives it: `https://github.com/advisories/GHSA-…`. */
  readonly advisory: string;
  readonly package: string;
  /** Why it does not hurt here, or what is waited for: a sentence that a stranger can check. */
  readonly reason: string;
  /** Days, as `YYYY-MM-DD`. After `until` it counts as unexplained again: somebody has to look anew. */
  readonly since: string;
  readonly until: string;
}

/** None is longer than this, days: what is true of a package today may not be in half a year. */
export const LONGEST_EXCEPTION_DAYS = 180;

/** None at present. */
export const auditExceptions: readonly AuditException[] = [];
