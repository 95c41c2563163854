/** When a fact, and each correction that led to it, came into the ledger. */
interface Recording {
  readonly recordedAt: string;
  readonly corrections: readonly { readonly recordedAt: string }[];
}

/**
 * How far a device's clock may be ahead of the server's before its times are not believed, milliseconds: phones set
 * their clocks by the network, and ten minutes is far more than those are off (common practice, no source).
 */
export const CLOCK_TOLERANCE_MS = 10 * 60_000;

/** The last moment at which anything in this fact can have been known: when it, or what corrected it, was recorded. */
export function knownBy({ recordedAt, corrections }: Recording): number {
  return Math.max(...[recordedAt, ...corrections.map((item) => item.recordedAt)].map((at) => Date.parse(at)));
}

/** Whether a time lies after the fact that states it was recorded: nobody can have seen it. */
export const notYet = (at: string, item: Recording): boolean =>
  Date.parse(at) > knownBy(item) + CLOCK_TOLERANCE_MS;
