import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { claimFigures } from '../../../shared/claimFigures/figures.ts';
import type { FigureRow } from '../../../shared/claimFigures/row.ts';
import { rowOf } from '../../../shared/claimFigures/rowOf.ts';
import type { ClaimState } from '../../../shared/claims/state.ts';
import { claimMoney } from '../../../shared/payments/money.ts';
import { effectiveFacts } from '../../../shared/submissions/effective.ts';
import { fact, onClaim, recorded } from '../../support/submissions.ts';

const row = (over: Partial<FigureRow>): FigureRow => ({
  claimId: 'c',
  claimNumber: '2026-0001',
  strikeId: 's',
  payerKind: 'drivers-insurer',
  cause: 'left-the-road',
  struckOn: '2026-01-01',
  firstDemandOn: '2026-01-11',
  askedCents: 1000_00,
  recoveredCents: 0,
  passedOnCents: 0,
  overpaidCents: 0,
  writtenOffCents: 0,
  balanceCents: 1000_00,
  paidOn: null,
  closed: false,
  lost: [],
  ...over,
});

describe('ageing', () => {
  // Day counts from Python's datetime: date(2026, 1, 11) + timedelta(days=n). The classes are common practice of
  // receivables ledgers, no source.
  it.each([
    ['2026-01-11', '0-30'],
    ['2026-02-10', '0-30'],
    ['2026-02-11', '31-60'],
    ['2026-03-12', '31-60'],
    ['2026-03-13', '61-90'],
    ['2026-04-11', '61-90'],
    ['2026-04-12', 'over-90'],
  ])('on %s a demand of 11 January 2026 is in class %s', (today, code) => {
    const aged = claimFigures([row({})], today).ageing.filter(({ claims }) => claims.length > 0);
    expect(aged.map((each) => [each.code, each.balanceCents])).toEqual([[code, 1000_00]]);
  });

  it('counts across a leap day', () => {
    // 2028 is a leap year: 31 days from 1 February to 3 March, 30 in 2027 (from 1 February).
    const aged = (today: string, demanded: string) =>
      claimFigures([row({ firstDemandOn: demanded })], today).ageing.find(({ claims }) => claims.length > 0);
    expect(aged('2028-03-03', '2028-02-01')).toMatchObject({ code: '31-60', claims: [{ days: 31 }] });
    expect(aged('2027-03-03', '2027-02-01')).toMatchObject({ code: '0-30', claims: [{ days: 30 }] });
  });

  it('leaves out what is closed, paid, or was never asked for', () => {
    const rows = [
      row({ closed: true }),
      row({ balanceCents: 0, recoveredCents: 1000_00 }),
      row({ firstDemandOn: null }),
    ];
    expect(claimFigures(rows, '2026-02-01').ageing.every(({ claims }) => claims.length === 0)).toBe(true);
  });
});

describe('recovery', () => {
  it('is told by payer, cause and year of the strike, and says what share came', () => {
    const rows = [
      row({
        claimId: 'a',
        recoveredCents: 750_00,
        writtenOffCents: 250_00,
        balanceCents: 0,
        lost: [{ reason: 'hours', cents: 250_00 }],
      }),
      row({ claimId: 'b', payerKind: 'government', struckOn: '2025-12-31', askedCents: 3000_00 }),
      // Opened, never billed: in no figure of money.
      row({ claimId: 'd', firstDemandOn: null, askedCents: 0, balanceCents: 0 }),
    ];
    const figures = claimFigures(rows, '2026-02-01');
    expect(figures.whole).toMatchObject({
      claims: 2,
      billedCents: 4000_00,
      recoveredCents: 750_00,
      cutCents: 250_00,
      writtenOffCents: 250_00,
      share: 0.1875,
    });
    expect(figures.by.payer.map(({ group, billedCents }) => [group, billedCents])).toEqual([
      ['government', 3000_00],
      ['drivers-insurer', 1000_00],
    ]);
    expect(figures.by.year.map(({ group }) => group)).toEqual(['2026', '2025']);
    expect(figures.lost).toEqual([{ reason: 'hours', claims: 1, cents: 250_00, shareOfBilled: 0.0625 }]);
  });

  it('has no share where nothing was billed', () => {
    expect(claimFigures([], '2026-02-01').whole).toMatchObject({ claims: 0, share: null });
  });
});

