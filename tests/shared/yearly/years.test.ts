import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { FigureRow } from '../../../shared/claimFigures/row.ts';
import { foldClaim, type ClaimState } from '../../../shared/claims/state.ts';
import { effectiveFacts } from '../../../shared/submissions/effective.ts';
import { publicYears } from '../../../shared/yearly/schema.ts';
import { sumsOf } from '../../../shared/yearly/sums.ts';
import { MOST_YEARS, yearsOf, type YearsQuestion } from '../../../shared/yearly/yearsOf.ts';
import { fact, onClaim, recorded, uuid } from '../../support/submissions.ts';
import { anOutage, aStatus, aStrike } from '../../support/town.ts';

/** Expected values worked out by hand on a calendar; Chicago is six hours behind UTC in winter. */
const question = (more: Partial<YearsQuestion>): YearsQuestion => ({
  statuses: [],
  strikes: [],
  claims: [],
  hydrantOf: (hydrantId) => (hydrantId.startsWith('H-') ? { hydrantId, place: `at ${hydrantId}` } : null),
  timeZone: 'America/Chicago',
  checkedAt: '2026-03-04T20:05:00Z',
  ...more,
});
const yearly = (more: Partial<YearsQuestion>) => publicYears.parse(yearsOf(question(more)));
const struck = (id: string, hydrantId: string | null, since: string, returnedAt: string | null = null) =>
  aStrike(id, { hydrantId, since, returnedAt });

describe('the years', () => {
  test('of nothing are none', () => {
    expect(yearly({})).toEqual({ since: null, years: [] });
  });

  test('are those of the utility’s own zone, newest first, the one that is not over among them', () => {
    // 05:59 UTC on 1 January is 23:59 on New Year's Eve in Chicago.
    const { since, years } = yearly({ strikes: [struck('a', 'H-1', '2025-01-01T05:59:00Z')] });
    expect(since).toBe('2025-01-01T05:59:00.000Z');
    expect(years.map(({ year, over, strikes }) => [year, over, strikes])).toEqual([
      [2026, false, 0],
      [2025, true, 0],
      [2024, true, 1],
    ]);
    expect(years[2]?.byMonth).toEqual([0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 1]);
  });

  test('count a strike in the year in which it was struck, however late somebody told of it', () => {
    const late = aStrike('a', { since: '2025-01-01T07:00:00Z', struckAt: '2024-12-31T12:00:00Z' });
    expect(yearly({ strikes: [late] }).years.map(({ year, strikes }) => [year, strikes])).toEqual([
      [2026, 0],
      [2025, 0],
      [2024, 1],
    ]);
  });

  test('are ten at most', () => {
    const { years } = yearly({ strikes: [struck('a', 'H-1', '1999-05-05T12:00:00Z')] });
    expect(years).toHaveLength(MOST_YEARS);
    expect(years.at(-1)?.year).toBe(2017);
  });

  test('what is dated after the check is in none', () => {
    expect(yearly({ strikes: [struck('a', 'H-1', '2026-03-05T00:00:00Z')] }).since).toBeNull();
  });
});

describe('times of return', () => {
  test('are of the strikes of the year that are back: the middle one, the longest; the others are still out', () => {
    const { years } = yearly({
      strikes: [
        struck('a', 'H-1', '2025-02-01T12:00:00Z', '2025-02-01T22:00:00Z'),
        struck('b', 'H-2', '2025-03-01T12:00:00Z', '2025-03-02T08:00:00Z'),
        struck('c', 'H-3', '2025-04-01T12:00:00Z', '2025-04-03T14:00:00Z'),
        struck('d', 'H-4', '2025-05-01T12:00:00Z'),
      ],
    });
    expect(years[1]).toMatchObject({
      year: 2025,
      strikes: 4,
      returned: { strikes: 3, medianHours: 20, longestHours: 50 },
      stillOut: 1,
    });
    expect(years[0]).toMatchObject({ returned: { strikes: 0, medianHours: null, longestHours: null } });
  });
});

test('a return that is dated before its strike took no time', () => {
  const { years } = yearly({
    strikes: [struck('a', 'H-1', '2025-02-01T12:00:00Z', '2025-02-01T09:00:00Z')],
  });
  expect(years[1]?.returned).toEqual({ strikes: 1, medianHours: 0, longestHours: 0 });
});

