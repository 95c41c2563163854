import { arrivalOf } from '../../../functions/display/arrived.ts';
import { evidenceKey } from '../../../functions/stores/evidence/byHash.ts';
import { objectInventory } from '../../../functions/stores/inventory/objectInventory.ts';
import { openObjectStore } from '../../../functions/stores/objects/open.ts';
import { demoModels } from '../../../infra/local/demo/models.ts';
import { demoRateBooks } from '../../../infra/local/demo/rates.ts';
import { closedWithParty, type ClaimedStrike } from '../../../infra/local/demo/stories/claimed.ts';
import { acknowledged, closed, paid } from '../../../infra/local/demo/stories/laterEvents.ts';
import { tellLater } from '../../../infra/local/demo/stories/tellPast.ts';
import { Teller } from '../../../infra/local/demo/teller.ts';
import { tables } from '../../../shared/deployment/tables.ts';
import { declaredExhibits } from '../../../shared/evidence/declared.ts';
import { partitions } from '../../../shared/projections/items.ts';
import { streamOf } from '../../../shared/submissions/envelope.ts';
import { streamOfSubmission, type Submission } from '../../../shared/submissions/submission.ts';
import { demoPhotos } from '../../support/demoClaim.ts';
import { townHydrants } from '../../support/town.ts';
import { townMeta } from '../../support/townMeta.ts';
import { charge, type MeteredWorld } from './meteredWorld.ts';
import type { Spent } from './spent.ts';

const HYDRANTS = 500;
const DAYS_AGO = 100;
const claimNumber = '2026-0100';
const payer = 'Harrowgate Casualty';

export interface Life extends ClaimedStrike {
  readonly submissions: number;
  readonly photos: number;
  /** What the whole life cost, by the function that did it. */
  readonly byFunction: ReadonlyMap<string, Spent>;
}

/** A town's inventory, as `npm run import` loads it, and what a utility types in once: rates and hydrant models. */
export async function foundTown(world: MeteredWorld): Promise<void> {
  const inventory = objectInventory(await openObjectStore('s3://inventory/'));
  const hydrants = townHydrants(HYDRANTS).map((hydrant, index) => ({
    ...hydrant,
    hydrantId: `TH-${String(index + 1).padStart(4, '0')}`,
    modelId: 'BW-D51',
  }));
  await inventory.publish(hydrants, townMeta(HYDRANTS));
  const teller = new Teller(new Date());
  demoRateBooks.forEach((edition, index) =>
    teller.tell('rate-book', { type: 'utility' }, 4000 - index, edition, { role: 'manager' }),
  );
  demoModels.forEach((model, index) =>
    teller.tell('hydrant-model', { type: 'utility' }, 3900 - index, model, { role: 'manager' }),
  );
  for (const { submission } of teller.told) await tellOne(world, submission, new Map());
}

/**
 * One strike from the call to the closed claim: photographed, shut, inspected, repaired, tested, back in service,
 * corrected, claimed, frozen, demanded, acknowledged, paid in full, closed; with everything that follows each fact of
 * itself. People's looking at screens is not in it.
 */
export async function liveStrike(world: MeteredWorld): Promise<Life> {
  const byFunction = new Map<string, Spent>();
  const teller = new Teller(new Date());
  let photos = 0;
  const tellAll = async (): Promise<void> => {
    for (const { submission } of teller.told.splice(0))
      photos += await tellOne(world, submission, byFunction);
  };

  const ids = closedWithParty(teller, {
    hydrantId: 'TH-0071',
    neighbour: 'TH-0072',
    hours: DAYS_AGO * 24,
    photos: 'sailmaker',
    payer,
    mainValveHeld: false,
  });
  teller.tell(
    'claim-opened',
    { type: 'claim', claimId: ids.claimId },
    DAYS_AGO * 24 - 50,
    {
      strikeId: ids.strikeId,
      partyId: ids.partyId,
      claimNumber,
      payerKind: 'drivers-insurer',
      payer: { name: payer, address: '200 Counting House Row', attention: 'Claims', reference: null },
      note: null,
    },
    { role: 'clerk' },
  );
  let submissions = teller.told.length;
  await tellAll();
  const demandCents = await freeze(world, ids.claimId, byFunction);
  tellLater(
    teller,
    {
      claimNumber,
      hydrantId: 'TH-0071',
      daysAgo: DAYS_AGO,
      payerKind: 'drivers-insurer',
      payer,
      cause: 'left-the-road',
      plate: null,
      later: [acknowledged(20, 'HC-1'), paid(48, 1), closed(50, 'paid', 'Paid as demanded.')],
    },
    ids.claimId,
    { revision: 1, demandCents, laborLineId: null },
  );
  submissions += teller.told.length;
  await tellAll();
  return { ...ids, submissions, photos, byFunction };
}

