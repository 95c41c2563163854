import { randomUUID } from 'node:crypto';
import { correctionEntry, factEntry } from '../../../shared/deployment/tables.ts';
import { firstDifference } from '../../../shared/submissions/canonical.ts';
import type { Stream } from '../../../shared/submissions/envelope.ts';
import { correctionKind } from '../../../shared/submissions/kinds.ts';
import { joinPersonal, splitPersonal } from '../../../shared/submissions/personal.ts';
import { isReadable } from '../../../shared/submissions/readable.ts';
import type { Recorded } from '../../../shared/submissions/recorded.ts';
import { streamOfSubmission, type Submission } from '../../../shared/submissions/submission.ts';
import { fromJsonAttribute, toJsonAttribute } from '../dynamodb/jsonAttribute.ts';
import { assertFits, type Attributes, type Key, type Row, type Table } from '../dynamodb/table.ts';
import { UnreadableFact } from '../faults.ts';
import type { Acceptance, Delivery, Ledger } from './ledger.ts';
import { seal, sealedKey, sealedPrefix, unseal } from './sealed.ts';

/** A fact's row, read back. */
interface Stored {
  readonly stream: Stream;
  readonly fact: Submission;
  readonly recordedAt: string;
  readonly deliveredBy: string | null;
  /** Names its erasable row; null when nothing in it is personal. */
  readonly personalHash: string | null;
  /** Drawn anew for every attempt: tells our own write that landed unseen from somebody else's. */
  readonly attempt: string;
}

/**
 * The ledger on two tables: facts, and their personal fields. The order of the writes is what keeps it right when
 * anything stops in the middle (docs/decisions/0011): first the erasable row, then one conditional put of the fact,
 * which alone makes it accepted, then the removal of erasable rows that earlier attempts left behind.
 */
