/** A stretch of time that a submission claims for one worker or one machine. */
export interface Stretch {
  readonly fromMs: number;
  readonly toMs: number;
  /** What it is billed as: a labour class, or in use and standing by. */
  readonly as: string;
  readonly submissionId: string;
}

export interface Overlap {
  readonly ms: number;
  readonly submissionIds: readonly string[];
}

export interface Span {
  readonly fromMs: number;
  readonly toMs: number;
}

const cut = (pieces: readonly Stretch[], { fromMs, toMs }: Span): Stretch[] =>
  pieces.flatMap((piece) =>
    toMs <= piece.fromMs || fromMs >= piece.toMs
      ? [piece]
      : [
          { ...piece, toMs: Math.min(piece.toMs, fromMs) },
          { ...piece, fromMs: Math.max(piece.fromMs, toMs) },
        ].filter((rest) => rest.toMs > rest.fromMs),
  );

const sum = (pieces: readonly Span[]): number =>
  pieces.reduce((ms, { fromMs, toMs }) => ms + toMs - fromMs, 0);

export const spanOf = ({ from, to }: { readonly from: string; readonly to: string }): Span => ({
  fromMs: Date.parse(from),
  toMs: Date.parse(to),
});

/** Stretches less what is not billed in them. */
export function less(stretches: readonly Stretch[], breaks: readonly Span[]): Stretch[] {
  return breaks.reduce<Stretch[]>(cut, [...stretches]);
}

/**
 * Each moment once. Where two claim the same moment of the same worker or machine, it is billed as the submission made
 * first says, and the rest is reported as an overlap. What began first would be no rule: cutting an interval in two
 * would change the bill.
 * `rank` orders what a moment is billed as, lowest first: standing by never displaces use.
 */
export function eachMomentOnce(
  stretches: readonly Stretch[],
  rank: (as: string) => number = () => 0,
): { readonly kept: readonly Stretch[]; readonly overlaps: readonly Overlap[] } {
  const kept: Stretch[] = [];
  const overlaps: Overlap[] = [];
  const inOrder = [...stretches].sort(
    (a, b) =>
      rank(a.as) - rank(b.as) ||
      compare(a.submissionId, b.submissionId) ||
      compare(a.as, b.as) ||
      a.fromMs - b.fromMs ||
      a.toMs - b.toMs,
  );
  for (const stretch of inOrder) {
    let left: readonly Stretch[] = [stretch];
    for (const other of kept) {
      const before = sum(left);
      left = cut(left, other);
      const ms = before - sum(left);
      if (ms > 0)
        overlaps.push({ ms, submissionIds: [other.submissionId, stretch.submissionId].sort(compare) });
    }
    kept.push(...left);
  }
  return { kept, overlaps };
}

/** Order of code units: the same on every machine and in every language. */
export function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

/** Spans that overlap or touch as one, in the order of time. */
export function merged(spans: readonly Span[]): Span[] {
  const joined: { fromMs: number; toMs: number }[] = [];
  for (const { fromMs, toMs } of [...spans].sort((a, b) => a.fromMs - b.fromMs)) {
    const last = joined.at(-1);
    if (last && fromMs <= last.toMs) last.toMs = Math.max(last.toMs, toMs);
    else joined.push({ fromMs, toMs });
  }
  return joined;
}
