import { expect, it } from 'vitest';
import { projectStream } from '../../functions/project/project.ts';
import { rebuild } from '../../functions/project/rebuild.ts';
import { streamOfSubmission } from '../../shared/submissions/submission.ts';
import { fact, onHydrant, onStrike } from '../support/submissions.ts';
import { acceptAll, delivery, kept, world } from './support.ts';

const facts = [
  fact('strike', 1, onStrike(1), { hydrantId: 'A' }),
  fact('party', 2, onStrike(1)),
  fact('strike', 3, onStrike(3), { hydrantId: 'A' }),
  fact('outage', 4, onHydrant('B')),
];
const late = fact('inspection', 5, onHydrant('A'));

it('a rebuild of nothing writes each item once', async () => {
  const one = world();
  await acceptAll(one, facts);
  expect((await rebuild(one, { write: true })).left).toEqual([]);
  for (const { version } of await one.projections.list('strike')) expect(version).toBe(1);
  expect((await rebuild(one, { write: false })).differences).toEqual([]);
});

it('a fact that comes in at any write of a rebuild, and its projection, end in what all facts say', async () => {
  const whole = world();
  await acceptAll(whole, [...facts, late]);
  await rebuild(whole, { write: true });
  const end = await kept(whole);
  for (let write = 1; write <= Object.keys(end).length; write += 1) {
    const one = world();
    await acceptAll(one, facts);
    let writes = 0;
    const arriving: typeof one = {
      ...one,
      projections: {
        ...one.projections,
        put: async (...args) => {
          writes += 1;
          if (writes === write) {
            await one.ledger.accept(late, delivery);
            await projectStream(one, streamOfSubmission(late));
          }
          return one.projections.put(...args);
        },
      },
    };
    await rebuild(arriving, { write: true });
    expect(await kept(one), `at write ${write}`).toEqual(end);
  }
});

it('what was removed before is found by its version and written anew', async () => {
  const one = world();
  await acceptAll(one, facts);
  await rebuild(one, { write: true });
  await one.projections.remove('hydrant', 'A', 1);
  expect((await rebuild(one, { write: true })).left).toEqual([]);
  expect((await one.projections.get('hydrant', 'A'))?.version).toBeGreaterThan(2);
});
