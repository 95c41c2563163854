import { describe, expect, it } from 'vitest';
import { createFollowing } from '../../infra/local/following.ts';
import type { LogEntry } from '../../functions/log/log.ts';

const pause = (milliseconds: number): Promise<void> =>
  new Promise((resolve) => setTimeout(resolve, milliseconds));

function world(project: (stream: string) => Promise<void>) {
  const logged: LogEntry[] = [];
  let publications = 0;
  const { following, appended } = createFollowing({
    project,
    replay: async () => undefined,
    publish: async () => {
      publications += 1;
      await pause(30);
    },
    log: (entry) => logged.push(entry),
  });
  return { following, appended, logged, published: () => publications };
}

describe('what follows a fact on one machine', () => {
  it('projects a stream once for all the facts that came while it waited, and again for one that came meanwhile', async () => {
    const runs: string[] = [];
    const { following, appended } = world(async (stream) => {
      runs.push(stream);
      await pause(10);
    });
    const first = appended('strike:a');
    await pause(2);
    for (let times = 0; times < 5; times += 1) void appended('strike:a');
    void appended('strike:b');
    await first;
    await following.settled();
    expect(runs).toEqual(['strike:a', 'strike:a', 'strike:b']);
  });

  it('tries again what failed until it is done, and says so in the log without a word of the error', async () => {
    let failures = 2;
    const { following, appended, logged } = world(async () => {
      if (failures-- > 0) throw new Error('plate ABC 123');
    });
    await appended('strike:a');
    await following.settled();
    expect(failures).toBe(-1);
    expect(logged.map(({ event }) => event)).toEqual(['projection-failed', 'projection-failed']);
    expect(JSON.stringify(logged)).not.toContain('ABC');
    expect(await following.stop()).toBe(true);
  });

  it('lets an answer wait half a second at most', async () => {
    const { appended } = world(() => pause(5000));
    const began = performance.now();
    await appended('strike:a');
    expect(performance.now() - began).toBeGreaterThan(400);
    expect(performance.now() - began).toBeLessThan(1500);
  });

  it('publishes once for changes that come close together, never twice at a time, and once more for what came meanwhile', async () => {
    const { following, appended, published } = world(async () => undefined);
    await appended('strike:a');
    await pause(600);
    expect(published()).toBe(0);
    following.startPublishing(60);
    for (const stream of ['strike:a', 'strike:b', 'strike:c']) await appended(stream);
    await pause(600);
    expect(published()).toBe(1);
    await Promise.all([following.publishNow(), following.publishNow(), following.publishNow()]);
    expect(published()).toBe(3);
    expect(await following.stop()).toBe(true);
  });

  it('says whether it was published, and tries again soon when it was not', async () => {
    let broken = true;
    let tries = 0;
    const { following } = createFollowing({
      project: async () => undefined,
      replay: async () => undefined,
      publish: async () => {
        tries += 1;
        if (broken) throw new Error('the lock was never free');
      },
      log: () => undefined,
    });
    expect(await following.publishNow()).toBe(false);
    broken = false;
    await pause(900);
    expect(tries).toBe(2);
    expect(await following.publishNow()).toBe(true);
    await pause(900);
    expect(tries).toBe(3);
    expect(await following.stop()).toBe(true);
  });

  it('does not claim to be done when it was stopped with work left', async () => {
    const { following, appended } = world(async () => {
      throw new Error('never');
    });
    await appended('strike:a');
    expect(await following.stop()).toBe(false);
  }, 20_000);
});
