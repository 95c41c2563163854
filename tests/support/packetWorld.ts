import { v7 } from 'uuid';
import { createPacketsApp } from '../../functions/packets/app.ts';
import type { PacketsDeps } from '../../functions/packets/deps.ts';
import { runJob } from '../../functions/packets/jobs.ts';
import { jwkSigner } from '../../functions/stores/signing/localSigner.ts';
import { projectStream } from '../../functions/project/project.ts';
import { evidenceKey } from '../../functions/stores/evidence/byHash.ts';
import { streamOf } from '../../shared/submissions/envelope.ts';
import type { BodyOf } from '../../shared/submissions/submission.ts';
import type { Recorded } from '../../shared/submissions/recorded.ts';
import { testWorld } from '../http/support/world.ts';
import { testPacketKey } from './packetKey.ts';
import { asRecorded, demoPhotos, struckHydrant, type DemoClaim } from './demoClaim.ts';

/** The packets app on the stores' twins, with the demo's billed claim in the ledger and its photos in the store. */
export async function packetWorld(claim: DemoClaim, over: Partial<PacketsDeps> = {}) {
  const world = await testWorld({ now: () => new Date('2026-11-25T14:05:00Z') });
  await world.inventory.publish([struckHydrant], {
    submissionId: v7(),
    loadedAt: '2026-01-01T00:00:00Z',
    loadedBy: 'm-401',
    sourceFile: 'demo.csv',
    sourceSha256: 'a'.repeat(64),
    crs: 'EPSG:4326',
    mapping: {},
    rows: 1,
    accepted: 1,
    doubtful: 0,
    rejected: 0,
  });
  await hand(world, asRecorded(claim.submissions));
  for (const submission of claim.submissions)
    for (const { sha256 } of 'photos' in submission.body
      ? (submission.body.photos as { sha256: string }[])
      : []) {
      const bytes = await demoPhotos.get(sha256);
      if (bytes) await world.objects.put(evidenceKey(sha256), bytes, { contentType: 'image/jpeg' });
    }
  const deps: PacketsDeps = {
    ...world.deps,
    newId: () => v7(),
    signer: await jwkSigner(testPacketKey),
    startJob: async (order) => void runJob(deps, order),
    ...over,
  };
  const ask = async (
    path: string,
    init: { role?: 'crew' | 'clerk' | 'manager'; body?: unknown; with?: PacketsDeps } = {},
  ) => {
    const app = createPacketsApp(init.with ?? deps);
    const response = await app.request(path, {
      method: init.body === undefined ? 'GET' : 'POST',
      headers: { authorization: `Bearer ${await world.issuer.tokenFor(init.role ?? 'clerk')}` },
      ...(init.body === undefined ? {} : { body: JSON.stringify(init.body) }),
    });
    return { status: response.status, body: JSON.parse(await response.text()) };
  };
  const packet = (body: unknown, claimId = claim.claimId, using?: PacketsDeps) =>
    ask(`/api/claims/${claimId}/packet`, { body, ...(using ? { with: using } : {}) });
  /** The packets that the ledger says were issued, in order. */
  const issued = async (claimId = claim.claimId) =>
    (await world.stores.ledger.readStream(streamOf({ type: 'claim', claimId })))
      .map(({ submission }) => submission)
      .filter(({ kind }) => kind === 'packet-frozen')
      .map(({ body }) => body as BodyOf<'packet-frozen'>)
      .sort((a, b) => a.revision - b.revision);
  return {
    ...world,
    deps,
    ask,
    packet,
    issued,
    hand: (recorded: readonly Recorded[]) => hand(world, recorded),
  };
}

async function hand(
  { stores, inventory }: Awaited<ReturnType<typeof testWorld>>,
  recorded: readonly Recorded[],
): Promise<void> {
  for (const { submission, recordedAt } of recorded)
    await stores.ledger.accept(submission, { recordedAt, deliveredBy: null });
  const hydrantType = async (id: string) => (await inventory.hydrant(id))?.type ?? 'unknown';
  for (const stream of new Set(recorded.map(({ submission }) => streamOf(submission.subject))))
    await projectStream({ ...stores, hydrantType }, stream);
}
