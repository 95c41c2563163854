import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { problem } from '../../../shared/problems/problem.ts';

vi.stubGlobal('localStorage', { getItem: () => null, setItem: () => undefined, removeItem: () => undefined });
const busy = { outcome: 'unreachable', reason: 'busy', retryAfterMs: 30_000 } as const;

beforeEach(() => {
  vi.resetModules();
  vi.useFakeTimers({ now: new Date('2026-03-06T12:00:00Z') });
});
afterEach(() => {
  vi.useRealTimers();
});
const held = () => import('../../../site/src/app/outbox/held.ts');

it('a server that asked to be left alone is left alone for as long, and never longer than a minute', async () => {
  const { heed, leftAloneMs } = await held();
  heed(busy);
  expect(leftAloneMs()).toBe(30_000);
  vi.advanceTimersByTime(30_000);
  expect(leftAloneMs()).toBeLessThanOrEqual(0);
  heed({ ...busy, retryAfterMs: 3_600_000 });
  expect(leftAloneMs()).toBe(60_000);
});

it('a phone whose clock was a day ahead and is set right waits no longer than it was asked to', async () => {
  const { heed, leftAloneMs, photosAreHeld } = await held();
  heed(busy);
  heed({ ...busy, problems: [problem('upload-budget', 'sha256')], retryAfterMs: 6 * 3_600_000 });
  vi.setSystemTime(new Date('2026-03-05T12:00:00Z'));
  vi.advanceTimersByTime(30_000);
  expect(leftAloneMs()).toBeLessThanOrEqual(0);
  vi.advanceTimersByTime(15 * 60_000);
  expect(photosAreHeld()).toBe(false);
});
