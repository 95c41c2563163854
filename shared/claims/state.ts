import { ofKind, type Effective } from '../submissions/effective.ts';
import type { BodyOf } from '../submissions/submission.ts';

/** A claim as its submissions say it stands. Part 1 knows: open, packet frozen, demand sent. */
export interface ClaimState {
  readonly claimId: string;
  readonly claimNumber: string;
  readonly strikeId: string;
  readonly partyId: string | null;
  readonly payerKind: BodyOf<'claim-opened'>['payerKind'];
  readonly payerName: string | null;
  readonly openedAt: string;
  readonly stage: 'open' | 'frozen' | 'billed';
  readonly packets: readonly (BodyOf<'packet-frozen'> & { readonly submissionId: string })[];
  readonly demands: readonly (Omit<BodyOf<'demand-sent'>, 'to'> & { readonly submissionId: string })[];
  readonly lastRecordedAt: string;
}

/** The fold of one claim, or null while its opening has not arrived (later facts may come first). */
export function foldClaim(claimId: string, facts: readonly Effective[]): ClaimState | null {
  const opened = ofKind(facts, 'claim-opened')[0];
  if (!opened) return null;
  const packets = ofKind(facts, 'packet-frozen')
    .map(({ fact }) => ({ ...fact.body, submissionId: fact.submissionId }))
    .sort((a, b) => a.revision - b.revision);
  const demands = ofKind(facts, 'demand-sent').map(({ fact: { submissionId, body } }) => {
    const { revision, sentOn, how, amountCents, note } = body;
    return { revision, sentOn, how, amountCents, note, submissionId };
  });
  const { body } = opened.fact;
  return {
    claimId,
    claimNumber: body.claimNumber,
    strikeId: body.strikeId,
    partyId: body.partyId,
    payerKind: body.payerKind,
    payerName: body.payer.name,
    openedAt: opened.fact.occurredAt,
    stage: demands.length > 0 ? 'billed' : packets.length > 0 ? 'frozen' : 'open',
    packets,
    demands,
    lastRecordedAt:
      facts
        .flatMap(({ recordedAt, corrections }) => [recordedAt, ...corrections.map((item) => item.recordedAt)])
        .sort()
        .at(-1) ?? '',
  };
}
