import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { foldClaim, type ClaimState } from '../../../shared/claims/state.ts';
import { effectiveFacts } from '../../../shared/submissions/effective.ts';
import type { Recorded } from '../../../shared/submissions/recorded.ts';
import type { Fact } from '../../../shared/submissions/submission.ts';
import { hasWords } from '../../../shared/words/index.ts';
import { correction, fact, onClaim, recorded, uuid } from '../../support/submissions.ts';

/**
 * Whatever happens to a claim of $1,000.00, in whatever order it arrives, corrected or withdrawn: its money is what a
 * second, plainer count of the same events gives.
 */
const claim = onClaim(1);
const ASKED = 1000_00;
const cents = fc.integer({ min: 1, max: 1500_00 });
const day = fc.integer({ min: 12, max: 30 }).map((n) => `2026-04-${n}`);
const reason = fc.constantFrom('hours' as const, 'depreciation' as const, 'other' as const);
const drawn = fc.record({
  happened: fc.array(
    fc.oneof(
      fc.record({
        is: fc.constant('pay' as const),
        cents,
        on: day,
        how: fc.constantFrom('deposited' as const, 'held' as const, 'returned' as const),
        marked: fc.constantFrom('not-marked' as const, 'part' as const, 'full' as const),
        short: fc.nat(300_00),
        reason,
      }),
      fc.record({ is: fc.constant('reverse' as const), cents, on: day, of: fc.nat(9) }),
      fc.record({ is: fc.constant('refund' as const), cents, on: day }),
      fc.record({ is: fc.constant('off' as const), cents, on: day, lostTo: fc.option(reason) }),
      fc.record({ is: fc.constant('share' as const), cents, on: day }),
      fc.record({ is: fc.constant('dispute' as const), cents, on: day, reason }),
      fc.record({ is: fc.constant('deny' as const), on: day, reason }),
      fc.record({ is: fc.constant('answer' as const), on: day, of: fc.nat(9) }),
      fc.record({ is: fc.constant('close' as const), on: day }),
      fc.record({ is: fc.constant('reopen' as const), on: day }),
    ),
    { maxLength: 10 },
  ),
  /** Which of them were put right, and to what sum; null withdraws. */
  corrected: fc.array(fc.tuple(fc.nat(9), fc.option(cents)), { maxLength: 3 }),
});
type Drawn = typeof drawn extends fc.Arbitrary<infer T> ? T : never;
type Happened = Drawn['happened'][number];

const idOf = (index: number): number => 20 + index;
function factOf(each: Happened, index: number): Fact {
  const number = idOf(index);
  const { on } = each;
  switch (each.is) {
    case 'pay':
      return fact('payment-received', number, claim, {
        receivedOn: on,
        amountCents: each.cents,
        deposited: each.how,
        marked: each.marked,
        lines: [
          {
            lineId: 'labor-1',
            paidCents: Math.floor(each.cents / 3),
            shortCents: each.short,
            reason: each.reason,
            words: null,
          },
        ],
      });
    case 'reverse':
      return fact('payment-reversed', number, claim, {
        reversedOn: on,
        payment: uuid(idOf(each.of)),
        amountCents: each.cents,
      });
    case 'refund':
      return fact('refund-paid', number, claim, { paidOn: on, payment: null, amountCents: each.cents });
    case 'off':
      return fact('written-off', number, claim, {
        writtenOffOn: on,
        amountCents: each.cents,
        lostTo: each.lostTo,
      });
    case 'share':
      return fact('recovery-shared', number, claim, { paidOn: on, amountCents: each.cents });
    case 'dispute':
      return fact('line-disputed', number, claim, {
        saidOn: on,
        lines: [{ lineId: 'labor-1', reason: each.reason, disputedCents: each.cents, words: 'No' }],
      });
    case 'deny':
      return fact('claim-denied', number, claim, { deniedOn: on, reasons: [each.reason] });
    case 'answer':
      return fact('dispute-answered', number, claim, { answeredOn: on, answers: uuid(idOf(each.of)) });
    case 'close':
      return fact('claim-closed', number, claim, { closedOn: on });
    case 'reopen':
      return fact('claim-reopened', number, claim, { reopenedOn: on });
  }
}

const base = [
  fact('claim-opened', 1, claim),
  fact('packet-frozen', 2, claim, { revision: 1, demandCents: ASKED }),
  fact('demand-sent', 3, claim, { revision: 1, sentOn: '2026-03-11', amountCents: ASKED }),
];

