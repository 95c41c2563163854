import { ofKind, type Effective } from '../submissions/effective.ts';
import { letterKindFor, type LetterKind } from './kind.ts';

/** Which letter the claim sends, by its own records; null while its opening is not among them. */
export function letterKindOf(
  facts: readonly Effective[],
  { claimId, partyId }: { readonly claimId: string; readonly partyId: string | null },
): LetterKind | null {
  const opened = ofKind(facts, 'claim-opened').find(
    ({ fact }) => fact.subject.type === 'claim' && fact.subject.claimId === claimId,
  )?.fact.body;
  if (!opened) return null;
  const party = ofKind(facts, 'party').find(({ fact }) => fact.submissionId === partyId)?.fact.body;
  return letterKindFor({
    payerKind: opened.payerKind,
    payerName: opened.payer.name,
    hitAndRun: party?.hitAndRun ?? 'unknown',
  });
}

/**
 * The text that a person last recorded for the letter that the claim sends now. One for another letter stays on record
 * and is not used: it was written to another payer.
 */
export function letterTextOf(
  facts: readonly Effective[],
  scope: { readonly claimId: string; readonly partyId: string | null },
): Effective<'letter-text'> | null {
  const letter = letterKindOf(facts, scope);
  return (
    ofKind(facts, 'letter-text')
      .filter(
        ({ fact }) =>
          fact.subject.type === 'claim' &&
          fact.subject.claimId === scope.claimId &&
          fact.body.letter === letter,
      )
      .at(-1) ?? null
  );
}
