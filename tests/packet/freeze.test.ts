import { beforeAll, describe, expect, it } from 'vitest';
import type { PacketsDeps } from '../../functions/packets/deps.ts';
import { StoreUnavailable } from '../../functions/stores/faults.ts';
import { readPacketTotals } from '../../infra/local/packetTotals.ts';
import type { Submission } from '../../shared/submissions/submission.ts';
import { asRecorded, demoCase, demoClaim, type DemoClaim } from '../support/demoClaim.ts';
import { packetWorld } from '../support/packetWorld.ts';

type World = Awaited<ReturnType<typeof packetWorld>>;

/** The demo's own figures, read once from its statement: what is tested here is what becomes of them. */
const { statement } = demoCase(demoClaim());
const total = statement.totalCents;
const part = Math.floor(total / 2);
const water = statement.sections.find(({ section }) => section === 'water')!.subtotalCents;

/** A later fact of the same strike: another figure for the water lost. */
function withLaterFact(): { claim: DemoClaim; later: DemoClaim['submissions'] } {
  const claim = demoClaim();
  const known = new Set(claim.submissions.map(({ submissionId }) => submissionId));
  const more = demoClaim((teller, { strikeId }) => {
    teller.tell('water-lost', { type: 'strike', strikeId }, 1, {
      waterLostGal: 30_000,
      method: 'other',
      basis: 'later figure',
      flowingFrom: null,
      flowingTo: null,
      byWorkerId: 'w-101',
      note: null,
    });
  });
  return { claim, later: more.submissions.filter(({ submissionId }) => !known.has(submissionId)) };
}

async function checkIssued(world: World, revisions: number): Promise<void> {
  const issued = await world.issued();
  expect(issued.map(({ revision }) => revision)).toEqual(
    Array.from({ length: revisions }, (_, index) => index + 1),
  );
  for (const { pdfSha256, demandCents } of issued) {
    const pdf = await world.deps.evidence.get(pdfSha256);
    expect(pdf).not.toBeNull();
    expect((await readPacketTotals(pdf!)).totalCents).toBe(demandCents);
  }
}

it('GET statement answers the statement of the claim’s strike', async () => {
  const world = await packetWorld(demoClaim());
  const answer = await world.ask(`/api/claims/${demoClaim().claimId}/statement`);
  expect(answer).toEqual({ status: 200, body: JSON.parse(JSON.stringify(statement)) });
});

describe('freezing', () => {
  it('issues revision 1 with its file, and answers the same again when nothing has changed', async () => {
    const world = await packetWorld(demoClaim());
    const first = await world.packet({ mode: 'freeze' });
    expect(first).toMatchObject({ status: 200, body: { revision: 1, demandCents: total, problems: [] } });
    expect(first.body.url).toContain('/local/evidence/');
    const again = await world.packet({ mode: 'freeze' }, undefined, {
      ...world.deps,
      now: () => new Date('2026-12-01T00:00:00Z'),
    });
    expect(again.body).toMatchObject({ revision: 1, pdfSha256: first.body.pdfSha256 });
    await checkIssued(world, 1);
  });

  it('makes the next revision when a fact has come since', async () => {
    const { claim, later } = withLaterFact();
    const world = await packetWorld(claim);
    await world.packet({ mode: 'freeze' });
    await world.hand(asRecorded(later));
    const second = await world.packet({ mode: 'freeze' });
    // 30 thousand gallons at the demo's 7.32 are 219.60.
    expect(second.body).toMatchObject({ revision: 2, demandCents: total - water + 219_60 });
    await checkIssued(world, 2);
  });

  it('makes the next revision when a photo has arrived since', async () => {
    const claim = demoClaim();
    const world = await packetWorld(claim);
    let hidden = true;
    const evidence = {
      ...world.deps.evidence,
      get: async (hash: string) => (hidden ? null : world.deps.evidence.get(hash)),
    };
    const first = await world.packet({ mode: 'freeze' }, undefined, { ...world.deps, evidence });
    hidden = false;
    const second = await world.packet({ mode: 'freeze' }, undefined, { ...world.deps, evidence });
    expect([first.body.revision, second.body.revision]).toEqual([1, 2]);
  });

  it('never dates a packet before what it tells of, whatever the server’s clock says', async () => {
    const world = await packetWorld(demoClaim());
    await world.packet({ mode: 'freeze' }, undefined, {
      ...world.deps,
      now: () => new Date('2026-01-01T00:00:00Z'),
    });
    const [fact] = await world.stores.ledger
      .readStream(`claim:${demoClaim().claimId}`)
      .then((all) => all.filter(({ submission }) => submission.kind === 'packet-frozen'));
    expect(Date.parse((fact!.submission.body as { frozenAt: string }).frozenAt)).toBeGreaterThan(
      Date.parse('2026-11-01T00:00:00Z'),
    );
  });
});

describe('a freeze that stops anywhere and is asked again', () => {
  const writes = ['take the revision', 'say the demand', 'keep the file', 'append the fact'] as const;

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

/**
 * Holds the first `count` takers of a name until all of them have come so far, so that each has read the ledger before
 * any has written: left alone, the twins in memory answer so fast that one is done before the next begins.
 */
function together(deps: PacketsDeps, count: number, space: string): PacketsDeps {
  let open = (): void => undefined;
  const all = new Promise<void>((resolve) => (open = resolve));
  let come = 0;
  return {
    ...deps,
    unique: {
      ...deps.unique,
      take: async (taken, name, owner) => {
        if (taken.startsWith(space)) {
          come += 1;
          if (come === count) open();
          if (come <= count) await all;
        }
        return deps.unique.take(taken, name, owner);
      },
    },
  };
}

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
      [500_00, 600_00].map((demandCents) => world.packet({ mode: 'freeze', demandCents }, undefined, deps)),
    );
    expect(answers.map(({ status }) => status)).toEqual([200, 200]);
    const issued = await world.issued();
    expect(issued.map(({ revision }) => revision)).toEqual([1, 2]);
    expect(issued.map(({ demandCents }) => demandCents).sort()).toEqual([500_00, 600_00]);
    for (const { pdfSha256 } of issued) expect(await world.deps.evidence.has(pdfSha256)).toBe(true);
  });
});