describe('days out of service', () => {
  test('count in the year in which they lay, and until the check', () => {
    // From midnight on 30 December until midnight on 3 January; and since midnight on 2 March, 2.59 days before the check.
    const { years } = yearly({
      statuses: [
        aStatus('H-1', [
          anOutage('a', { since: '2024-12-30T06:00:00Z', endedAt: '2025-01-03T06:00:00Z' }),
          anOutage('b', { since: '2026-03-02T06:00:00Z' }),
        ]),
      ],
    });
    expect(years.map(({ year, daysOut }) => [year, daysOut.strike])).toEqual([
      [2026, 3],
      [2025, 2],
      [2024, 2],
    ]);
  });

  test('of two reasons at once count once, and as those of the strike', () => {
    const { years } = yearly({
      statuses: [
        aStatus('H-1', [
          anOutage('a', { since: '2025-06-01T00:00:00Z', endedAt: '2025-06-11T00:00:00Z' }),
          anOutage('m', {
            cause: 'main-shut',
            since: '2025-06-06T00:00:00Z',
            endedAt: '2025-06-16T00:00:00Z',
          }),
        ]),
        aStatus('H-2', [
          anOutage('f', { cause: 'frozen', since: '2025-01-05T00:00:00Z', endedAt: '2025-01-08T00:00:00Z' }),
        ]),
      ],
    });
    expect(years.find(({ year }) => year === 2025)?.daysOut).toEqual({ strike: 10, other: 8 });
  });

  test('of a strike that no hydrant’s status knows count, too, and those of one that it knows once', () => {
    const span = { since: '2025-06-01T00:00:00Z', returnedAt: '2025-06-05T00:00:00Z' };
    const outage = anOutage('a', { since: span.since, endedAt: span.returnedAt });
    const { years } = yearly({
      statuses: [aStatus('H-1', [outage])],
      strikes: [
        struck('a', 'H-1', span.since, span.returnedAt),
        struck('x', null, '2025-07-01T00:00:00Z', '2025-07-03T00:00:00Z'),
      ],
    });
    expect(years[1]?.daysOut).toEqual({ strike: 6, other: 0 });
  });
});

describe('hydrants struck again', () => {
  test('are named in each year in which they were, by the inventory’s words, the most often struck first', () => {
    const { years } = yearly({
      strikes: [
        struck('a', 'H-1', '2024-05-01T12:00:00Z'),
        struck('b', 'H-1', '2025-05-01T12:00:00Z'),
        struck('c', 'H-1', '2025-06-01T12:00:00Z'),
        struck('d', 'H-2', '2025-06-01T12:00:00Z'),
        struck('e', 'H-2', '2025-07-01T12:00:00Z'),
        struck('f', 'H-3', '2025-07-01T12:00:00Z'),
        // Not in the inventory: a number that somebody typed is not told.
        struck('g', 'somebody', '2025-07-01T12:00:00Z'),
        struck('h', 'somebody', '2025-08-01T12:00:00Z'),
      ],
    });
    expect(years.map(({ again }) => again)).toEqual([
      [],
      [
        { hydrantId: 'H-1', place: 'at H-1', inYear: 2, everSo: 3 },
        { hydrantId: 'H-2', place: 'at H-2', inYear: 2, everSo: 2 },
      ],
      [],
    ]);
  });
});

test('of very many hydrants struck again the fifty struck most often are named', () => {
  const twice = Array.from({ length: 60 }, (_, index) => `H-${String(index).padStart(2, '0')}`);
  const strikes = [...twice, ...twice, 'H-59'].map((hydrantId, index) =>
    struck(`s-${index}`, hydrantId, '2025-05-01T12:00:00Z'),
  );
  const { again } = yearly({ strikes }).years[1]!;
  expect(again).toHaveLength(50);
  expect(again.slice(0, 2).map(({ hydrantId, inYear }) => [hydrantId, inYear])).toEqual([
    ['H-59', 3],
    ['H-00', 2],
  ]);
});

