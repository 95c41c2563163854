import { describe, expect, it } from 'vitest';
import type { LogEntry } from '../../functions/log/log.ts';
import { createProjector } from '../../functions/project/projector.ts';
import { rebuild } from '../../functions/project/rebuild.ts';
import { createStreamHandler } from '../../functions/project/streamHandler.ts';
import { unprojectedAt } from '../../functions/publish/unprojectedAt.ts';
import { toJsonAttribute } from '../../functions/stores/dynamodb/jsonAttribute.ts';
import { memoryTable } from '../../functions/stores/dynamodb/memoryTable.ts';
import { storesOn } from '../../functions/stores/dynamodb/stores.ts';
import type { Attribute, Table } from '../../functions/stores/dynamodb/table.ts';
import { UnreadableFact } from '../../functions/stores/faults.ts';
import type { TableName } from '../../shared/deployment/tables.ts';
import { partitions } from '../../shared/projections/items.ts';
import { streamOfSubmission, type Submission } from '../../shared/submissions/submission.ts';
import { delivery, world } from '../projections/support.ts';
import { correction, fact, onStrike } from '../support/submissions.ts';
import { recordOf } from './support/records.ts';

/**
 * A newer version of the software took facts in and was then replaced by this one. What it wrote is not passed over:
 * a fold that left it out would show a hydrant as in service that is not.
 */
const strike = fact('strike', 1, onStrike(1), { hydrantId: 'A' });
const elsewhere = fact('strike', 2, onStrike(2), { hydrantId: 'B' });
const ofAnotherForm = { ...fact('inspection', 3, onStrike(1)), kind: 'drone-survey' };
const correcting = correction(4, strike, { ...strike.body });

const unreadable: readonly [string, unknown][] = [
  ['a later schema', { ...strike, schemaVersion: 2 }],
  ['an unknown form', ofAnotherForm],
  [
    'a correction of an unknown form',
    { ...correcting, body: { ...correcting.body, targetKind: 'drone-survey' } },
  ],
];

/** The stores, and what another version would put into the ledger's table. */
function bench() {
  const tables = new Map<TableName, Table>();
  const open = (name: TableName): Table => tables.get(name) ?? tables.set(name, memoryTable()).get(name)!;
  const one = world(storesOn(open));
  const put = async (submission: Submission, content: Attribute): Promise<void> => {
    const [stream, submissionId] = [streamOfSubmission(submission), submission.submissionId];
    await one.unprojected.add({ stream, submissionId, attempt: 'newer', recordedAt: delivery.recordedAt });
    await open('submissions').put(
      {
        partition: stream,
        sort: submissionId,
        attributes: { recordedAt: delivery.recordedAt, attempt: 'newer', submission: content },
      },
      { absent: true },
    );
  };
  const logged: LogEntry[] = [];
  const handle = createStreamHandler({ ...createProjector(one), log: (entry) => void logged.push(entry) });
  return { one, put, handle, logged };
}
const later = new Date(Date.parse(delivery.recordedAt) + 3_600_000).toISOString();

describe.each(unreadable)('%s in the ledger', (_, written) => {
  const submission = written as Submission;

  it('fails whoever reads its stream, and says which it is', async () => {
    const { one, put } = bench();
    await one.ledger.accept(strike.submissionId === submission.submissionId ? elsewhere : strike, delivery);
    await put(submission, toJsonAttribute(submission));
    const reading = one.ledger.readStream(streamOfSubmission(submission));
    await expect(reading).rejects.toBeInstanceOf(UnreadableFact);
    await expect(reading).rejects.toThrow(submission.submissionId);
    // A rebuild would otherwise remove what the newer version had kept.
    await expect(rebuild(one, { write: true })).rejects.toBeInstanceOf(UnreadableFact);
  });

  it('is asked for again by its number, is said to be missing from the page, and holds up no other strike', async () => {
    const { one, put, handle, logged } = bench();
    await one.ledger.accept(elsewhere, delivery);
    await put(submission, toJsonAttribute(submission));
    const answer = await handle({ Records: [recordOf(submission, 1), recordOf(elsewhere, 2)] });
    expect(answer.batchItemFailures).toEqual([
      { itemIdentifier: recordOf(submission, 1).dynamodb!.SequenceNumber },
    ]);
    expect(await one.projections.get(partitions.hydrant, 'B')).not.toBeNull();
    expect(logged).toMatchObject([{ event: 'projection-failed', errorName: 'UnreadableFact' }]);
    // Also long after, when the ledger is asked whether the mark stands for a fact at all.
    expect(await unprojectedAt(one, later)).toEqual([delivery.recordedAt]);
  });
});

it.each(['not what a fact looks like', 'null', '7'])(
  'a row that is damaged ends the same way: %s',
  async (content) => {
    const { one, put, handle } = bench();
    await put(strike, content);
    expect(await handle({ Records: [recordOf(strike, 1)] })).toEqual({
      batchItemFailures: [{ itemIdentifier: recordOf(strike, 1).dynamodb!.SequenceNumber }],
    });
    await expect(one.ledger.readStream(streamOfSubmission(strike))).rejects.toBeInstanceOf(UnreadableFact);
    expect(await unprojectedAt(one, later)).toEqual([delivery.recordedAt]);
  },
);
