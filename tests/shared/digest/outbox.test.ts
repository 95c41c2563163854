import { describe, expect, it } from 'vitest';
import {
  CLAIM_MS,
  claimed,
  failed,
  FIRST_WAIT_MS,
  MOST_TRIES,
  newEntry,
  sent,
  type OutboxEntry,
} from '../../../shared/digest/outbox.ts';

const start = Date.parse('2026-04-01T11:00:00Z');
const later = (ms: number) => new Date(start + ms);
const entry = newEntry('2026-04-01', 'c-1', { to: 'c@example.com', subject: 's', text: 't' }, later(0));

describe('a letter', () => {
  it('is claimed once, and by nobody else while the claim holds', () => {
    const taken = claimed(entry, later(0))!;
    expect(taken).toMatchObject({ state: 'claimed', tries: 1 });
    expect(claimed(taken, later(CLAIM_MS - 1))).toBeNull();
  });

  it('whose sender vanished is taken again', () => {
    expect(claimed(claimed(entry, later(0))!, later(CLAIM_MS))).toMatchObject({ state: 'claimed', tries: 2 });
  });

  it('that was sent, or is dead, is not taken', () => {
    const gone = sent(claimed(entry, later(0))!, 'm-1', later(1));
    expect(gone).toMatchObject({ state: 'sent', messageId: 'm-1' });
    expect(claimed(gone, later(1e9))).toBeNull();
    expect(claimed({ ...entry, state: 'dead' }, later(1e9))).toBeNull();
  });

  it('that failed waits twice as long each time, and is dead in the end', () => {
    const waits: number[] = [];
    let one: OutboxEntry = entry;
    let at = 0;
    for (let tries = 1; tries <= MOST_TRIES; tries += 1) {
      one = failed(claimed(one, later(at))!, 'mail-service-away', later(at));
      waits.push((Date.parse(one.nextTryAt) - start - at) / FIRST_WAIT_MS);
      expect(one.state).toBe(tries === MOST_TRIES ? 'dead' : 'failed');
      if (one.state === 'failed') expect(claimed(one, new Date(Date.parse(one.nextTryAt) - 1))).toBeNull();
      at = Date.parse(one.nextTryAt) - start;
    }
    expect(waits).toEqual([1, 2, 4, 8, 16]);
    expect(one.why).toBe('mail-service-away');
  });

  it('whose senders all vanish is dead too, and not tried for ever', () => {
    let one: OutboxEntry = entry;
    for (let tries = 1; tries <= MOST_TRIES; tries += 1) one = claimed(one, later(tries * CLAIM_MS * 2))!;
    expect(claimed(one, later(1e9))).toMatchObject({ state: 'dead', tries: MOST_TRIES, why: 'vanished' });
  });
});
