import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ProjectionContended } from '../../functions/project/deps.ts';
import { projectStream } from '../../functions/project/project.ts';
import { rebuild } from '../../functions/project/rebuild.ts';
import { memoryTable } from '../../functions/stores/dynamodb/memoryTable.ts';
import { storesOn } from '../../functions/stores/dynamodb/stores.ts';
import type { Table } from '../../functions/stores/dynamodb/table.ts';
import { streamOfSubmission } from '../../shared/submissions/submission.ts';
import { randomSubmissions } from '../support/randomSubmissions.ts';
import { delivery, world, type World } from './support.ts';

/** A table whose every request waits for its turn, and the turn is drawn: so every interleaving can happen. */
function interleaved(table: Table, scheduler: fc.Scheduler): Table {
  const turn = async <T>(request: () => Promise<T>): Promise<T> => {
    await scheduler.schedule(Promise.resolve());
    return request();
  };
  return {
    get: (key) => turn(() => table.get(key)),
    getMany: (keys) => turn(() => table.getMany(keys)),
    put: (row, condition) => turn(() => table.put(row, condition)),
    remove: (key) => turn(() => table.remove(key)),
    query: (partition, prefix) => turn(() => table.query(partition, prefix)),
    scan: () => table.scan(),
  };
}

/** The service delivers a record again when its handler gave up, at most so often. */
async function delivered(one: World, stream: string): Promise<void> {
  for (let delivery = 1; ; delivery += 1)
    try {
      await projectStream(one, stream);
      return;
    } catch (error) {
      if (!(error instanceof ProjectionContended) || delivery === 10) throw error;
    }
}

describe('handlers that accept and project at the same time', { timeout: 120_000 }, () => {
  it('end as a rebuild does, whichever request comes first', async () => {
    await fc.assert(
      fc.asyncProperty(fc.scheduler(), randomSubmissions(12), async (scheduler, submissions) => {
        const tables = [memoryTable(), memoryTable(), memoryTable(), memoryTable()];
        let opened = 0;
        const stores = storesOn(() => {
          const table = tables[opened++ % 4]!;
          return interleaved(table, scheduler);
        });
        const one = world(stores);
        // One handler a submission, all at once, as Lambda would run them.
        const handlers = Promise.all(
          submissions.map(async (submission) => {
            await one.ledger.accept(submission, delivery);
            await delivered(one, streamOfSubmission(submission));
          }),
        );
        await scheduler.waitFor(handlers);
        const reading = rebuild(one, { write: false });
        const { differences } = await scheduler.waitFor(reading);
        expect(differences).toEqual([]);
      }),
      { numRuns: 300 },
    );
  });
});
