import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  countsCents,
  shareOf,
  sharesOf,
  strikeProblems,
  type ClaimShare,
} from '../../../shared/claims/ofStrike.ts';
import { foldClaim, type ClaimState } from '../../../shared/claims/state.ts';
import { demandFor } from '../../../shared/costs/demand.ts';
import { effectiveFacts, type Effective } from '../../../shared/submissions/effective.ts';
import type { Fact } from '../../../shared/submissions/submission.ts';
import { fact, onClaim, recorded, uuid } from '../../support/submissions.ts';

/**
 * Three claims of one strike, and anything that may happen to them in any order: a packet is issued only as `demandFor`
 * allows beside what the others count. The rule that they never ask more than the statement is the project's own.
 */
const TOTAL = 1000_00;
const claims = [1, 2, 3] as const;

const step = fc.oneof(
  {
    weight: 4,
    arbitrary: fc.record({ is: fc.constant('freeze' as const), of: fc.nat(2), cents: fc.nat(1200_00) }),
  },
  {
    weight: 2,
    arbitrary: fc.record({
      is: fc.constant('pay' as const),
      of: fc.nat(2),
      cents: fc.integer({ min: 1, max: 700_00 }),
      held: fc.boolean(),
    }),
  },
  fc.record({ is: fc.constant('off' as const), of: fc.nat(2), cents: fc.integer({ min: 1, max: 700_00 }) }),
  fc.record({ is: fc.constant('close' as const), of: fc.nat(2) }),
  fc.record({ is: fc.constant('reopen' as const), of: fc.nat(2) }),
);
type Step = typeof step extends fc.Arbitrary<infer T> ? T : never;

/** The world as a ledger would hold it: each step recorded a minute after the one before. */
function play(
  steps: readonly Step[],
  judge: (before: readonly ClaimShare[], after: readonly ClaimShare[], step: Step, done: boolean) => void,
): void {
  const facts = new Map<number, { fact: Fact; recordedAt: string }[]>();
  const add = (of: number, made: Fact, minute: number): void => {
    const recordedAt = new Date(Date.UTC(2026, 5, 1, 0, minute)).toISOString();
    facts.set(of, [...(facts.get(of) ?? []), { fact: made, recordedAt }]);
  };
  const effective = (of: number): readonly Effective[] =>
    effectiveFacts((facts.get(of) ?? []).map((each) => recorded(each.fact, each.recordedAt))).facts;
  const stateOf = (of: number): ClaimState => foldClaim(uuid(of), effective(of))!;
  const shares = (): ClaimShare[] => claims.map((of) => shareOf(stateOf(of), effective(of)));
  for (const of of claims)
    add(of, fact('claim-opened', of, onClaim(of), { claimNumber: `2026-000${of}` }), 0);

  steps.forEach((each, index) => {
    const of = claims[each.of]!;
    const number = 100 + index;
    const subject = onClaim(of);
    const before = shares();
    const day = '2026-05-01';
    let done = true;
    switch (each.is) {
      case 'freeze': {
        const state = stateOf(of);
        const demand = demandFor({
          statement: { totalCents: TOTAL, complete: true },
          others: before
            .filter(({ claimId }) => claimId !== uuid(of))
            .map((share) => ({ claimNumber: share.claimNumber, demandCents: countsCents(share) })),
          askedCents: each.cents === 0 ? null : each.cents,
        });
        // A closed claim gets no packet (`claim-is-closed`).
        done = demand.ok && !state.life.closed;
        if (demand.ok && done)
          add(
            of,
            fact('packet-frozen', number, subject, {
              revision: (state.packets.at(-1)?.revision ?? 0) + 1,
              demandCents: demand.demandCents,
            }),
            index + 1,
          );
        break;
      }
      case 'pay':
        add(
          of,
          fact('payment-received', number, subject, {
            receivedOn: day,
            amountCents: each.cents,
            deposited: each.held ? 'held' : 'deposited',
            lines: [],
          }),
          index + 1,
        );
        break;
      case 'off':
        add(
          of,
          fact('written-off', number, subject, { writtenOffOn: day, amountCents: each.cents, lostTo: null }),
          index + 1,
        );
        break;
      case 'close':
        add(of, fact('claim-closed', number, subject, { closedOn: day }), index + 1);
        break;
      case 'reopen':
        add(of, fact('claim-reopened', number, subject, { reopenedOn: day }), index + 1);
    }
    judge(before, shares(), each, done);
  });
}

const counted = (shares: readonly ClaimShare[]): number =>
  shares.reduce((sum, share) => sum + countsCents(share), 0);
const has = ({ paidCents, heldCents = 0 }: ClaimShare): number => paidCents + heldCents;

