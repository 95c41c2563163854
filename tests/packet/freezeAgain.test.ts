import { describe, expect, it } from 'vitest';
import type { PacketsDeps } from '../../functions/packets/deps.ts';
import { StoreUnavailable } from '../../functions/stores/faults.ts';
import { asRecorded, demoClaim } from '../support/demoClaim.ts';
import { packetWorld } from '../support/packetWorld.ts';
import { total, changes, water, withLaterFact, checkIssued, together } from './freezing.ts';

describe('a freeze that stops anywhere and is asked again', () => {
  const writes = [
    'take the revision',
    'say the demand',
    'keep the file',
    'keep the archive',
    'append the fact',
  ] as const;

  /** Fails the nth write, before it is done or after it was. */
  function failing(deps: PacketsDeps, nth: number, when: 'before' | 'after'): PacketsDeps {
    let count = 0;
    const wrap =
      <A extends unknown[], R>(call: (...args: A) => Promise<R>) =>
      async (...args: A): Promise<R> => {
        const fails = count === nth;
        count += 1;
        if (fails && when === 'before') throw new StoreUnavailable('cut off');
        const answer = await call(...args);
        if (fails) throw new StoreUnavailable('cut off');
        return answer;
      };
    return {
      ...deps,
      unique: { ...deps.unique, take: wrap((...given) => deps.unique.take(...given)) },
      evidence: { ...deps.evidence, put: wrap((...given) => deps.evidence.put(...given)) },
      ledger: { ...deps.ledger, accept: wrap((...given) => deps.ledger.accept(...given)) },
    };
  }

  it.each(
    writes.flatMap((write, nth) => (['before', 'after'] as const).map((when) => [when, write, nth] as const)),
  )('cut off %s it could %s: one revision, with its file, and no hole', async (when, _, nth) => {
    const world = await packetWorld(demoClaim());
    const cut = await world.packet({ mode: 'freeze' }, undefined, failing(world.deps, nth, when));
    expect(cut.status).toBe(503);
    const retried = await world.packet({ mode: 'freeze' });
    expect(retried).toMatchObject({ status: 200, body: { revision: 1 } });
    await checkIssued(world, 1);
    expect((await world.packet({ mode: 'freeze' })).body).toEqual(
      expect.objectContaining({ revision: 1, pdfSha256: retried.body.pdfSha256 }),
    );
  });

  it('asked again after more facts have come: the number is not lost, and the newer facts are in it', async () => {
    const { claim, later } = withLaterFact();
    const world = await packetWorld(claim);
    await world.packet({ mode: 'freeze' }, undefined, failing(world.deps, 2, 'after'));
    await world.hand(asRecorded(later));
    const retried = await world.packet({ mode: 'freeze' });
    expect(retried.body).toMatchObject({ revision: 1, demandCents: total - water + 219_60 });
    await checkIssued(world, 1);
  });

  it('puts back a file that the store has lost', async () => {
    const world = await packetWorld(demoClaim());
    const { body } = await world.packet({ mode: 'freeze' });
    let lost = true;
    const evidence: PacketsDeps['evidence'] = {
      ...world.deps.evidence,
      has: async (hash) => !(lost && hash === body.pdfSha256) && world.deps.evidence.has(hash),
      put: async (bytes, type) => {
        lost = false;
        return world.deps.evidence.put(bytes, type);
      },
    };
    await world.packet({ mode: 'freeze' }, undefined, { ...world.deps, evidence });
    expect(lost).toBe(false);
  });
});

describe('freezing at the same time', () => {
  it('by several people: one revision, the same answer to each', async () => {
    const world = await packetWorld(demoClaim());
    let at = Date.parse('2026-11-25T14:05:00Z');
    const deps = together({ ...world.deps, now: () => new Date((at += 1000)) }, 3, 'packet-revision:');
    const answers = await Promise.all([1, 2, 3].map(() => world.packet({ mode: 'freeze' }, undefined, deps)));
    expect(answers.map(({ status }) => status)).toEqual([200, 200, 200]);
    expect(new Set(answers.map(({ body }) => body.pdfSha256)).size).toBe(1);
    await checkIssued(world, 1);
  });

  it('at different amounts: two revisions, no hole, each with its file', async () => {
    const world = await packetWorld(demoClaim());
    const deps = together(world.deps, 2, 'packet-revision:');
    const answers = await Promise.all(
      [500_00, 600_00].map((demandCents) =>
        world.packet({ mode: 'freeze', demandCents, changes }, undefined, deps),
      ),
    );
    expect(answers.map(({ status }) => status)).toEqual([200, 200]);
    const issued = await world.issued();
    expect(issued.map(({ revision }) => revision)).toEqual([1, 2]);
    expect(issued.map(({ demandCents }) => demandCents).sort()).toEqual([500_00, 600_00]);
    for (const { pdfSha256 } of issued) expect(await world.deps.evidence.has(pdfSha256)).toBe(true);
  });
});
