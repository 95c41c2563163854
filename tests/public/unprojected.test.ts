import fc from 'fast-check';
import { beforeEach, describe, expect, test } from 'vitest';
import { projectStream } from '../../functions/project/project.ts';
import { replayUnprojected } from '../../functions/project/rebuild.ts';
import { readSources } from '../../functions/publish/sources.ts';
import { memoryStores, type TableStores } from '../../functions/stores/dynamodb/stores.ts';
import { StoreUnavailable } from '../../functions/stores/faults.ts';
import { markedLedger } from '../../functions/stores/ledger/markedLedger.ts';
import { objectInventory } from '../../functions/stores/inventory/objectInventory.ts';
import { openObjectStore } from '../../functions/stores/objects/open.ts';
import { buildEdition } from '../../shared/public/build.ts';
import { partitions } from '../../shared/projections/items.ts';
import { streamOfSubmission, type Submission } from '../../shared/submissions/submission.ts';
import { fact, onClaim, onStrike, uuid } from '../support/submissions.ts';
import { townSettings } from '../support/town.ts';

const hydrantType = async () => 'dry-barrel' as const;
let stores: TableStores;
beforeEach(() => {
  stores = memoryStores();
});

const RECORDED_AT = '2026-03-05T12:00:00.000Z';
const CHECKED_AT = '2026-03-05T12:00:05.000Z';
const accept = (submission: Submission, recordedAt = RECORDED_AT) =>
  stores.ledger.accept(submission, { recordedAt, deliveredBy: null });
const projectOf = (submission: Submission) =>
  projectStream({ ...stores, hydrantType }, streamOfSubmission(submission));

/** What a publisher of that check would show; the projector never comes while it waits, unless the pause brings it. */
async function snapshotAt(checkedAt: string, pause: () => Promise<void> = async () => undefined) {
  const inventory = objectInventory(await openObjectStore('memory:'));
  const sources = await readSources({ ...stores, inventory, pause }, checkedAt);
  return buildEdition(sources, townSettings, checkedAt).snapshot;
}
const strike = fact('strike', 1, onStrike(1));

describe('a strike that was accepted and is not projected yet', () => {
  test('is said to be missing, with the time since when', async () => {
    await accept(strike);
    const { notYetShown, outOfService } = await snapshotAt(CHECKED_AT);
    expect(outOfService).toEqual([]);
    expect(notYetShown).toEqual({ reports: 1, since: RECORDED_AT });
  });

  test('is missed by nobody when it is a trial', async () => {
    await accept({ ...strike, test: true });
    expect((await snapshotAt(CHECKED_AT)).notYetShown).toBeUndefined();
  });

  test('is on the page, and nothing is missing, once it is projected', async () => {
    await accept(strike);
    await projectOf(strike);
    const { notYetShown, outOfService } = await snapshotAt(CHECKED_AT);
    expect(notYetShown).toBeUndefined();
    expect(outOfService).toHaveLength(1);
  });

  test('is waited for a little', async () => {
    await accept(strike);
    let pauses = 0;
    const { notYetShown, outOfService } = await snapshotAt(CHECKED_AT, async () => {
      pauses += 1;
      if (pauses === 3) await projectOf(strike);
    });
    expect(pauses).toBe(3);
    expect([notYetShown, outOfService.length]).toEqual([undefined, 1]);
  });

  test('is still said to be missing long after, while the projector is stuck, and not waited for again', async () => {
    await accept(strike);
    let pauses = 0;
    const { notYetShown } = await snapshotAt('2026-03-05T13:00:00.000Z', async () => void (pauses += 1));
    expect(notYetShown).toEqual({ reports: 1, since: RECORDED_AT });
    expect(pauses).toBe(0);
  });

  test('is no lack of a check before it', async () => {
    await accept(strike, '2026-03-05T12:00:06.000Z');
    expect((await snapshotAt(CHECKED_AT)).notYetShown).toBeUndefined();
  });

  test('is made good, and its mark taken away, by a start after a kill', async () => {
    await accept(strike);
    await replayUnprojected({ ...stores, hydrantType });
    expect(await stores.unprojected.list()).toEqual([]);
    expect((await snapshotAt(CHECKED_AT)).outOfService).toHaveLength(1);
  });
});

