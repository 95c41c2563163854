import type { Member } from '../../shared/roles.ts';
import { problem, type Problem } from '../../shared/problems/problem.ts';
import { watchedEvents } from '../../shared/deployment/watchedEvents.ts';
import type { LeftOut } from '../../shared/packet/leftOut.ts';
import { describeError } from '../log/log.ts';
import { Refused } from '../http/refused.ts';
import { StoreUnavailable } from '../stores/faults.ts';
import type { PacketsDeps } from './deps.ts';
import { freezePacket, type Packet } from './freeze.ts';
import type { JobStep, PacketOrder, PacketRequest, Progress } from './order.ts';
import { previewPacket } from './preview.ts';

export type AskedPacket = Packet & {
  readonly problems: readonly Problem[];
  /** Files that a preview lists without showing them; none for a packet that is issued. */
  readonly leftOut?: readonly LeftOut[];
};

/** What is kept of a job while and after it runs. */
export interface JobRecord {
  readonly state: 'queued' | 'working' | 'done' | 'failed';
  readonly what: JobStep;
  readonly done: number;
  readonly total: number;
  readonly startedAt: string;
  readonly changedAt: string;
  readonly packet: AskedPacket | null;
  /** Why it failed, as the answer of the request would have said. */
  readonly problems: readonly Problem[];
}

const partitionOf = (claimId: string): string => `packet-job:${claimId}`;
/** Progress is written no oftener than this. */
const WRITE_EVERY_MS = 400;
/** How often one word about a job is written over another's. */
const MOST_WRITES = 5;
/** A job that has said nothing for so long is over, whatever it last said: its process ended. */
export const SILENT_MS = 6 * 60_000;

export async function makePacket(
  deps: PacketsDeps,
  member: Member,
  claimId: string,
  { mode, demandCents, changes }: PacketRequest,
): Promise<AskedPacket> {
  if (mode === 'preview') return previewPacket(deps, member, claimId, demandCents ?? null);
  return {
    ...(await freezePacket(deps, member, claimId, demandCents ?? null, changes ?? null)),
    problems: [],
  };
}

export async function queueJob(deps: PacketsDeps, { claimId, jobId }: PacketOrder): Promise<void> {
  const at = deps.now().toISOString();
  await deps.projections.put<JobRecord>(
    partitionOf(claimId),
    jobId,
    {
      state: 'queued',
      what: 'queued',
      done: 0,
      total: 1,
      startedAt: at,
      changedAt: at,
      packet: null,
      problems: [],
    },
    0,
  );
}

/** The job as it stands; null when there is none. One that went silent has failed. */
export async function readJob(deps: PacketsDeps, claimId: string, jobId: string): Promise<JobRecord | null> {
  const value = (await deps.projections.get<JobRecord>(partitionOf(claimId), jobId))?.value ?? null;
  if (!value || value.state === 'done' || value.state === 'failed') return value;
  return deps.now().getTime() - Date.parse(value.changedAt) > SILENT_MS
    ? { ...value, state: 'failed', problems: [problem('try-again')] }
    : value;
}

/**
 * Builds what was ordered and keeps how far it is. Never throws for what the order itself has wrong: that is the job's
 * answer. Run twice (a queue delivers at least once) it does no harm: a freeze answers the same revision again.
 */
export async function runJob(deps: PacketsDeps, order: PacketOrder): Promise<void> {
  const { claimId, jobId, member, request } = order;
  const known = await deps.projections.get<JobRecord>(partitionOf(claimId), jobId);
  if (known?.value.state === 'done') return;
  let record: JobRecord = known?.value ?? {
    state: 'queued',
    what: 'queued',
    done: 0,
    total: 1,
    startedAt: deps.now().toISOString(),
    changedAt: '',
    packet: null,
    problems: [],
  };
  let version = known?.version ?? 0;
  let writing: Promise<void> = Promise.resolve();
  let writtenAtMs = 0;
  const write = (change: Partial<JobRecord>): Promise<void> => {
    record = { ...record, ...change, changedAt: deps.now().toISOString() };
    const value = record;
    writing = writing.then(async () => {
      version = await keepRecord(deps, order, value, version);
    });
    return writing;
  };
  const progress: Progress = (what, done, total) => {
    const atMs = Date.now();
    if (what === record.what && done < total && atMs - writtenAtMs < WRITE_EVERY_MS) return;
    writtenAtMs = atMs;
    // A word about progress that could not be kept is no reason to stop.
    write({ state: 'working', what, done, total }).catch(() => undefined);
  };
  try {
    progress('load', 0, 1);
    const packet = await makePacket({ ...deps, progress }, member, claimId, request);
    await writing.catch(() => undefined);
    writing = Promise.resolve();
    await write({ state: 'done', what: 'done', done: 1, total: 1, packet });
  } catch (error) {
    await writing.catch(() => undefined);
    writing = Promise.resolve();
    const problems = problemsOf(error);
    if (!(error instanceof Refused))
      deps.log({
        level: 'error',
        event: watchedEvents.packetFailed.event,
        claimId,
        jobId,
        ...describeError(error),
      });
    await write({ state: 'failed', problems });
  }
}

/**
 * Keeps how far a job is, and answers the version that then stands. Found at another version, either our own write landed
 * and its answer was lost, or the job runs twice: what is kept then is written over, unless it says that the job is done.
 */
async function keepRecord(
  { projections }: PacketsDeps,
  { claimId, jobId }: PacketOrder,
  value: JobRecord,
  version: number,
): Promise<number> {
  let seen = version;
  for (let tries = 0; tries < MOST_WRITES; tries += 1) {
    if (await projections.put(partitionOf(claimId), jobId, value, seen)) return seen + 1;
    const kept = await projections.get<JobRecord>(partitionOf(claimId), jobId);
    seen = kept?.version ?? 0;
    if (kept?.value.state === 'done') return seen;
  }
  throw new StoreUnavailable('others keep writing the same job');
}

function problemsOf(error: unknown): readonly Problem[] {
  if (error instanceof Refused) return error.problems;
  if (error instanceof StoreUnavailable) return [problem('try-again')];
  return [problem('our-fault', '', { reference: '' })];
}
