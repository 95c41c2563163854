import type { BodyOf } from '../submissions/submission.ts';

/** A demand that a packet bears out. */
export type ProvenDemand = Pick<BodyOf<'demand-sent'>, 'revision' | 'sentOn' | 'amountCents' | 'what'> & {
  readonly submissionId: string;
};

/**
 * What a claim asks now, whole cents: its latest demand by revision, then by day. Each revision of a packet states the
 * whole claim, so a supplement's sum holds the earlier one in it.
 */
export function askedCents(demands: readonly ProvenDemand[]): number {
  const latest = demands.toSorted(
    (a, b) => a.revision - b.revision || (a.sentOn < b.sentOn ? -1 : a.sentOn > b.sentOn ? 1 : 0),
  );
  return latest.at(-1)?.amountCents ?? 0;
}