describe('sums of money', () => {
  const row = (
    askedCents: number,
    recoveredCents = 0,
    firstDemandOn: string | null = '2025-07-01',
  ): FigureRow => ({
    claimId: 'c',
    claimNumber: 'n',
    strikeId: 's',
    payerKind: 'drivers-insurer',
    cause: 'unknown',
    struckOn: '2025-06-01',
    firstDemandOn,
    askedCents,
    recoveredCents,
    passedOnCents: 0,
    overpaidCents: 0,
    writtenOffCents: 0,
    balanceCents: 0,
    paidOn: null,
    closed: false,
    lost: [],
  });

  test('of five claims are told, to the nearest thousand dollars', () => {
    const five = [500_000, 600_000, 700_000, 800_000, 849_999].map((cents) => row(cents, cents / 1));
    expect(sumsOf(five, true)).toEqual({ billedDollars: 34_000, recoveredDollars: 34_000 });
  });

  test('of four are not, nor of five of which one was never billed', () => {
    const four = [500_000, 600_000, 700_000, 800_000].map((cents) => row(cents, cents));
    expect(sumsOf(four, true)).toEqual({ billedDollars: null, recoveredDollars: null });
    expect(sumsOf([...four, row(900_000, 0, null)], true).billedDollars).toBeNull();
    expect(sumsOf([], true)).toEqual({ billedDollars: null, recoveredDollars: null });
  });

  test('of which one claim is nearly all are not', () => {
    const four = [1, 2, 3, 4].map(() => row(100_000));
    expect(sumsOf([...four, row(9_000_000)], true).billedDollars).toBeNull();
    // Decision 0223: more than four fifths. 16,400 of 20,400 dollars are 80.4 %, 16,000 of 20,000 are not more.
    expect(sumsOf([...four, row(1_640_000)], true).billedDollars).toBeNull();
    expect(sumsOf([...four, row(1_600_000)], true).billedDollars).toBe(20_000);
  });

  test('are those of claims for strikes of the year, under whatever id the claim knows its strike by', () => {
    // Opened in 2026 for strikes of 2025 and 2024; a strike that was joined with another keeps both ids.
    const claim = (number: number, strikeId: string): ClaimState => {
      const [claimId, first] = [uuid(1000 + number), number * 10];
      const told = [
        fact('claim-opened', first, onClaim(1000 + number), { strikeId }),
        fact('packet-frozen', first + 1, onClaim(1000 + number), { revision: 1, demandCents: 500_000 }),
        fact('demand-sent', first + 2, onClaim(1000 + number), {
          revision: 1,
          sentOn: '2026-02-01',
          amountCents: 500_000,
        }),
      ].map((one) => recorded(one, '2026-03-01T12:00:00Z'));
      return foldClaim(claimId, effectiveFacts(told).facts)!;
    };
    const strikes = [
      aStrike('new', { memberIds: ['new', 'old'], since: '2025-05-01T12:00:00Z' }),
      struck('before', 'H-1', '2024-05-01T12:00:00Z'),
    ];
    const claims = [1, 2, 3, 4, 5, 6].map((number) => claim(number, number % 2 ? 'new' : 'old'));
    const { years } = yearly({ strikes, claims: [...claims, claim(7, 'before')] });
    expect(years.map(({ year, money }) => [year, money.billedDollars])).toEqual([
      [2026, null],
      [2025, 30_000],
      [2024, null],
    ]);
  });

  test('recovered from fewer than five are not, however many were billed', () => {
    const six = [1, 2, 3, 4, 5, 6].map((turn) => row(500_000, turn < 5 ? 400_000 : 0));
    expect(sumsOf(six, true)).toEqual({ billedDollars: 30_000, recoveredDollars: null });
  });

  test('of a year that is not over are not: each payment would show in the next publication', () => {
    const many = Array.from({ length: 20 }, () => row(500_000, 500_000));
    expect(sumsOf(many, false)).toEqual({ billedDollars: null, recoveredDollars: null });
  });

  test('never let one of five payers, who takes away what is their own, see another’s exactly', () => {
    const amounts = fc.array(fc.integer({ min: 0, max: 5_000_000 }), { maxLength: 12 });
    fc.assert(
      fc.property(amounts, (cents) => {
        const { billedDollars } = sumsOf(
          cents.map((one) => row(one)),
          true,
        );
        const parts = cents.filter((one) => one > 0);
        const total = parts.reduce((sum, one) => sum + one, 0);
        if (billedDollars === null) return;
        expect(parts.length).toBeGreaterThanOrEqual(5);
        for (const one of parts) expect(one).toBeLessThanOrEqual(0.8 * total);
        expect(Math.abs(billedDollars * 100 - total)).toBeLessThanOrEqual(50_000);
      }),
    );
  });
});