/** The records, and what of each event stands: its sum, or null for one that was withdrawn. */
function told({ happened, corrected }: Drawn): { all: Recorded[]; stands: (Happened | null)[] } {
  const stands: (Happened | null)[] = [...happened];
  const facts = happened.map(factOf);
  const more = corrected.flatMap(([index, sum], at) => {
    const target = facts[index];
    const was = happened[index];
    if (!target || !was || !('cents' in was) || corrected.findIndex(([other]) => other === index) !== at)
      return [];
    stands[index] = sum === null ? null : { ...was, cents: sum };
    // The same event told with another sum, so that its lines still fit.
    const replacement = sum === null ? null : factOf({ ...was, cents: sum }, index).body;
    return [correction(60 + at, target, replacement)];
  });
  return { all: [...base, ...facts, ...more].map((each) => recorded(each, '2027-01-01T00:00:00Z')), stands };
}
const fold = (all: readonly Recorded[]): ClaimState => foldClaim(uuid(1), effectiveFacts(all).facts)!;

describe('any mix of payments, disputes, reversals and corrections', () => {
  it('gives one answer, whatever the order of arrival', () => {
    fc.assert(
      fc.property(
        drawn.chain((what) => {
          const { all } = told(what);
          return fc.tuple(fc.constant(all), fc.shuffledSubarray(all, { minLength: all.length }));
        }),
        ([all, turned]) => {
          expect(fold(turned)).toEqual(fold(all));
        },
      ),
    );
  });

  it('adds up to what a plainer count gives, in whole cents, and nothing is below zero without a word', () => {
    fc.assert(
      fc.property(drawn, (what) => {
        const { all, stands } = told(what);
        const { money, life, problems } = fold(all);

        const left = new Map<string, number>();
        let came = 0;
        let gone = 0;
        let off = 0;
        let shared = 0;
        stands.forEach((each, index) => {
          if (each?.is === 'pay') left.set(uuid(idOf(index)), each.cents);
          if (each?.is === 'pay' && each.how === 'deposited') came += each.cents;
        });
        const strays: boolean[] = [];
        for (const each of stands) {
          if (each?.is === 'refund') gone += each.cents;
          if (each?.is === 'off') off += each.cents;
          if (each?.is === 'share') shared += each.cents;
          if (each?.is !== 'reverse') continue;
          const most = left.get(uuid(idOf(each.of)));
          strays.push(most === undefined || each.cents > most);
          left.set(uuid(idOf(each.of)), Math.max(0, (most ?? 0) - each.cents));
        }
        let stayed = 0;
        let held = 0;
        stands.forEach((each, index) => {
          if (each?.is !== 'pay') return;
          if (each.how === 'deposited') stayed += left.get(uuid(idOf(index))) ?? 0;
          if (each.how === 'held') held += left.get(uuid(idOf(index))) ?? 0;
        });

        expect(money).toMatchObject({
          askedCents: ASKED,
          receivedCents: came,
          reversedCents: came - stayed,
          refundedCents: gone,
          heldCents: held,
          sharedCents: shared,
          writtenOffCents: off,
        });
        // The equation of the claim, which may come out below zero: then somebody is told.
        const balance = ASKED - (stayed - gone) - off;
        expect(money.balanceCents - money.overpaidCents === balance || problems.length > 0).toBe(true);
        const codes = problems.map(({ code }) => code);
        if (stayed - gone > ASKED) expect(codes).toContain('overpaid');
        if (gone > stayed) expect(codes).toContain('refund-above-payments');
        if (off > Math.max(0, ASKED - Math.max(0, stayed - gone)))
          expect(codes).toContain('write-off-above-balance');
        if (strays.some(Boolean)) expect(codes.some((code) => /^revers/.test(code))).toBe(true);
        if (held > 0) expect(codes).toContain('payment-held');

        for (const [name, value] of Object.entries(money))
          if (name.endsWith('Cents')) {
            expect(Number.isInteger(value), name).toBe(true);
            expect(value as number, name).toBeGreaterThanOrEqual(0);
          }
        // What was lost to reasons is no more than what is not paid.
        const lost = money.lost.reduce((sum, item) => sum + item.cents, 0);
        expect(lost).toBeLessThanOrEqual(money.balanceCents + money.writtenOffCents);
        expect(money.paidOn === null).toBe(money.paidCents < ASKED);
        for (const code of codes) expect(hasWords(`problem.${code}`), code).toBe(true);
        expect(life.also).not.toContain(life.standing);
      }),
      { numRuns: 300 },
    );
  });
});