describe('speed', () => {
  it('gives quartiles as NumPy does', () => {
    // numpy.percentile([10, 20, 40, 45], [25, 50, 75]) = 17.5, 30, 41.25
    const demanded = ['2026-01-11', '2026-01-21', '2026-02-10', '2026-02-15'];
    const { strikeToDemand, demandToPaid } = claimFigures(
      demanded.map((firstDemandOn, index) => row({ claimId: String(index), firstDemandOn })),
      '2026-03-01',
    ).speed;
    expect(strikeToDemand).toEqual({
      claims: 4,
      lowerQuartileDays: 17.5,
      medianDays: 30,
      upperQuartileDays: 41.25,
      longestDays: 45,
    });
    expect(demandToPaid).toMatchObject({ claims: 0, medianDays: null });
  });
});

describe('any claims', () => {
  const anyRow = fc.record({
    claimId: fc.uuid(),
    claimNumber: fc.integer({ min: 1, max: 9999 }).map((n) => `2026-${String(n).padStart(4, '0')}`),
    payerKind: fc.constantFrom('drivers-insurer', 'government', 'driver', 'unknown'),
    cause: fc.constantFrom('left-the-road', 'unknown', 'other'),
    year: fc.integer({ min: 2020, max: 2027 }),
    demanded: fc.boolean(),
    askedCents: fc.nat(1_000_000),
    recoveredCents: fc.nat(1_000_000),
    writtenOffCents: fc.nat(10_000),
    balanceCents: fc.nat(1_000_000),
  });
  it('add up to the whole in every grouping, in any order', () => {
    fc.assert(
      fc.property(fc.array(anyRow, { maxLength: 30 }), (drawn) => {
        const rows = drawn.map(({ year, demanded, ...rest }) =>
          row({
            ...(rest as Partial<FigureRow>),
            struckOn: `${year}-02-01`,
            firstDemandOn: demanded ? `${year}-03-01` : null,
          }),
        );
        const figures = claimFigures(rows, '2027-06-01');
        for (const groups of Object.values(figures.by))
          for (const key of ['claims', 'billedCents', 'recoveredCents', 'balanceCents'] as const)
            expect(groups.reduce((sum, group) => sum + group[key], 0)).toBe(figures.whole[key]);
        const owed = rows
          .filter(({ firstDemandOn, balanceCents }) => firstDemandOn !== null && balanceCents > 0)
          .reduce((sum, { balanceCents }) => sum + balanceCents, 0);
        expect(figures.ageing.reduce((sum, { balanceCents }) => sum + balanceCents, 0)).toBe(owed);
        const turned = claimFigures([...rows].reverse(), '2027-06-01');
        expect({
          ...turned,
          ageing: turned.ageing.map(({ code, balanceCents }) => [code, balanceCents]),
        }).toEqual({
          ...figures,
          ageing: figures.ageing.map(({ code, balanceCents }) => [code, balanceCents]),
        });
      }),
    );
  });
});

describe('what a claim gives to them', () => {
  // The accounting identity of a receivable: what was asked is collected, passed on, given up or still owed.
  it('ties: billed is recovered, passed on, written off and owed; what was paid too much stands apart', () => {
    fc.assert(
      fc.property(fc.nat(3000_00), fc.nat(1000_00), fc.nat(1000_00), (paidCents, writeOff, shared) => {
        const askedCents = 1000_00;
        const on = '2026-02-01';
        const subject = onClaim(1);
        const facts = effectiveFacts(
          [
            fact('payment-received', 1, subject, {
              receivedOn: on,
              amountCents: paidCents,
              deposited: 'deposited',
              lines: [],
            }),
            fact('recovery-shared', 2, subject, { paidOn: on, amountCents: Math.min(shared, paidCents) }),
            fact('written-off', 3, subject, {
              writtenOffOn: on,
              amountCents: Math.min(writeOff, Math.max(0, askedCents - paidCents)),
            }),
          ].map((each) => recorded(each)),
        ).facts;
        const money = claimMoney(facts, askedCents);
        const given = rowOf(
          {
            money,
            life: { firstDemand: { on }, closed: false },
            openedAt: '2026-01-01T00:00:00Z',
          } as unknown as ClaimState,
          null,
          'UTC',
        );
        expect(given.recoveredCents + given.passedOnCents + given.writtenOffCents + given.balanceCents).toBe(
          askedCents,
        );
        expect(given.overpaidCents).toBe(Math.max(0, paidCents - askedCents));
      }),
    );
  });
});
