import { createHash } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { mainJob, type MainJob } from '../../infra/local/demo/mainJob.ts';
import { demoModels } from '../../infra/local/demo/models.ts';
import { demoRateBooks } from '../../infra/local/demo/rates.ts';
import { ask, send } from '../../infra/local/demo/send.ts';
import { Teller, type Told } from '../../infra/local/demo/teller.ts';
import { townInventoryCsv } from '../../infra/local/demo/town.ts';
import { demoUtility } from '../../infra/local/demo/utility.ts';
import { loadInventoryCsv } from '../../infra/local/loadInventory.ts';
import { roles } from '../../shared/roles.ts';
import { runningServer, type Running } from './support/running.ts';
import { ports } from '../support/ports.ts';

/**
 * The main job through the HTTP API on the embedded store: from the call to the claim, as a crew and a clerk live it.
 * What is expected at each point is the and the data model's word, not what the code happened to answer.
 */
let running: Running;
let job: MainJob;
let teller: Teller;
let strikeId: string;
let sent = 0;
const server = () => ({ origin: running.server.origin, tokenFor: running.tokenFor });
const get = async (role: 'crew' | 'clerk' | 'manager', path: string) =>
  (await running.ask('GET', path, { role })).body;

/** Tells the steps up to and including this one. */
async function tellUntil(words: string): Promise<void> {
  const last = job.steps.findIndex((step) => step.words === words);
  for (; sent <= last; sent += 1) {
    const from = teller.told.length;
    job.steps[sent]!.tell(teller);
    for (const told of teller.told.slice(from)) await send(server(), told);
  }
  // On a busy machine an answer does not wait for its projection.
  await running.server.following.settled();
}
const strikeOf = async (role: 'crew' | 'clerk' = 'crew') => get(role, `/api/strikes/${strikeId}`);

beforeAll(async () => {
  running = await runningServer(ports.wholeJob);
  await loadInventoryCsv(townInventoryCsv(), 'town.csv', 'm-401');
  const now = new Date();
  const before = new Teller(now, 3);
  demoRateBooks.forEach((edition, index) =>
    before.tell('rate-book', { type: 'utility' }, 4000 - index, edition, { role: 'manager' }),
  );
  demoModels.forEach((model, index) =>
    before.tell('hydrant-model', { type: 'utility' }, 3990 - index, model, { role: 'manager' }),
  );
  for (const told of before.told) await send(server(), told);
  teller = new Teller(now);
  job = mainJob(teller);
});
afterAll(() => running.close());

