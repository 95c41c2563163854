import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { rebuild } from '../../functions/project/rebuild.ts';
import type { KeptItem } from '../../functions/project/deps.ts';
import { memoryStores, type TableStores } from '../../functions/stores/dynamodb/stores.ts';
import { hydrantSubject, placeSubject, type DispatchNotice } from '../../shared/dispatch/notice.ts';
import type { HydrantStatus } from '../../shared/outages/hydrantStatus.ts';
import { partitions } from '../../shared/projections/items.ts';
import type { StrikeState } from '../../shared/strikes/state.ts';
import type { Submission } from '../../shared/submissions/submission.ts';
import { dispatchWorld, recipients } from '../support/dispatchWorld.ts';
import { hydrantIds, randomSubmissions } from '../support/randomSubmissions.ts';
import { at, uuid } from '../support/submissions.ts';

/** A night whose facts all lie within its first 45 minutes, and what a stream may do with them. */
const night = randomSubmissions(14).chain((made) =>
  fc.record({
    order: fc.shuffledSubarray([...made], { minLength: made.length, maxLength: made.length }),
    // For each fact: how many of the records that wait are delivered after it, how often, and how many at once.
    deliveries: fc.array(
      fc.record({ some: fc.nat(6), times: fc.integer({ min: 1, max: 3 }), atOnce: fc.boolean() }),
      { minLength: made.length, maxLength: made.length },
    ),
  }),
);

const subjects = [...hydrantIds.map(hydrantSubject), ...[1, 2, 3, 4, 5].map((n) => placeSubject(uuid(n)))];

async function told(stores: TableStores): Promise<ReadonlyMap<string, readonly DispatchNotice[]>> {
  const all = await Promise.all(
    subjects.map(
      async (subject) => [subject, (await stores.notices.of(subject)).map(({ value }) => value)] as const,
    ),
  );
  return new Map(all);
}

async function outNow({ projections }: TableStores): Promise<ReadonlySet<string>> {
  const hydrants = await projections.list<HydrantStatus>(partitions.hydrant);
  const strikes = await projections.list<StrikeState>(partitions.strike);
  return new Set([
    ...hydrants.flatMap(({ key, value }) => (value.inService ? [] : [hydrantSubject(key)])),
    ...strikes.flatMap(({ key, value }) =>
      value.returnedAt === null &&
      value.hydrantIds.length === 0 &&
      (value.position !== null || value.placeDescription !== null)
        ? [placeSubject(key)]
        : [],
    ),
  ]);
}

async function everything({ projections }: TableStores): Promise<KeptItem[]> {
  const all: KeptItem[] = [];
  for (const partition of [partitions.hydrant, partitions.strike, partitions.joined])
    for (const { key } of await projections.list(partition)) all.push({ partition, key });
  return [
    ...all,
    ...hydrantIds.map((key) => ({ partition: partitions.hydrant, key })),
    ...[1, 2, 3, 4, 5].map((n) => ({ partition: partitions.strike, key: uuid(n) })),
  ];
}

interface Night {
  readonly order: readonly Submission[];
  readonly deliveries: readonly { readonly some: number; readonly times: number; readonly atOnce: boolean }[];
}

/** Facts in this order, records late, in part, several times, and several wakings at once. */
async function live({ order, deliveries }: Night) {
  const world = dispatchWorld({ now: () => new Date(at(60)) });
  const waiting: KeptItem[] = [];
  let running: Promise<unknown>[] = [];
  for (const [index, submission] of order.entries()) {
    // While the wakings of before may still be at it.
    await world.accept(submission);
    await Promise.all(running);
    waiting.push(...world.take());
    const { some, times, atOnce } = deliveries[index]!;
    const records = waiting.splice(0, some);
    const wakings = Array.from({ length: times }, () => () => world.wake(records));
    if (atOnce) running = wakings.map((wake) => wake());
    else for (const wake of wakings) await wake();
  }
  await Promise.all(running);
  await world.wake(waiting);
  return world;
}

describe('whatever the order, the delay and the repeats of facts and records', () => {
  it('dispatch ends up told what is, once a change and recipient', async () => {
    await fc.assert(
      fc.asyncProperty(night, async (drawn) => {
        const world = await live(drawn);
        const out = await outNow(world.stores);
        const notices = await told(world.stores);
        let messages = 0;
        let overtaken = 0;
        for (const [subject, own] of notices) {
          expect([subject, own.at(-1)?.what === 'out']).toEqual([subject, out.has(subject)]);
          expect(own.map(({ number }) => number)).toEqual(own.map((_, index) => index + 1));
          // Out, not out, out: never the same twice.
          for (const [index, { what }] of own.entries()) expect(what === 'out').toBe(index % 2 === 0);
          for (const notice of own) {
            expect(notice.held).toBeNull();
            const deliveries = (await world.stores.notices.deliveriesOf(notice)).map(({ value }) => value);
            expect(deliveries.map(({ recipientId }) => recipientId).sort()).toEqual(
              recipients.map(({ recipientId }) => recipientId).sort(),
            );
            for (const { state } of deliveries) {
              expect(['sent', 'overtaken']).toContain(state);
              if (state === 'overtaken') overtaken += 1;
            }
            messages += deliveries.length;
          }
        }
        expect(world.went).toHaveLength(messages - overtaken);
      }),
      { numRuns: 150 },
    );
  }, 120_000);

  it('looking at everything again, and a rebuild of what is kept, send nothing more', async () => {
    await fc.assert(
      fc.asyncProperty(night, async (drawn) => {
        const world = await live(drawn);
        const before = { told: await told(world.stores), went: world.went.length };
        await world.wake(await everything(world.stores));
        // From nothing: another projections table, the same ledger and the same outbox.
        const anew: TableStores = { ...world.stores, projections: memoryStores().projections };
        await rebuild({ ...anew, hydrantType: async () => 'unknown' }, { write: true });
        const again = dispatchWorld({ stores: anew, now: () => new Date(at(600)) });
        await again.wake(await everything(anew));
        expect(await told(anew)).toEqual(before.told);
        expect([world.went.length, again.went.length]).toEqual([before.went, 0]);
      }),
      { numRuns: 60 },
    );
  }, 120_000);

  it('with the outbox lost as well, nothing older than the stated age is sent', async () => {
    await fc.assert(
      fc.asyncProperty(night, async (drawn) => {
        const world = await live(drawn);
        const { notices, outbox } = memoryStores();
        const lost: TableStores = { ...world.stores, notices, outbox };
        const thirteenHours = dispatchWorld({ stores: lost, now: () => new Date(at(45 + 13 * 60)) });
        await thirteenHours.wake(await everything(lost));
        expect(thirteenHours.went).toEqual([]);
        for (const own of (await told(lost)).values())
          expect(own.every(({ held }) => held === 'too-old')).toBe(true);
      }),
      { numRuns: 60 },
    );
  }, 120_000);
});
