import { describe, expect, it } from 'vitest';
import { memoryTable } from '../../functions/stores/dynamodb/memoryTable.ts';
import type { Table } from '../../functions/stores/dynamodb/table.ts';
import { StoreUnavailable } from '../../functions/stores/faults.ts';
import type { Delivery, Ledger } from '../../functions/stores/ledger/ledger.ts';
import { tableLedger } from '../../functions/stores/ledger/tableLedger.ts';
import { streamOf } from '../../shared/submissions/envelope.ts';
import type { Submission } from '../../shared/submissions/submission.ts';
import { cutTable, type Cutter } from '../support/failingTable.ts';
import { correction, fact, onStrike } from '../support/submissions.ts';

/** The process ends, or the store goes away, at every single request of an acceptance, with and without effect. */
const first: Delivery = { recordedAt: '2026-03-04T02:31:00.000Z', deliveredBy: null };
const later: Delivery = { recordedAt: '2026-03-04T09:00:00.000Z', deliveredBy: null };

interface Bench {
  readonly ledger: Ledger;
  readonly personal: Table;
  readonly cutter: Cutter;
}
function bench(): Bench {
  const [submissions, personal] = [memoryTable(), memoryTable()];
  const cutter: Cutter = { requests: 0, cut: null };
  const ledger = tableLedger({
    submissions: cutTable(submissions, cutter),
    personal: cutTable(personal, cutter),
  });
  return { ledger, personal, cutter };
}

const strike = onStrike(1);
const party = fact('party', 2, strike);
const changed = (note: string): Submission => ({ ...party, body: { ...party.body, note } });
const target = fact('party', 3, strike);
const subjects: readonly [string, Submission][] = [
  ['a fact with nothing personal', fact('inspection', 1, strike)],
  ['a fact with personal fields', party],
  ['a correction with personal fields', correction(4, target, { ...target.body, note: 'Corrected' })],
];

async function cutAt(
  atRequest: number,
  landed: boolean,
  sent: Submission,
): Promise<Bench & { failed: boolean }> {
  const made = bench();
  made.cutter.cut = { atRequest, landed };
  const failed = await made.ledger.accept(sent, first).then(
    () => false,
    (error: unknown) => {
      expect(error).toBeInstanceOf(StoreUnavailable);
      return true;
    },
  );
  made.cutter.cut = null;
  return { ...made, failed };
}

describe.each(subjects)('%s, cut off at any request', (_name, sent) => {
  it.each([true, false])(
    'is there exactly once after a resend (the last request had its effect: %s)',
    async (landed) => {
      for (let atRequest = 1; ; atRequest += 1) {
        const { ledger, personal, failed } = await cutAt(atRequest, landed, sent);
        if (!failed) {
          expect(atRequest).toBeGreaterThan(1);
          return;
        }
        const again = await ledger.accept(sent, later);
        expect(['accepted', 'repeat']).toContain(again.outcome);
        const stream = await ledger.readStream(streamOf(sent.subject));
        expect(stream).toEqual([
          {
            submission: sent,
            recordedAt: again.outcome === 'accepted' ? later.recordedAt : first.recordedAt,
            deliveredBy: null,
            erased: false,
          },
        ]);
        expect(await ledger.accept(sent, later)).toMatchObject({ outcome: 'repeat' });
        // One erasable row at most: nothing of the attempt that failed is left.
        expect((await personal.query(streamOf(sent.subject))).length).toBeLessThanOrEqual(1);
      }
    },
  );
});

describe('an entry that its device changed after an attempt was cut off', () => {
  it.each([true, false])(
    'is accepted as changed if the first had not been accepted, and a clash if it had (landed: %s)',
    async (landed) => {
      const outcomes = new Set<string>();
      for (let atRequest = 1; ; atRequest += 1) {
        const { ledger, personal, failed } = await cutAt(atRequest, landed, changed('first words'));
        if (!failed) break;
        const answer = await ledger.accept(changed('second words'), later);
        outcomes.add(answer.outcome);
        const stands = changed(answer.outcome === 'accepted' ? 'second words' : 'first words');
        expect(await ledger.readStream(streamOf(strike))).toMatchObject([
          { submission: stands, erased: false },
        ]);
        if (answer.outcome !== 'accepted')
          expect(answer).toEqual({ outcome: 'clash', field: 'body.note', recordedAt: first.recordedAt });
        await ledger.accept(stands, later);
        const rows = await personal.query(streamOf(strike));
        expect(rows).toHaveLength(1);
        expect(JSON.stringify(rows)).toContain(
          answer.outcome === 'accepted' ? 'second words' : 'first words',
        );
      }
      expect([...outcomes].sort()).toEqual(['accepted', 'clash']);
    },
  );

  it('leaves no first words behind, also when the second attempt is cut off too', async () => {
    for (let second = 1; ; second += 1) {
      const { ledger, personal, cutter } = await cutAt(3, false, changed('first words'));
      cutter.requests = 0;
      cutter.cut = { atRequest: second, landed: true };
      const failed = await ledger.accept(changed('second words'), later).then(
        () => false,
        () => true,
      );
      cutter.cut = null;
      expect(await ledger.accept(changed('second words'), later)).toMatchObject({
        outcome: failed ? expect.stringMatching(/accepted|repeat/) : 'repeat',
      });
      const rows = await personal.query(streamOf(strike));
      expect(rows).toHaveLength(1);
      expect(JSON.stringify(rows)).toContain('second words');
      if (!failed) return;
    }
  });

  it('words that no fact holds are erased with the submission', async () => {
    const { ledger, personal } = await cutAt(3, false, changed('first words'));
    expect(await personal.query(streamOf(strike))).toHaveLength(1);
    await ledger.forget(streamOf(strike), party.submissionId);
    expect(await personal.query(streamOf(strike))).toEqual([]);
  });
});

describe('personal fields that were erased', () => {
  it('are not written again by a resend, wherever that is cut off', async () => {
    for (let atRequest = 1; atRequest < 6; atRequest += 1) {
      const { ledger, personal, cutter } = bench();
      await ledger.accept(party, first);
      await ledger.forget(streamOf(strike), party.submissionId);
      cutter.requests = 0;
      cutter.cut = { atRequest, landed: true };
      await ledger.accept(party, later).catch(() => undefined);
      expect(await personal.query(streamOf(strike))).toEqual([]);
    }
  });
});

describe('two contents under one id at the same time', () => {
  it('leave the personal fields of the accepted one and no others, however late the loser writes', async () => {
    const [submissions, personal] = [memoryTable(), memoryTable()];
    const late = Promise.withResolvers<undefined>();
    const slow = tableLedger({
      submissions,
      personal: {
        ...personal,
        put: async (...write) => {
          await late.promise;
          return personal.put(...write);
        },
      },
    });
    // It has looked and found nothing, and is held up before its first write.
    const loser = slow.accept(changed('second words'), later);
    const winner = tableLedger({ submissions, personal });
    expect(await winner.accept(changed('first words'), first)).toMatchObject({ outcome: 'accepted' });
    late.resolve(undefined);
    expect(await loser).toMatchObject({ outcome: 'clash', field: 'body.note' });
    const rows = await personal.query(streamOf(strike));
    expect(rows).toHaveLength(1);
    expect(JSON.stringify(rows)).toContain('first words');
  });
});