describe('the main job', () => {
  it('begins with the utility as it stands: models for everyone, rates for the desk, hydrants to be found', async () => {
    expect((await get('crew', '/api/models')).models).toHaveLength(demoModels.length);
    expect((await running.ask('GET', '/api/rate-books', { role: 'crew' })).status).toBe(403);
    expect(
      (await get('clerk', '/api/rate-books')).editions
        .map(({ editionId }: { editionId: string }) => editionId)
        .sort(),
    ).toEqual(demoRateBooks.map(({ editionId }) => editionId).sort());
    const found = (await get('crew', `/api/hydrants?find=${job.hydrantId.toLowerCase()}`)).hydrants;
    expect(found[0]).toMatchObject({ hydrant: { hydrantId: job.hydrantId }, inService: true });
    const { latitudeDeg, longitudeDeg } = found[0].hydrant;
    const near = (await get('crew', `/api/hydrants?near=${latitudeDeg},${longitudeDeg}&limit=4`)).hydrants;
    expect(near).toHaveLength(4);
    expect(near[0]).toMatchObject({ hydrant: { hydrantId: job.hydrantId }, distanceFt: 0 });
    expect(near.map(({ distanceFt }: { distanceFt: number }) => distanceFt)).toEqual(
      near
        .map(({ distanceFt }: { distanceFt: number }) => distanceFt)
        .toSorted((a: number, b: number) => a - b),
    );
  });

  it('a strike takes the hydrant out of service at once; its photos have arrived', async () => {
    await tellUntil('demo.step.strike');
    const [strike] = (await get('crew', '/api/strikes')).strikes;
    strikeId = strike.strikeId;
    expect(strike).toMatchObject({ hydrantId: job.hydrantId, stage: 'reported', returnedAt: null });
    expect(await get('crew', `/api/hydrants/${job.hydrantId}`)).toMatchObject({
      status: { inService: false, open: [{ outageId: strikeId, cause: 'strike' }] },
    });
    const { evidence, hydrant, history } = await strikeOf();
    expect(Object.values(evidence)).toEqual(['arrived', 'arrived']);
    expect(hydrant.hydrantId).toBe(job.hydrantId);
    expect(history.map(({ standing }: { standing: string }) => standing)).toEqual(['stands']);
  });

  it('the water is shut, then the hydrant is found among nobody’s nearest', async () => {
    await tellUntil('demo.step.shut');
    expect((await strikeOf()).strike).toMatchObject({ stage: 'shut-off' });
    const { nearest } = await get('crew', `/api/hydrants/TH-0072`);
    expect(nearest).toHaveLength(5);
    expect(nearest.map(({ hydrant }: any) => hydrant.hydrantId)).not.toContain(job.hydrantId);
  });

  it('a party is the desk’s to read, and crew does not learn that there is one', async () => {
    await tellUntil('demo.step.party');
    const forCrew = JSON.stringify([await strikeOf('crew'), await get('crew', '/api/strikes')]);
    for (const word of ['Varga', 'TNS 1185', 'HC-4402', 'hitAndRun', 'claims', '"party"'])
      expect(forCrew).not.toContain(word);
    const forClerk = await strikeOf('clerk');
    const party = forClerk.history.find(({ recorded }: any) => recorded.submission.kind === 'party');
    expect(party.recorded.submission.body.driver.name).toBe('Leopold Varga-Quill');
    expect(forCrew).not.toContain(party.recorded.submission.submissionId);
    expect(forClerk.strike.partyIds).toEqual([party.recorded.submission.submissionId]);
  });

  it('is repaired, tested and returned: back in service with its test', async () => {
    await tellUntil('demo.step.repair');
    expect((await strikeOf()).strike.stage).toBe('repaired');
    expect((await get('crew', `/api/hydrants/${job.hydrantId}`)).status.inService).toBe(false);
    await tellUntil('demo.step.return');
    expect((await strikeOf()).strike).toMatchObject({ stage: 'back', breaches: [], deferred: [] });
    const hydrant = await get('crew', `/api/hydrants/${job.hydrantId}`);
    expect(hydrant).toMatchObject({ status: { inService: true, open: [] } });
    expect(hydrant.flowTests).toHaveLength(1);
    expect(hydrant.flowTests[0].submission).toEqual(
      teller.told.find(({ submission }) => submission.kind === 'flow-test')?.submission,
    );
  });

  it('becomes a claim for the desk, with a statement, a packet and its PDF; none of it for crew', async () => {
    await tellUntil('demo.step.claim');
    const { claims, strikes } = await get('clerk', '/api/claims');
    expect(claims).toMatchObject([
      { claimId: job.claimId, claimNumber: '2026-0001', stage: 'open', strikeId },
    ]);
    expect(strikes[strikeId].stage).toBe('back');
    expect((await strikeOf('clerk')).claims).toHaveLength(1);
    expect((await get('crew', '/api/strikes')).claims).toBeUndefined();
    expect((await get('clerk', `/api/claims/${job.claimId}`)).parties).toHaveLength(1);

    const preview = (
      await running.ask('POST', `/api/claims/${job.claimId}/packet`, {
        role: 'clerk',
        body: { mode: 'preview' },
      })
    ).body;
    expect(preview.revision).toBeNull();
    const frozen = (
      await running.ask('POST', `/api/claims/${job.claimId}/packet`, {
        role: 'clerk',
        body: { mode: 'freeze' },
      })
    ).body;
    expect(frozen).toMatchObject({ revision: 1, demandCents: preview.demandCents });
    const pdf = await fetch(new URL(frozen.url, running.server.origin));
    expect(pdf.headers.get('content-type')).toBe('application/pdf');
    expect(
      createHash('sha256')
        .update(Buffer.from(await pdf.arrayBuffer()))
        .digest('hex'),
    ).toBe(frozen.pdfSha256);
    expect((await get('clerk', `/api/claims/${job.claimId}`)).claim).toMatchObject({
      stage: 'frozen',
      packets: [{ revision: 1, demandCents: frozen.demandCents }],
    });
    expect((await running.ask('GET', `/api/evidence/${frozen.pdfSha256}`, { role: 'clerk' })).status).toBe(
      200,
    );
    expect((await running.ask('GET', `/api/evidence/${frozen.pdfSha256}`, { role: 'crew' })).status).toBe(
      404,
    );
  });

  it('sent again as a whole changes nothing: every answer is a repeat', async () => {
    const before = await strikeOf('clerk');
    for (const { role, submission } of teller.told) {
      const { status, body } = await running.submit(role, submission);
      expect([status, body.outcome, submission.kind]).toEqual([200, 'repeat', submission.kind]);
    }
    expect(await strikeOf('clerk')).toEqual(before);
  });

  it('takes a correction, which shows beside what it corrects, and refuses a second one', async () => {
    const repair = teller.told.find(({ submission }) => submission.kind === 'repair') as Told;
    const target = repair.submission;
    teller.correct(
      target.submissionId,
      'repair',
      target.subject,
      0.5,
      'Wrong note',
      { ...target.body, note: 'Put right' },
      'crew',
    );
    const correction = teller.told.at(-1) as Told;
    await send(server(), correction);
    await running.server.following.settled();
    const { history } = await strikeOf();
    const standing = Object.fromEntries(
      history.map(({ recorded, standing }: any) => [recorded.submission.submissionId, standing]),
    );
    expect([standing[target.submissionId], standing[correction.submission.submissionId]]).toEqual([
      'corrected',
      'stands',
    ]);
    teller.correct(
      target.submissionId,
      'repair',
      target.subject,
      0.4,
      'Again',
      { ...target.body, note: 'Other' },
      'crew',
    );
    expect(await running.submit('crew', teller.told.at(-1)!.submission)).toMatchObject({
      status: 409,
      body: { by: correction.submission.submissionId },
    });
  });

  it('answers a clash with the field that differs, and what is not there with 404 in the caller’s language', async () => {
    const { submission } = teller.told[0] as Told;
    const sentAt = new Date(Date.parse(submission.sentAt) + 1000).toISOString();
    const clash = await running.submit('crew', { ...submission, sentAt });
    expect(clash).toMatchObject({ status: 409, body: { field: 'sentAt', type: '/problems/clash' } });
    for (const path of ['/api/strikes/none', '/api/hydrants/none', '/api/claims/none', '/api/nothing']) {
      const answer = await running.ask('GET', path, {
        role: 'manager',
        headers: { 'accept-language': 'es' },
      });
      expect([path, answer.status, answer.body.title]).toEqual([path, 404, 'No se encuentra']);
    }
  });

  it('names what is wrong with a search', async () => {
    const paths = async (query: string): Promise<string[]> => {
      const { status, body } = await running.ask('GET', `/api/hydrants${query}`, { role: 'crew' });
      expect(status).toBe(422);
      return body.problems.map(({ path, code }: { path: string; code: string }) => `${path} ${code}`);
    };
    expect(await paths('')).toEqual(['find find-or-near']);
    expect(await paths('?near=91,0')).toEqual(['near near-not-a-place']);
    expect(await paths('?near=1,2,3')).toEqual(['near near-not-a-place']);
    expect(await paths('?near=0x10,1')).toEqual(['near near-not-a-place']);
    expect(await paths('?near=NaN,&limit=0')).toEqual(['limit limit-not-a-number', 'near near-not-a-place']);
    expect(await paths(`?find=${'x'.repeat(201)}`)).toEqual(['find too-long']);
    expect(await paths('?find=a&near=1,2')).toEqual(['find find-or-near']);
  });

  it('says who is signed in, and to anyone only what the utility says of itself', async () => {
    for (const role of roles)
      expect(await get(role, '/api/me')).toMatchObject({
        roles: [role],
        utility: { timeZone: 'America/New_York' },
        people: demoUtility.people.map(({ personId, name }) => ({ personId, name })),
      });
    const open = (await running.ask('GET', '/api/utility')).body;
    expect(Object.keys(open).sort()).toEqual([
      'dispatch',
      'emergencyPhone',
      'flowTest',
      'locale',
      'name',
      'signIn',
      'timeZone',
      'units',
    ]);
    await expect(ask(server(), 'crew', '/api/claims')).rejects.toThrow('403');
  });

  it('left no fault in the log', () => {
    expect(running.logged.filter(({ level }) => level !== 'info')).toEqual([]);
  });
});
