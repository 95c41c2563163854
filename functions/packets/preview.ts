import { demandFor } from '../../shared/costs/demand.ts';
import { leftOutOf, type LeftOut } from '../../shared/packet/leftOut.ts';
import { asOfRecords, freezeProblems } from '../../shared/packet/ready.ts';
import type { Problem } from '../../shared/problems/problem.ts';
import type { Member } from '../../shared/roles.ts';
import { buildPacket, type Issue } from './build.ts';
import { otherDemands } from './demands.ts';
import type { PacketsDeps } from './deps.ts';
import type { Packet } from './freeze.ts';
import { letterProblems } from './letter.ts';
import { loadClaim } from './load.ts';

/**
 * The packet as it would be issued now, marked as a preview on every page, with what stands in the way of issuing it.
 * Its date is that of the latest record, so the same records give the same preview and it is kept once.
 */
export async function previewPacket(
  deps: PacketsDeps,
  member: Member,
  claimId: string,
  askedCents: number | null,
): Promise<Packet & { readonly problems: readonly Problem[]; readonly leftOut: readonly LeftOut[] }> {
  const claim = await loadClaim(deps, claimId);
  const others = await otherDemands(deps, claimId, claim);
  const otherDemandsCents = others.reduce((sum, { demandCents }) => sum + demandCents, 0);
  const demand = demandFor({ statement: claim.statement, others, askedCents });
  const demandCents = demand.ok
    ? demand.demandCents
    : Math.max(0, claim.statement.totalCents - otherDemandsCents);
  const issue: Issue = {
    issue: { state: 'preview', asOf: asOfRecords(claim.recorded) },
    preparedBy: member.personId,
    demandCents,
    otherDemandsCents,
  };
  const built = await buildPacket(deps, claim, issue);
  await deps.evidence.put(built.pdf, 'application/pdf');
  return {
    revision: null,
    pdfSha256: built.sha256,
    archiveSha256: null,
    signature: null,
    demandCents,
    claimNumber: claim.claim.fact.body.claimNumber,
    leftOut: leftOutOf(built.content),
    problems: [
      ...freezeProblems(claim),
      ...letterProblems(deps, claim, issue),
      ...(demand.ok ? [] : demand.problems),
    ],
  };
}
