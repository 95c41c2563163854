import { problem, type Problem } from '../problems/problem.ts';
import type { ClaimCase } from './case.ts';

/** What stands in the way of issuing a packet, apart from its money: empty when it may be frozen. A preview always may. */
export function freezeProblems({ claim, strike }: Pick<ClaimCase, 'claim' | 'strike'>): Problem[] {
  const problems: Problem[] = [];
  if (strike.returnedAt === null)
    problems.push(problem('strike-not-closed', '', { strikeId: strike.strikeId }));
  if (claim.fact.body.payer.name === null) problems.push(problem('payer-not-known', 'payer.name'));
  return problems;
}

/**
 * The instant that a packet's dates come from. It is never before what the packet tells of, whatever a server's clock
 * says: for a preview the latest record, so that the same records give the same preview.
 */
export function asOfRecords(
  recorded: readonly { readonly recordedAt: string }[],
  now: string | null = null,
): string {
  const latest = recorded.reduce(
    (at, item) => (Date.parse(item.recordedAt) > Date.parse(at) ? item.recordedAt : at),
    recorded[0]?.recordedAt ?? now ?? '',
  );
  return now !== null && Date.parse(now) > Date.parse(latest) ? now : latest;
}
