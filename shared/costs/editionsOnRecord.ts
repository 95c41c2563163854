import { effectiveFacts, ofKind, type Effective } from '../submissions/effective.ts';
import type { Recorded } from '../submissions/recorded.ts';
import type { RateBookEdition } from './rateBook.ts';

/** Where an edition stands in the ledger. */
export interface EditionRecord {
  readonly editionId: string;
  /** The submission that recorded it: what a packet built from it names. */
  readonly submissionId: string;
  /** What a withdrawal names: the latest of its chain, for most the same. */
  readonly latestId: string;
  readonly occurredAt: string;
  readonly recordedAt: string;
  readonly personId: string;
}

/** An edition that a manager took back: bills no longer use it, and packets that were issued by it keep its figures. */
export interface WithdrawnEdition extends EditionRecord {
  readonly edition: RateBookEdition;
  readonly reason: string;
  readonly withdrawnAt: string;
  readonly withdrawnBy: string;
}

export interface EditionsOnRecord {
  /** Those that stand, by the person's time. */
  readonly editions: readonly RateBookEdition[];
  /** One for each of them, in their order. */
  readonly records: readonly EditionRecord[];
  readonly withdrawn: readonly WithdrawnEdition[];
}

/** Every edition of the rate book, those that stand and those that were withdrawn. `recorded`: the utility's stream. */
export function editionsOnRecord(recorded: readonly Recorded[]): EditionsOnRecord {
  const { facts, withdrawn } = effectiveFacts(recorded);
  const standing = ofKind(facts, 'rate-book');
  return {
    editions: standing.map(({ fact }) => fact.body),
    records: standing.map(recordOf),
    withdrawn: ofKind(withdrawn, 'rate-book').flatMap((item): WithdrawnEdition[] => {
      const last = item.corrections.at(-1);
      return last
        ? [
            {
              ...recordOf(item),
              edition: item.fact.body,
              reason: last.submission.body.reason,
              withdrawnAt: last.recordedAt,
              withdrawnBy: last.submission.person.personId,
            },
          ]
        : [];
    }),
  };
}

const recordOf = ({ fact, recordedAt, corrections }: Effective<'rate-book'>): EditionRecord => ({
  editionId: fact.body.editionId,
  submissionId: fact.submissionId,
  latestId: corrections.at(-1)?.submission.submissionId ?? fact.submissionId,
  occurredAt: fact.occurredAt,
  recordedAt,
  personId: fact.person.personId,
});
