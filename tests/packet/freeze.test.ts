import { createHash } from 'node:crypto';
import { unzipSync } from 'fflate';
import { compactVerify, createLocalJWKSet } from 'jose';
import { beforeAll, describe, expect, it } from 'vitest';
import { runJob } from '../../functions/packets/jobs.ts';
import { packetContentSchema } from '../../shared/packet/schema.ts';
import { attachmentsOf, everythingIn, withPdf } from '../support/pdf.ts';
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
const changes = 'Another figure for the water.';
const water = statement.sections.find(({ section }) => section === 'water')!.subtotalCents;

const attachedTo = async (pdf: Uint8Array): Promise<string> =>
  new Map(await withPdf(pdf, attachmentsOf)).get('packet.json')!;

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
    const second = await world.packet({ mode: 'freeze', changes });
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
    const second = await world.packet({ mode: 'freeze', changes }, undefined, { ...world.deps, evidence });
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

describe('a further revision', () => {
  it('asks what changed and why, and says it at the front with the records that came since', async () => {
    const { claim, later } = withLaterFact();
    const world = await packetWorld(claim);
    await world.packet({ mode: 'freeze' });
    await world.hand(asRecorded(later));
    expect(await world.packet({ mode: 'freeze' })).toMatchObject({
      status: 422,
      body: { problems: [{ code: 'changes-needed', path: 'changes', params: { revision: 1 } }] },
    });
    await world.packet({ mode: 'freeze', changes });
    const second = (await world.issued())[1]!;
    expect(second).toMatchObject({ revision: 2, changes });
    const text = (await everythingIn((await world.deps.evidence.get(second.pdfSha256))!)).replaceAll(
      /\s+/g,
      ' ',
    );
    expect(text).toContain(changes);
    expect(text).toContain('One record was added since revision 1: – Water lost, recorded');
    // Nothing has changed since: the same revision again, whatever is said of it.
    expect((await world.packet({ mode: 'freeze', changes: 'Nothing at all' })).body).toMatchObject({
      revision: 2,
    });
  });
});

describe('what an issued packet has beside it', () => {
  it('a signature that anyone can check with the public keys, and no other hash passes', async () => {
    const world = await packetWorld(demoClaim());
    const { body } = await world.packet({ mode: 'freeze' });
    const keys = createLocalJWKSet((await world.ask('/api/packet-keys')).body);
    const { payload, protectedHeader } = await compactVerify(body.signature, keys);
    expect(JSON.parse(Buffer.from(payload).toString())).toEqual({
      claimNumber: '2026-0001',
      pdfSha256: body.pdfSha256,
      revision: 1,
    });
    const { keyId } = (await world.issued())[0]!;
    expect(protectedHeader).toMatchObject({ alg: 'ES256', kid: keyId });
    const [head, , signature] = body.signature.split('.');
    const other = Buffer.from(
      JSON.stringify({ claimNumber: '2026-0001', pdfSha256: 'f'.repeat(64), revision: 1 }),
    );
    await expect(compactVerify(`${head}.${other.toString('base64url')}.${signature}`, keys)).rejects.toThrow(
      'signature verification failed',
    );
  });

  it('an archive with every original under its number, the data, the signature and a manifest of hashes', async () => {
    const world = await packetWorld(demoClaim());
    const { body } = await world.packet({ mode: 'freeze' });
    const { archiveSha256, archiveBytes } = (await world.issued())[0]!;
    const archive = (await world.deps.evidence.get(archiveSha256!))!;
    expect(archive.byteLength).toBe(archiveBytes);
    const files = unzipSync(archive);
    const manifest = Buffer.from(files['manifest.txt']!).toString();
    const listed = [...manifest.matchAll(/^([0-9a-f]{64}) {2}(\S+)$/gm)].map(
      ([, hash, name]) => [name!, hash!] as const,
    );
    expect(listed.map(([name]) => name).sort()).toEqual(
      Object.keys(files)
        .filter((name) => name !== 'manifest.txt')
        .sort(),
    );
    for (const [name, hash] of listed)
      expect(createHash('sha256').update(files[name]!).digest('hex'), name).toBe(hash);
    expect(Buffer.from(files['packet.pdf.jws']!).toString().trim()).toBe(body.signature);
    const content = packetContentSchema.parse(JSON.parse(Buffer.from(files['packet.json']!).toString()));
    for (const { exhibitId, sha256 } of content.photos)
      expect(listed).toContainEqual([`photos/${exhibitId}.jpg`, sha256]);
    expect(await attachedTo((await world.deps.evidence.get(body.pdfSha256))!)).toBe(
      Buffer.from(files['packet.json']!).toString(),
    );
    expect(body.archiveUrl).toContain('/local/evidence/');
  });

  it('an archive that says what is not in it', async () => {
    const world = await packetWorld(demoClaim());
    let missing = '';
    const evidence = {
      ...world.deps.evidence,
      get: async (hash: string) => {
        missing ||= hash;
        return hash === missing ? null : world.deps.evidence.get(hash);
      },
    };
    await world.packet({ mode: 'freeze' }, undefined, { ...world.deps, evidence });
    const { archiveSha256 } = (await world.issued())[0]!;
    const manifest = Buffer.from(
      unzipSync((await world.deps.evidence.get(archiveSha256!))!)['manifest.txt']!,
    ).toString();
    expect(manifest).toMatch(new RegExp(`^# ${missing} {2}photos/photo-0\\d\\.jpg: had not arrived$`, 'm'));
  });
});