/** Hands one fact in, as its sender does, then lets follow what follows. Answers how many photos came with it. */
async function tellOne(world: MeteredWorld, submission: Submission, to: Map<string, Spent>): Promise<number> {
  charge(to, 'submissions', (await world.ask('POST', '/api/submissions', submission)).spent);
  await follow(world, streamOfSubmission(submission), to);
  let sentPhotos = 0;
  for (const { sha256 } of declaredExhibits(submission)) {
    const { subject, submissionId } = submission;
    const allowed = await world.ask('POST', '/api/evidence/uploads', { subject, submissionId, sha256 });
    charge(to, 'evidence', allowed.spent);
    const { upload } = JSON.parse(allowed.answer?.body ?? '{}') as {
      upload?: { url: string; headers: Record<string, string> };
    };
    // A correction names a photo that has arrived with what it corrects.
    if (!upload) continue;
    sentPhotos += 1;
    const bytes = Buffer.from((await demoPhotos.get(sha256))!);
    const sent = await fetch(upload.url, { method: 'PUT', headers: upload.headers, body: bytes });
    if (!sent.ok) throw new Error(`the photo was not taken: ${sent.status}`);
    charge(to, 'display', (await world.call('display', arrivalOf(evidenceKey(sha256)))).spent);
  }
  return sentPhotos;
}

/** Facts → projections → messages to dispatch and pages, as the streams of the tables tie them. */
async function follow(world: MeteredWorld, stream: string, to: Map<string, Spent>): Promise<void> {
  world.takeProjected();
  const fact = { [tables.submissions.partitionKey]: { S: stream } };
  charge(to, 'project', (await world.call('project', { Records: [record(fact, 0)] })).spent);
  const told: readonly string[] = [partitions.hydrant, partitions.strike, partitions.joined];
  const changed = world.takeProjected();
  const forDispatch = changed.filter(({ partition }) => told.includes(partition));
  const { partitionKey, sortKey } = tables.projections;
  const records = forDispatch.map(({ partition, key }, index) =>
    record({ [partitionKey]: { S: partition }, [sortKey]: { S: key } }, index),
  );
  if (records.length > 0)
    charge(to, 'dispatchSend', (await world.call('dispatchSend', { Records: records })).spent);
  if (changed.length > 0) charge(to, 'publish', (await world.call('publish', {})).spent);
}

const record = (Keys: object, index: number) => ({ dynamodb: { Keys, SequenceNumber: String(index) } });

/** The packet as a clerk makes it: looked at once, then ordered, and built by the function that builds them. */
async function freeze(world: MeteredWorld, claimId: string, to: Map<string, Spent>): Promise<number> {
  const statement = await world.ask('GET', `/api/claims/${claimId}/statement`);
  charge(to, 'packets', statement.spent);
  const { totalCents } = JSON.parse(statement.answer?.body ?? '{}') as { totalCents: number };
  const looked = await world.ask('POST', `/api/claims/${claimId}/packet`, { mode: 'preview' });
  charge(to, 'packets', looked.spent);
  const built = await world.call('packetJobs', {
    jobId: 'job-1',
    claimId,
    member: { personId: 'm-1', name: 'A Manager', roles: ['manager'] },
    request: { mode: 'freeze' },
  });
  charge(to, 'packetJobs', built.spent);
  await follow(world, streamOf({ type: 'claim', claimId }), to);
  return totalCents;
}