describe('what is no lack', () => {
  test('a claim’s facts, which no page lists', async () => {
    await accept(fact('legal-hold', 2, onClaim(2)));
    expect(await stores.unprojected.list()).toHaveLength(1);
    expect((await snapshotAt(CHECKED_AT)).notYetShown).toBeUndefined();
  });

  test('a mark whose fact never came, because the attempt ended in between', async () => {
    const mark = { stream: streamOfSubmission(strike), submissionId: uuid(1), attempt: 'a' };
    await stores.unprojected.add({ ...mark, recordedAt: '2026-03-05T11:00:00.000Z' });
    expect((await snapshotAt(CHECKED_AT)).notYetShown).toBeUndefined();
    // One of just now may be about to be followed by its fact.
    await stores.unprojected.add({ ...mark, attempt: 'b', recordedAt: RECORDED_AT });
    expect((await snapshotAt(CHECKED_AT)).notYetShown).toMatchObject({ reports: 1 });
  });

  test('a repeat, a clash or a second correction', async () => {
    await accept(strike);
    await projectOf(strike);
    expect(await accept(strike)).toMatchObject({ outcome: 'repeat' });
    const other = fact('strike', 1, onStrike(1), { hydrantId: 'H-99' });
    expect(await accept(other)).toMatchObject({ outcome: 'clash' });
    expect(await stores.unprojected.list()).toEqual([]);
  });
});

test('an attempt that failed leaves its mark, because the fact may stand all the same', async () => {
  const failing = markedLedger(
    {
      ...stores.ledger,
      accept: async (submission, delivery) => {
        await stores.ledger.accept(submission, delivery);
        throw new StoreUnavailable('the answer was lost');
      },
    },
    stores.unprojected,
  );
  const attempt = failing.accept(strike, { recordedAt: RECORDED_AT, deliveredBy: null });
  await expect(attempt).rejects.toBeInstanceOf(StoreUnavailable);
  expect((await snapshotAt(CHECKED_AT)).notYetShown).toMatchObject({ reports: 1 });
  await projectOf(strike);
  expect(await stores.unprojected.list()).toEqual([]);
});

describe('at every moment', () => {
  test('a fact that stands is projected or marked, however attempts, repeats and projections interleave', async () => {
    type Step = { readonly what: 'accept' | 'project'; readonly strike: number; readonly waits: number };
    const step = fc.record({
      what: fc.constantFrom<Step['what']>('accept', 'project'),
      strike: fc.integer({ min: 1, max: 2 }),
      waits: fc.integer({ min: 0, max: 12 }),
    });
    await fc.assert(
      fc.asyncProperty(fc.array(step, { minLength: 2, maxLength: 10 }), async (steps) => {
        stores = memoryStores();
        const strikes = [1, 2].map((number) => fact('strike', number, onStrike(number)));
        const holds = async (): Promise<void> => {
          // As the publisher does: the marks first, then what is kept; and the ledger before either.
          const standing = [];
          for (const one of strikes)
            if ((await stores.ledger.readStream(streamOfSubmission(one))).length > 0) standing.push(one);
          const marked = new Set((await stores.unprojected.list()).map(({ submissionId }) => submissionId));
          for (const { submissionId } of standing)
            if (!marked.has(submissionId))
              expect(await stores.projections.get(partitions.strike, submissionId)).not.toBeNull();
        };
        await Promise.all([
          ...steps.map(async ({ what, strike: number, waits }) => {
            for (let turn = 0; turn < waits; turn++) await Promise.resolve();
            const one = strikes[number - 1]!;
            await (what === 'accept' ? accept(one) : projectOf(one));
          }),
          (async () => {
            for (let look = 0; look < 12; look++) await holds();
          })(),
        ]);
        await holds();
        for (const one of strikes) await projectOf(one);
        expect(await stores.unprojected.list()).toEqual([]);
      }),
      { numRuns: 150 },
    );
  });
});