describe('several claims of one strike', () => {
  it('never ask more than its statement, unless one was reopened or paid too much, and then it is said', () => {
    fc.assert(
      fc.property(fc.array(step, { maxLength: 14 }), (steps) => {
        let mayBeAbove = false;
        play(steps, (before, after, each, done) => {
          if (each.is === 'reopen') mayBeAbove = true;
          if (
            each.is === 'pay' &&
            after.some((share) => has(share) > share.demandCents - share.writtenOffCents || share.closed)
          )
            mayBeAbove = true;
          if (!mayBeAbove) expect(counted(after)).toBeLessThanOrEqual(TOTAL);
          // A packet never makes it worse: it asks for no more than the others leave.
          if (each.is === 'freeze' && done) {
            const own = after[each.of]!;
            const others = after.filter((share) => share !== own);
            expect(counted(after)).toBeLessThanOrEqual(Math.max(TOTAL, counted(others) + has(own)));
          }
          if (each.is === 'freeze' && !done) expect(after).toEqual(before);
          const codes = strikeProblems(after, TOTAL).map(({ code }) => code);
          // Money that a payer sent beyond its own demand is owed back, and is asked of nobody.
          const beyond = after
            .filter(({ demandCents }) => demandCents > 0)
            .reduce((sum, { demandCents, paidCents }) => sum + Math.max(0, paidCents - demandCents), 0);
          expect(codes.includes('claims-above-statement')).toBe(counted(after) - beyond > TOTAL);
          expect(codes.includes('strike-overpaid')).toBe(
            after.reduce((sum, { paidCents }) => sum + paidCents, 0) > TOTAL,
          );
        });
      }),
      { numRuns: 400 },
    );
  });

  it('what all may still be asked and what came is never more than the statement, but for what came too much', () => {
    fc.assert(
      fc.property(fc.array(step, { maxLength: 14 }), (steps) => {
        play(steps, (_before, after) => {
          const came = after.reduce((sum, share) => sum + has(share), 0);
          for (const own of after) {
            const { dueCents, mayAskCents, tooMuchCents } = sharesOf(
              own,
              after.filter((share) => share !== own),
              TOTAL,
            );
            for (const cents of [dueCents, mayAskCents, tooMuchCents]) {
              expect(Number.isInteger(cents)).toBe(true);
              expect(cents).toBeGreaterThanOrEqual(0);
            }
            expect(came + dueCents).toBeLessThanOrEqual(Math.max(TOTAL, came));
            if (own.closed) expect(dueCents).toBe(0);
          }
        });
      }),
      { numRuns: 200 },
    );
  });
});

describe('one claim beside another (sums by hand, statement of $1,000.00)', () => {
  const share = (change: Partial<ClaimShare> = {}): ClaimShare => ({
    claimId: uuid(1),
    claimNumber: '2026-0001',
    demandCents: 600_00,
    paidCents: 0,
    writtenOffCents: 0,
    closed: false,
    ...change,
  });

  it('a payment by one lowers what the other is asked', () => {
    const own = share({ demandCents: 700_00 });
    const late = share({ paidCents: 500_00, closed: true });
    expect(sharesOf(own, [share({ closed: true })], TOTAL)).toMatchObject({
      mayAskCents: TOTAL,
      dueCents: 700_00,
    });
    expect(sharesOf(own, [late], TOTAL)).toMatchObject({
      mayAskCents: 500_00,
      tooMuchCents: 200_00,
      dueCents: 500_00,
    });
  });

  it('a cheque in the drawer counts as if it may be cashed', () => {
    expect(countsCents(share({ heldCents: 200_00, closed: true }))).toBe(200_00);
  });

  it('a claim that asks exactly the statement and is paid too much asks no more than it', () => {
    const paid = share({ demandCents: TOTAL, paidCents: TOTAL + 77_84 });
    expect(strikeProblems([paid], TOTAL)).toEqual([
      expect.objectContaining({ code: 'strike-overpaid', params: { overpaidCents: 77_84 } }),
    ]);
  });

  it('what is passed on to the own insurer is not kept twice; more than it paid is questioned', () => {
    // The own insurer paid 750.00 after a deductible of 250.00; the driver's insurer then paid all, and 750.00 went on.
    const own = share({ demandCents: 750_00, paidCents: 750_00, ownInsurer: true });
    const driver = (sharedCents: number) =>
      share({ claimId: uuid(2), demandCents: TOTAL, paidCents: TOTAL, sharedCents });
    expect(sharesOf(own, [driver(750_00)], TOTAL).overpaidCents).toBe(0);
    expect(sharesOf(own, [driver(0)], TOTAL).overpaidCents).toBe(750_00);
    const codes = (sharedCents: number) =>
      strikeProblems([own, driver(sharedCents)], TOTAL).map(({ code }) => code);
    expect(codes(750_01)).toEqual(['claims-above-statement', 'shared-above-insurer-paid']);
    expect(codes(750_00)).toEqual(['claims-above-statement']);
  });
});

describe('what a claim counts', () => {
  const of = (...facts: readonly (readonly [Fact, string])[]): number => {
    const effective = effectiveFacts(
      [[fact('claim-opened', 1, onClaim(1)), '2026-03-04T03:00:00Z'] as const, ...facts].map(([each, at]) =>
        recorded(each, at),
      ),
    ).facts;
    return countsCents(shareOf(foldClaim(uuid(1), effective)!, effective));
  };
  const packet = (number: number, revision: number, demandCents: number) =>
    fact('packet-frozen', number, onClaim(1), { revision, demandCents });
  const off = fact('written-off', 5, onClaim(1), {
    amountCents: 300_00,
    writtenOffOn: '2026-05-01',
    lostTo: null,
  });
  const close = fact('claim-closed', 6, onClaim(1), { closedOn: '2026-05-02' });

  it('a write-off lowers the demand it was made on, and not one that was issued afterwards', () => {
    const first = [packet(2, 1, 800_00), '2026-04-01T00:00:00Z'] as const;
    expect(of(first)).toBe(800_00);
    expect(of(first, [off, '2026-05-01T00:00:00Z'])).toBe(500_00);
    expect(of(first, [off, '2026-05-01T00:00:00Z'], [packet(7, 2, 500_00), '2026-05-03T00:00:00Z'])).toBe(
      500_00,
    );
  });

  it('a closing leaves what was paid, and not where a packet was issued after it', () => {
    const first = [packet(2, 1, 800_00), '2026-04-01T00:00:00Z'] as const;
    expect(of(first, [close, '2026-05-02T00:00:00Z'])).toBe(0);
    expect(of(first, [close, '2026-05-02T00:00:00Z'], [packet(7, 2, 700_00), '2026-05-03T00:00:00Z'])).toBe(
      700_00,
    );
  });
});
