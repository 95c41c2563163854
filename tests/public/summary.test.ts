import { describe, expect, test } from 'vitest';
import { median, outSpans, summaryOf } from '../../shared/public/summary.ts';
import { anOutage, aStatus, aStrike } from '../support/town.ts';

const now = '2026-03-04T20:00:00.000Z';
const DAY = 24 * 60;
const back = (hydrantId: string, since: string, endedAt: string) =>
  aStatus(hydrantId, [anOutage(`o-${hydrantId}`, { since, endedAt })]);
const returns = (statuses: ReturnType<typeof aStatus>[], strikes: ReturnType<typeof aStrike>[] = []) =>
  summaryOf([], statuses, strikes, now).returns;

describe('median', () => {
  // By the definition: the middle one, or the mean of the two in the middle.
  test.each([
    [[], null],
    [[7], 7],
    [[9, 1, 4], 4],
    [[10, 1, 4, 2], 3],
  ])('of %j is %j', (values, expected) => expect(median(values)).toBe(expected));
});

describe('the time to return', () => {
  test('with no return yet has no figure', () => {
    expect(returns([aStatus('A', [anOutage('o-1')])])).toEqual({ days: 365, count: 0, medianMinutes: null });
  });

  test('half of those that came back took less: 1, 4 and 10 days are 4', () => {
    expect(
      returns([
        back('A', '2026-01-01T00:00:00Z', '2026-01-02T00:00:00Z'),
        back('B', '2026-01-01T00:00:00Z', '2026-01-05T00:00:00Z'),
        back('C', '2026-01-01T00:00:00Z', '2026-01-11T00:00:00Z'),
        aStatus('D', [anOutage('o-D', { since: '2020-01-01T00:00:00Z' })]),
      ]),
    ).toEqual({ days: 365, count: 3, medianMinutes: 4 * DAY });
  });

  test('outages of one hydrant that overlap are one absence: back when the last has ended', () => {
    const both = aStatus('A', [
      anOutage('o-1', { since: '2026-01-02T00:00:00Z', endedAt: '2026-01-06T00:00:00Z' }),
      anOutage('o-2', { since: '2026-01-01T00:00:00Z', endedAt: '2026-01-03T00:00:00Z' }),
    ]);
    expect(returns([both])).toMatchObject({ count: 1, medianMinutes: 5 * DAY });
    // While one of them is open it has not come back.
    const still = aStatus('A', [
      anOutage('o-1', { since: '2026-01-02T00:00:00Z' }),
      anOutage('o-2', { since: '2026-01-01T00:00:00Z', endedAt: '2026-01-03T00:00:00Z' }),
    ]);
    expect(returns([still])).toMatchObject({ count: 0 });
  });

  test('counts what ended in the 365 days before the check, and nothing that ends after it', () => {
    expect(
      returns([
        back('A', '2025-03-01T20:00:00Z', '2025-03-04T20:00:00Z'),
        back('B', '2025-03-01T20:00:00Z', '2025-03-04T20:01:00Z'),
        back('C', '2026-03-04T10:00:00Z', '2026-03-04T20:00:00Z'),
        back('D', '2026-03-04T10:00:00Z', '2026-03-04T20:01:00Z'),
      ]),
    ).toMatchObject({ count: 2 });
  });

  test('a strike of a hydrant that nobody named counts, too, and one that a hydrant has counts once', () => {
    const strikes = [
      aStrike('s-1', { since: '2026-03-01T00:00:00Z', returnedAt: '2026-03-02T00:00:00Z' }),
      aStrike('o-A', {
        hydrantId: 'A',
        since: '2026-01-01T00:00:00Z',
        returnedAt: '2026-01-03T00:00:00Z',
      }),
    ];
    const statuses = [back('A', '2026-01-01T00:00:00Z', '2026-01-03T00:00:00Z')];
    expect(returns(statuses, strikes)).toMatchObject({ count: 2, medianMinutes: 1.5 * DAY });
  });
});

test('outages that touch are one', () => {
  expect(
    outSpans([
      { since: '2026-01-01T00:00:00Z', endedAt: '2026-01-02T00:00:00Z' },
      { since: '2026-01-02T00:00:00Z', endedAt: '2026-01-03T00:00:00Z' },
      { since: '2026-01-04T00:00:00Z', endedAt: null },
    ]),
  ).toEqual([
    { since: Date.UTC(2026, 0, 1), until: Date.UTC(2026, 0, 3) },
    { since: Date.UTC(2026, 0, 4), until: Infinity },
  ]);
});

test('the oldest is the entry with the earliest of all its outages', () => {
  const entry = (hydrantId: string | null, ...since: string[]) => ({
    hydrantId,
    place: null,
    outages: since.map((at) => ({ since: at })),
  });
  const entries = [
    entry('A', '2026-03-03T00:00:00Z'),
    entry('B', '2026-03-04T00:00:00Z', '2026-02-01T00:00:00Z'),
    entry(null, '2026-02-02T00:00:00Z'),
  ];
  expect(summaryOf(entries, [], [], now).oldest).toEqual({
    hydrantId: 'B',
    place: null,
    since: '2026-02-01T00:00:00Z',
  });
  expect(summaryOf([], [], [], now).oldest).toBeNull();
});
