import { createHash } from 'node:crypto';
import { unzipSync } from 'fflate';
import { compactVerify, createLocalJWKSet } from 'jose';
import { describe, expect, it } from 'vitest';
import type { PacketsDeps } from '../../functions/packets/deps.ts';
import { runJob } from '../../functions/packets/jobs.ts';
import { packetContentSchema } from '../../shared/packet/schema.ts';
import { asRecorded, demoClaim } from '../support/demoClaim.ts';
import { packetWorld } from '../support/packetWorld.ts';
import { everythingIn } from '../support/pdf.ts';
import { total, changes, water, attachedTo, withLaterFact, checkIssued, statement } from './freezing.ts';

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
