import type { PacketContent } from '../../packet/schema.ts';
import { finding, type Finding } from '../finding.ts';

/** What is demanded, beside the statement: never more than what other claims of the strike leave of it. */
export function claimFindings({ claim, statement }: PacketContent): Finding[] {
  const leftCents = statement.totalCents - claim.otherDemandsCents;
  return claim.demandCents > leftCents
    ? [
        finding('demand-above', 'claim.demandCents', {
          demandCents: claim.demandCents,
          leftCents,
          totalCents: statement.totalCents,
          othersCents: claim.otherDemandsCents,
        }),
      ]
    : [];
}