describe('a packet that is built as a job', () => {
  it('answers at once, says how far it is, and ends with the packet', async () => {
    const world = await packetWorld(demoClaim());
    const answer = await world.packet({ mode: 'freeze', background: true });
    expect(answer.status).toBe(202);
    const path = `/api/claims/${demoClaim().claimId}/packet-jobs/${answer.body.jobId}`;
    const seen: string[] = [];
    let job = await world.ask(path);
    for (let tries = 0; tries < 400 && !['done', 'failed'].includes(job.body.state); tries += 1) {
      seen.push(job.body.state);
      await new Promise((resolve) => setTimeout(resolve, 20));
      job = await world.ask(path);
    }
    expect(job).toMatchObject({
      status: 200,
      body: { state: 'done', words: 'Done', packet: { revision: 1, demandCents: total } },
    });
    expect(seen).toContain('working');
    expect(job.body.packet.archiveUrl).toContain('/local/evidence/');
    await checkIssued(world, 1);
  });

  it('says why it failed, as the request would have', async () => {
    const world = await packetWorld(demoClaim());
    let ran = Promise.resolve();
    const deps: PacketsDeps = {
      ...world.deps,
      startJob: async (order) => void (ran = runJob(world.deps, order)),
    };
    const { body } = await world.packet(
      { mode: 'freeze', demandCents: total + 1, background: true },
      undefined,
      deps,
    );
    await ran;
    const job = await world.ask(`/api/claims/${demoClaim().claimId}/packet-jobs/${body.jobId}`);
    expect(job.body).toMatchObject({
      state: 'failed',
      packet: null,
      problems: [{ code: 'demand-above-statement' }],
    });
    expect(job.body.problems[0].message).not.toBe('');
  });

  it('that went silent has failed, and one that nobody knows is not found', async () => {
    const world = await packetWorld(demoClaim());
    const deps: PacketsDeps = { ...world.deps, startJob: async () => undefined };
    const { body } = await world.packet({ mode: 'preview', background: true }, undefined, deps);
    const path = `/api/claims/${demoClaim().claimId}/packet-jobs/${body.jobId}`;
    expect((await world.ask(path)).body.state).toBe('queued');
    const later = { ...world.deps, now: () => new Date('2026-11-25T15:05:00Z') };
    expect((await world.ask(path, { with: later })).body.state).toBe('failed');
    expect((await world.ask(path.slice(0, -4) + '0000')).status).toBe(404);
    expect((await world.ask(path, { role: 'crew' })).status).toBe(403);
  });
});

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
    expect((await world.packet({ mode: 'freeze', demandCents: part + 1, changes })).body).toMatchObject({
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
