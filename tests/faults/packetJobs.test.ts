import {
  DependencyTimeoutException,
  DisabledException,
  KMSClient,
  SignCommand,
  GetPublicKeyCommand,
} from '@aws-sdk/client-kms';
import { mockClient } from 'aws-sdk-client-mock';
import { generateKeyPairSync } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import type { PacketsDeps } from '../../functions/packets/deps.ts';
import { readJob, runJob } from '../../functions/packets/jobs.ts';
import type { PacketOrder } from '../../functions/packets/order.ts';
import { memoryTable } from '../../functions/stores/dynamodb/memoryTable.ts';
import { tableProjections } from '../../functions/stores/projections/tableProjections.ts';
import { kmsSigner } from '../../functions/stores/signing/kmsSigner.ts';
import { watchedEvents } from '../../shared/deployment/watchedEvents.ts';
import { checkIssued } from '../packet/freezing.ts';
import { demoClaim } from '../support/demoClaim.ts';
import { packetWorld } from '../support/packetWorld.ts';
import { flakyTable, type Luck } from './support/flakyTable.ts';

const { claimId } = demoClaim();
const order = (jobId: string): PacketOrder => ({
  jobId,
  claimId,
  member: { personId: 'c-301', name: 'A Clerk', roles: ['clerk'] },
  request: { mode: 'freeze' },
});
const failures = ({ logged }: Awaited<ReturnType<typeof packetWorld>>) =>
  logged.filter(({ event }) => event === watchedEvents.packetFailed.event);

describe('the signing key, when a packet is issued', () => {
  const metadata = { $metadata: { httpStatusCode: 400 }, message: 'm' };
  const away: readonly [string, Error][] = [
    ['slow', new DependencyTimeoutException(metadata)],
    ['throttled', Object.assign(new Error('rate'), { name: 'ThrottlingException' })],
    ['disabled', new DisabledException(metadata)],
    ['not ours to use', Object.assign(new Error('no right'), { name: 'AccessDeniedException' })],
  ];

  it.each(away)(
    'is %s: nothing is issued, the clerk is told to try again, the alarm’s line says why; then it is revision 1',
    async (_, fault) => {
      const mock = mockClient(KMSClient);
      const { publicKey } = generateKeyPairSync('ec', { namedCurve: 'P-256' });
      mock.on(GetPublicKeyCommand).resolves({ PublicKey: publicKey.export({ format: 'der', type: 'spki' }) });
      mock.on(SignCommand).rejects(fault);
      const world = await packetWorld(demoClaim());
      const cut: PacketsDeps = {
        ...world.deps,
        signer: kmsSigner('arn:key', new KMSClient({ region: 'us-east-1' })),
      };
      await runJob(cut, order('first'));
      expect(await readJob(world.deps, claimId, 'first')).toMatchObject({
        state: 'failed',
        packet: null,
        problems: [{ code: 'try-again' }],
      });
      expect(await world.issued()).toEqual([]);
      expect(failures(world)).toMatchObject([{ errorName: 'StoreUnavailable', causeName: fault.name }]);

      await runJob(world.deps, order('second'));
      expect(await readJob(world.deps, claimId, 'second')).toMatchObject({
        state: 'done',
        packet: { revision: 1 },
      });
      await checkIssued(world, 1);
    },
  );
});

describe('what is kept of a job', () => {
  /** The job's records on a line of their own, of which each request ends as `luck` says. */
  async function bench(luck: (request: number) => Luck) {
    const world = await packetWorld(demoClaim());
    const table = memoryTable();
    let requests = 0;
    const kept = tableProjections(flakyTable(table, () => luck((requests += 1))));
    const isJob = (partition: string): boolean => partition.startsWith('packet-job:');
    const { projections } = world.deps;
    const deps: PacketsDeps = {
      ...world.deps,
      projections: {
        ...projections,
        get: (partition, key) => (isJob(partition) ? kept : projections).get(partition, key),
        put: (partition, key, value, expected) =>
          (isJob(partition) ? kept : projections).put(partition, key, value, expected),
      },
    };
    const sound: PacketsDeps = { ...world.deps, projections: tableProjections(table) };
    return { world, deps, sound, requests: () => requests };
  }

  it.each(['sent-twice', 'lands-unanswered', 'fails'] as const)(
    'is right in the end whichever one of its requests is %s',
    async (luck) => {
      const { deps, requests } = await bench(() => 'fine');
      await runJob(deps, order('count'));
      const last = requests();
      expect(last).toBeGreaterThan(3);
      // The first reads what is known of the job; its loss fails the run, and nothing was begun.
      for (let at = 2; at <= last; at += 1) {
        const one = await bench((request) => (request === at ? luck : 'fine'));
        await runJob(one.deps, order('job'));
        const job = await readJob(one.sound, claimId, 'job');
        expect([at, job?.state === 'done' || job?.problems[0]?.code === 'try-again']).toEqual([at, true]);
        // A write of which only the first answer was lost is no fault of the job's.
        if (luck === 'sent-twice') expect(job).toMatchObject({ state: 'done', packet: { revision: 1 } });
        await checkIssued(one.world, 1);
      }
    },
    120_000,
  );

  it('that runs twice is done once, and is never said to be at work after it is done', async () => {
    const { world, deps, sound } = await bench(() => 'fine');
    await Promise.all([runJob(deps, order('job')), runJob(deps, order('job'))]);
    expect(await readJob(sound, claimId, 'job')).toMatchObject({ state: 'done', packet: { revision: 1 } });
    await checkIssued(world, 1);
    await runJob(deps, order('job'));
    expect(await world.issued()).toHaveLength(1);
    expect(failures(world)).toEqual([]);
  });
});
