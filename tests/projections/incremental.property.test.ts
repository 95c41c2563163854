import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { projectStream } from '../../functions/project/project.ts';
import { rebuild } from '../../functions/project/rebuild.ts';
import { streamOfSubmission, type Submission } from '../../shared/submissions/submission.ts';
import { randomSubmissions } from '../support/randomSubmissions.ts';
import { acceptAll, delivery, kept, world } from './support.ts';

/**
 * What is kept after every fact was projected, in whatever order, late, twice or at the same time, is what a rebuild
 * from nothing computes.
 */
const shuffled = (submissions: readonly Submission[]): fc.Arbitrary<Submission[]> =>
  fc.shuffledSubarray([...submissions], { minLength: submissions.length, maxLength: submissions.length });

/** Submissions in their order of arrival, and for each whether it is projected at once. */
const arrivals = randomSubmissions().chain((submissions) =>
  fc.record({
    order: shuffled(submissions),
    atOnce: fc.infiniteStream(fc.boolean()),
    late: shuffled([...submissions, ...submissions.slice(0, 3)]),
  }),
);

describe('incremental projection ends as a rebuild does', { timeout: 120_000 }, () => {
  it('in any order of arrival, with projections that come late and twice', async () => {
    await fc.assert(
      fc.asyncProperty(arrivals, async ({ order, atOnce, late }) => {
        const one = world();
        for (const submission of order) {
          await one.ledger.accept(submission, delivery);
          if (atOnce.next().value === true) await projectStream(one, streamOfSubmission(submission));
        }
        for (const submission of late) await projectStream(one, streamOfSubmission(submission));
        expect((await rebuild(one, { write: false })).differences).toEqual([]);
      }),
      { numRuns: 300 },
    );
  });

  it('and another order of arrival ends the same', async () => {
    await fc.assert(
      fc.asyncProperty(
        randomSubmissions().chain((all) => fc.tuple(fc.constant(all), shuffled(all))),
        async ([first, second]) => {
          const ends = [];
          for (const order of [first, second]) {
            const one = world();
            for (const submission of order) {
              await one.ledger.accept(submission, delivery);
              await projectStream(one, streamOfSubmission(submission));
            }
            ends.push(await kept(one));
          }
          expect(ends[1]).toEqual(ends[0]);
        },
      ),
      { numRuns: 200 },
    );
  });

  it('a repair from any state of what is kept ends there too', async () => {
    await fc.assert(
      fc.asyncProperty(
        randomSubmissions(),
        fc.array(fc.tuple(fc.nat(), fc.boolean()), { maxLength: 6 }),
        async (submissions, spoiling) => {
          const one = world();
          await acceptAll(one, submissions);
          expect((await rebuild(one, { write: true })).left).toEqual([]);
          const before = await kept(one);
          const names = Object.keys(before);
          for (const [at, remove] of spoiling) {
            const [partition = '', ...rest] = (names[at % names.length] ?? '').split(' ');
            const key = rest.join(' ');
            const version = await one.projections.versionOf(partition, key);
            if (remove) await one.projections.remove(partition, key, version);
            else await one.projections.put(partition, key, { spoiled: true, readers: [] }, version);
          }
          expect((await rebuild(one, { write: true })).left).toEqual([]);
          expect(await kept(one)).toEqual(before);
        },
      ),
      { numRuns: 150 },
    );
  });
});