export function tableLedger({ submissions, personal }: { submissions: Table; personal: Table }): Ledger {
  async function accept(submission: Submission, { recordedAt, deliveredBy }: Delivery): Promise<Acceptance> {
    const stream = streamOfSubmission(submission);
    const { submissionId } = submission;
    const key: Key = { partition: stream, sort: entryOf(submission) };
    const split = splitPersonal(submission);
    const sealed = seal(stream, submissionId, split.personal);
    const attempt = randomUUID();
    const row: Row = {
      ...key,
      attributes: {
        recordedAt,
        attempt,
        ...(deliveredBy === null ? {} : { deliveredBy }),
        ...(sealed === null ? {} : { personalHash: sealed.hash }),
        submission: toJsonAttribute(split.fact),
      },
    };
    assertFits(row);
    if (sealed !== null) assertFits(sealed.row);

    // A repeat must never write personal fields again: they may have been erased since.
    if (sealed !== null || submission.kind === correctionKind) {
      const earlier = (await stored(key)) ?? (await sameIdElsewhere(submission, key));
      if (earlier !== null) return answer(earlier, submission);
    }
    if (sealed !== null) await personal.put(sealed.row, { absent: true });
    if (await submissions.put(row, { absent: true })) {
      if (sealed !== null) await sweep(stream, submissionId, sealed.hash);
      return { outcome: 'accepted', recordedAt };
    }

    const earlier = await stored(key);
    // A fact is never removed, so whatever refused the put is there to be read.
    if (earlier === null) throw new Error(`the ledger refused ${submissionId} and then had no such entry`);
    if (earlier.attempt === attempt) {
      if (sealed !== null) await sweep(stream, submissionId, sealed.hash);
      return { outcome: 'accepted', recordedAt };
    }
    if (sealed !== null) await personal.remove(sealed.row);
    return answer(earlier, submission);
  }

  async function stored(key: Key): Promise<Stored | null> {
    const attributes = await submissions.get(key);
    return attributes === null ? null : storedOf({ ...key, attributes });
  }

  /** A correction stands under its target's key: looks whether its own id was used for anything else in the stream. */
  async function sameIdElsewhere(submission: Submission, { partition }: Key): Promise<Stored | null> {
    if (submission.kind !== correctionKind) return null;
    const asFact = await stored({ partition, sort: factEntry(submission.submissionId) });
    if (asFact !== null) return asFact;
    const corrections = await submissions.query(partition, correctionEntry(''));
    return (
      corrections.map(storedOf).find(({ fact }) => fact.submissionId === submission.submissionId) ?? null
    );
  }

  /** What to say of a submission whose place is taken. */
  async function answer(earlier: Stored, submission: Submission): Promise<Acceptance> {
    const { fact, recordedAt } = earlier;
    const { submissionId } = submission;
    if (fact.submissionId !== submissionId) return { outcome: 'already-corrected', by: fact.submissionId };

    const [before] = await joined([earlier], true);
    if (before === undefined) throw new Error('an entry was lost while it was read');
    // What was erased cannot be compared, and need not be: it is the same submission without it.
    const now = before.erased ? splitPersonal(submission).fact : submission;
    const field = firstDifference(before.submission, now);
    if (field !== null) return { outcome: 'clash', field, recordedAt };
    if (earlier.personalHash !== null) await sweep(earlier.stream, submissionId, earlier.personalHash);
    return { outcome: 'repeat', recordedAt };
  }

  /**
   * Removes erasable rows that no fact names: an attempt that stopped after its first write left one. Safe once the
   * fact stands, because from then on no other row of its id can ever be named.
   */
  async function sweep(stream: Stream, submissionId: string, keep: string | null): Promise<void> {
    const kept = keep === null ? null : sealedKey(stream, submissionId, keep).sort;
    for (const row of await personal.query(stream, sealedPrefix(submissionId)))
      if (row.sort !== kept) await personal.remove(row);
  }

  async function joined(facts: readonly Stored[], withPersonal: boolean): Promise<Recorded[]> {
    const keys = facts.flatMap(({ stream, fact, personalHash }) =>
      personalHash === null ? [] : [sealedKey(stream, fact.submissionId, personalHash)],
    );
    const rows = withPersonal && keys.length > 0 ? await personal.getMany(keys) : [];
    const found = new Map(rows.map((row) => [`${row.partition}\n${row.sort}`, row]));
    return facts.map(({ stream, fact, recordedAt, deliveredBy, personalHash }) => {
      if (personalHash === null || !withPersonal)
        return { submission: fact, recordedAt, deliveredBy, erased: false };
      const { partition, sort } = sealedKey(stream, fact.submissionId, personalHash);
      const row = found.get(`${partition}\n${sort}`);
      return {
        submission: row === undefined ? fact : joinPersonal(fact, unseal(row)),
        recordedAt,
        deliveredBy,
        erased: row === undefined,
      };
    });
  }

  return {
    accept,
    readStream: async (stream, options = {}) =>
      joined((await submissions.query(stream)).map(storedOf), options.personal ?? true),
    async *readAll(options = {}) {
      for await (const rows of submissions.scan())
        yield await joined(rows.map(storedOf), options.personal ?? true);
    },
    async *scanPersonal() {
      for await (const rows of personal.scan())
        yield rows.map((row) => ({ stream: row.partition, fields: unseal(row) }));
    },
    forget: async (stream, submissionId) => sweep(stream, submissionId, null),
  };
}

function entryOf(submission: Submission): string {
  return submission.kind === correctionKind
    ? correctionEntry(submission.body.targetId)
    : factEntry(submission.submissionId);
}

function storedOf({ partition, sort, attributes }: Row): Stored {
  const text = (name: string): string | null =>
    typeof attributes[name] === 'string' ? (attributes[name] satisfies string) : null;
  return {
    stream: partition,
    fact: factIn(partition, sort, attributes['submission']),
    recordedAt: text('recordedAt') ?? '',
    deliveredBy: text('deliveredBy'),
    personalHash: text('personalHash'),
    attempt: text('attempt') ?? '',
  };
}

function factIn(stream: Stream, entry: string, attribute: Attributes[string] | undefined): Submission {
  let fact;
  try {
    fact = fromJsonAttribute(attribute) as Submission | null;
  } catch (cause) {
    throw new UnreadableFact(stream, entry, { cause });
  }
  if (fact === null) throw new UnreadableFact(stream, entry);
  if (!isReadable(fact))
    throw new UnreadableFact(stream, `${entry} ("${fact.kind}", schema version ${fact.schemaVersion})`);
  return fact;
}
