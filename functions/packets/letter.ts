import { packetLetterOf } from '../../shared/packet/content.ts';
import { asOfRecords } from '../../shared/packet/ready.ts';
import { openedAsAnswered } from '../../shared/claims/contact.ts';
import type { ClaimLetter } from '../../shared/letters/answer.ts';
import { evidenceFor } from '../../shared/letters/evidence.ts';
import { letterTemplate, type Letter } from '../../shared/letters/letter.ts';
import type { Problem } from '../../shared/problems/problem.ts';
import { ofKind } from '../../shared/submissions/effective.ts';
import type { Member } from '../../shared/roles.ts';
import type { Issue } from './build.ts';
import { otherDemands } from './demands.ts';
import type { PacketsDeps } from './deps.ts';
import { loadClaim, type LoadedClaim } from './load.ts';

const letterIn = ({ settings }: PacketsDeps, claim: LoadedClaim, issue: Issue): Letter =>
  packetLetterOf({ ...claim, ...issue, locale: settings.locale, settings, photos: new Map() });

/** What of its letter stands in the way of issuing a packet. */
export const letterProblems = (deps: PacketsDeps, claim: LoadedClaim, issue: Issue): readonly Problem[] =>
  letterIn(deps, claim, issue).problems;

/** The claim's letter as the next preview would have it, for the desk to edit. */
export async function claimLetter(deps: PacketsDeps, member: Member, claimId: string): Promise<ClaimLetter> {
  const claim = await loadClaim(deps, claimId);
  const others = await otherDemands(deps, claimId, claim);
  const otherDemandsCents = others.reduce((sum, { demandCents }) => sum + demandCents, 0);
  const { paragraphs: _paragraphs, ...letter } = letterIn(deps, claim, {
    issue: { state: 'preview', asOf: asOfRecords(claim.recorded) },
    preparedBy: member.personId,
    demandCents: Math.max(0, claim.statement.totalCents - otherDemandsCents),
    otherDemandsCents,
  });
  const opened = openedAsAnswered(
    claim.claim.fact.body,
    claim.all.filter(({ fact: { subject } }) => subject.type === 'claim' && subject.claimId === claimId),
  );
  const { locale } = deps.settings;
  return {
    ...letter,
    locale,
    template: letterTemplate(locale, letter.letter),
    evidence: evidenceFor({
      claim: opened,
      party:
        ofKind(claim.facts, 'party').find(({ fact }) => fact.submissionId === opened.partyId)?.fact.body ??
        null,
      strike: claim.strike,
      facts: claim.facts,
      statement: claim.statement,
    }),
  };
}
