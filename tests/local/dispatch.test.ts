import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { v7 } from 'uuid';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { projectStream } from '../../functions/project/project.ts';
import { tables } from '../../functions/wiring.ts';
import { demoUtility } from '../../infra/local/demo/index.ts';
import type { Submission } from '../../shared/submissions/submission.ts';
import { streamOfSubmission } from '../../shared/submissions/submission.ts';
import { fact } from '../support/submissions.ts';
import { ports } from '../support/ports.ts';
import { runningServer, type Running } from './support/running.ts';

/** The real server, its real handlers and events: what would go out to dispatch lies in the mail folder. */
let running: Running;
beforeAll(async () => {
  running = await runningServer(ports.dispatchLocal);
});
afterAll(() => running.close());

const iso = (minutesAgo: number): string => new Date(Date.now() - minutesAgo * 60_000).toISOString();
const struck = (hydrantId: string, more: object = {}): Submission => ({
  ...fact(
    'strike',
    1,
    { type: 'strike', strikeId: v7() },
    {
      hydrantId,
      dispatch: null,
      photos: [],
      struckAt: iso(10),
      reportedBy: { source: 'police', name: null, phone: null, reportedAt: null },
      lastSeenSoundAt: null,
      calledOutAt: null,
      arrivedAt: null,
    },
    { submissionId: v7(), occurredAt: iso(9), sentAt: iso(0), person: { personId: 'w-101' } },
  ),
  ...more,
});
const folder = (): string => join(running.folder.path, 'mail');
const files = async (): Promise<string[]> =>
  (await readdir(folder()).catch(() => [])).filter((name) => name.startsWith('dispatch-'));
const naming = async (hydrantId: string): Promise<string[]> => {
  const texts = await Promise.all((await files()).map((name) => readFile(join(folder(), name), 'utf8')));
  return texts.filter((text) => text.includes(hydrantId));
};
const settled = async (): Promise<void> => {
  await running.server.following.settled();
  await running.server.dispatching.settled();
};

describe('the local server', () => {
  it('writes a message to each recipient, and the same strike sent again writes none', async () => {
    const strike = struck('L-1');
    expect((await running.submit('crew', strike)).status).toBe(201);
    await settled();
    const to = demoUtility.dispatchMessages!.to.map((one) => (one.by === 'email' ? one.email : one.phone));
    const texts = await naming('L-1');
    expect(texts).toHaveLength(to.length);
    for (const address of to) expect(texts.some((text) => text.includes(`To: ${address}\n`))).toBe(true);
    expect((await running.submit('crew', strike)).status).toBe(200);
    await running.server.dispatching.lookAtAll();
    expect(await naming('L-1')).toEqual(texts);
  });

  it('a trial writes none', async () => {
    expect((await running.submit('manager', struck('L-2', { test: true }))).status).toBe(201);
    await settled();
    await running.server.dispatching.lookAtAll();
    expect(await naming('L-2')).toEqual([]);
  });

  it('a start after a kill makes good what was projected and not told', async () => {
    // As a process leaves it that ends between the two: accepted and projected, and nobody woken.
    const strike = struck('L-3');
    await tables().ledger.accept(strike, { recordedAt: iso(0), deliveredBy: null });
    await projectStream({ ...tables(), hydrantType: async () => 'unknown' }, streamOfSubmission(strike));
    await settled();
    expect(await naming('L-3')).toEqual([]);
    await running.server.dispatching.lookAtAll();
    await running.server.dispatching.lookAtAll();
    expect(await naming('L-3')).toHaveLength(2);
  });

  it('logs no address and nothing of what a message says', () => {
    const log = JSON.stringify(running.logged);
    for (const one of demoUtility.dispatchMessages!.to)
      expect(log).not.toContain(one.by === 'email' ? one.email : one.phone);
    expect(log).not.toMatch(/HYDRANT OUT/);
  });
});
