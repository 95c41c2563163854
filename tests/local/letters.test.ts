import { afterEach, describe, expect, it, vi } from 'vitest';
import { sendLettersDaily } from '../../infra/local/letters.ts';
import { demoUtility } from '../../infra/local/demo/index.ts';

afterEach(() => void vi.useRealTimers());

/** The demo's hour is seven in New York. */
describe('the daily letters of one machine', () => {
  const started = (
    at: string,
    run: () => Promise<{ written: number; sent: number; failed: number; dead: number }>,
  ) => {
    vi.useFakeTimers({ now: new Date(at) });
    const told: number[] = [];
    const logged: string[] = [];
    const letters = sendLettersDaily({
      settings: demoUtility,
      log: ({ event }) => void logged.push(event),
      told: (sent) => void told.push(sent),
      run,
    });
    return { told, logged, letters };
  };

  it('wait for the hour, and are asked for again until the day ends', async () => {
    let runs = 0;
    const { told, letters } = started('2026-04-22T10:45:00Z', async () => ({
      written: 0,
      sent: runs++ === 0 ? 2 : 0,
      failed: 0,
      dead: 0,
    }));
    expect(runs).toBe(0);
    // 11:00 UTC is seven in New York in summer (IANA).
    await vi.advanceTimersByTimeAsync(20 * 60_000);
    expect([runs, told]).toEqual([1, [2]]);
    await vi.advanceTimersByTimeAsync(60 * 60_000);
    expect(runs).toBe(7);
    expect(told).toEqual([2]);
    await letters.stop();
    await vi.advanceTimersByTimeAsync(60 * 60_000);
    expect(runs).toBe(7);
  });

  it('that fail are logged and tried again', async () => {
    let runs = 0;
    const { logged, letters } = started('2026-04-22T12:00:00Z', async () => {
      if (runs++ === 0) throw new Error('away');
      return { written: 0, sent: 0, failed: 0, dead: 0 };
    });
    await vi.advanceTimersByTimeAsync(10 * 60_000);
    expect([runs, logged]).toEqual([2, ['digest-failed']]);
    await letters.stop();
  });

  it('are none where the settings name nobody', async () => {
    const { digest: _, ...settings } = demoUtility;
    let runs = 0;
    const letters = sendLettersDaily({
      settings,
      log: () => undefined,
      told: () => undefined,
      run: async () => {
        runs += 1;
        return null;
      },
      now: () => new Date('2026-04-22T12:00:00Z'),
    });
    await letters.stop();
    expect(runs).toBe(0);
  });
});