describe('what may not be frozen', () => {
  let world: World;
  beforeAll(async () => {
    world = await packetWorld(demoClaim());
  });

  it('more than the statement', async () => {
    expect(await world.packet({ mode: 'freeze', demandCents: total + 1 })).toMatchObject({
      status: 422,
      body: {
        problems: [{ code: 'demand-above-statement', path: 'demandCents', params: { leftCents: total } }],
      },
    });
  });

  it('a claim that does not exist, or by a crew', async () => {
    expect((await world.packet({ mode: 'freeze' }, '01a1bb07-9a00-701a-8c32-6b6fc0543d1a')).status).toBe(404);
    expect(
      (
        await world.ask(`/api/claims/${demoClaim().claimId}/packet`, {
          role: 'crew',
          body: { mode: 'freeze' },
        })
      ).status,
    ).toBe(403);
    expect((await world.ask(`/api/claims/${demoClaim().claimId}/statement`, { role: 'crew' })).status).toBe(
      403,
    );
  });

  it('anything but a freeze or a preview', async () => {
    expect(await world.packet({ mode: 'send' })).toMatchObject({
      status: 422,
      body: { problems: [{ path: 'mode' }] },
    });
  });

  it('a strike that is not closed, a claim on nobody, an incomplete statement: all said at once; a preview is', async () => {
    const whole = demoClaim();
    const returns = whole.submissions.filter(
      ({ kind, subject }) =>
        kind === 'return-to-service' && subject.type === 'strike' && subject.strikeId === whole.strikeId,
    );
    expect(returns).toHaveLength(1);
    const open: DemoClaim = {
      ...whole,
      submissions: whole.submissions.flatMap((submission): Submission[] => {
        if (submission === returns[0]) return [];
        if (submission.kind === 'claim-opened')
          return [
            { ...submission, body: { ...submission.body, payer: { ...submission.body.payer, name: null } } },
          ];
        return submission.kind === 'rate-book'
          ? [{ ...submission, body: { ...submission.body, labor: [] } }]
          : [submission];
      }),
    };
    const other = await packetWorld(open);
    const refused = await other.packet({ mode: 'freeze' });
    expect(refused.status).toBe(422);
    expect(refused.body.problems.map(({ code }: { code: string }) => code)).toEqual([
      'strike-not-closed',
      'payer-not-known',
      'statement-incomplete',
    ]);
    const preview = await other.packet({ mode: 'preview' });
    expect(preview).toMatchObject({ status: 200, body: { revision: null } });
    expect(preview.body.problems).toHaveLength(3);
    expect(preview.body.problems[0].message).toContain('not closed');
    expect(await other.issued()).toEqual([]);
  });
});

describe('several claims of one strike never demand more than its statement', () => {
  async function twoClaims(): Promise<{ world: World; second: string }> {
    let second = '';
    const claim = demoClaim((teller, { strikeId }) => {
      second = teller.id(200);
      teller.tell(
        'claim-opened',
        { type: 'claim', claimId: second },
        200,
        {
          strikeId,
          partyId: null,
          claimNumber: '2026-0009',
          payerKind: 'self-insured',
          payer: { name: 'Wherry Freight', address: null, attention: null, reference: null },
          note: null,
        },
        { role: 'clerk' },
      );
    });
    return { world: await packetWorld(claim), second };
  }

  it('the second gets what the first leaves', async () => {
    const { world, second } = await twoClaims();
    await world.packet({ mode: 'freeze', demandCents: part });
    expect((await world.packet({ mode: 'freeze' }, second)).body).toMatchObject({
      revision: 1,
      demandCents: total - part,
    });
    expect((await world.packet({ mode: 'freeze', demandCents: part + 1 })).body).toMatchObject({
      problems: [{ code: 'demand-above-statement', params: { leftCents: part, claims: '2026-0009' } }],
    });
  });

  it('nothing is left when the first demands it all', async () => {
    const { world, second } = await twoClaims();
    await world.packet({ mode: 'freeze' });
    expect((await world.packet({ mode: 'freeze' }, second)).body).toMatchObject({
      problems: [{ code: 'nothing-left-to-demand', params: { claims: '2026-0001' } }],
    });
  });

  it('at the same moment: together no more than the statement, whoever wins', async () => {
    const { world, second } = await twoClaims();
    const deps = together(world.deps, 2, 'demand:');
    const freeze = (claimId?: string) => world.packet({ mode: 'freeze' }, claimId, deps);
    const answers = await Promise.all([freeze(), freeze(second)]);
    const demanded = answers.reduce(
      (sum, { status, body }) => sum + (status === 200 ? Number(body.demandCents) : 0),
      0,
    );
    expect(demanded).toBeLessThanOrEqual(total);
    // Each saw the other's word and took its own back; asked again one after the other, the first gets it all.
    expect((await freeze()).body).toMatchObject({ revision: 1, demandCents: total });
    expect((await freeze(second)).body.problems).toMatchObject([{ code: 'nothing-left-to-demand' }]);
  });
});
