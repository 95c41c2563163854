import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { foldClaim, type ClaimState } from '../../../shared/claims/state.ts';
import { countsCents, sharesOf } from '../../../shared/claims/ofStrike.ts';
import { effectiveFacts } from '../../../shared/submissions/effective.ts';
import type { FactKind } from '../../../shared/submissions/kinds.ts';
import type { BodyOf, Fact } from '../../../shared/submissions/submission.ts';
import { correction, fact, onClaim, recorded, uuid } from '../../support/submissions.ts';

/** A claim of $1,000.00 that was demanded on 11 March 2026; all of it is invented. */
const claim = onClaim(1);
const base = [
  fact('claim-opened', 1, claim),
  fact('packet-frozen', 2, claim, { revision: 1, demandCents: 1000_00 }),
  fact('demand-sent', 3, claim, { revision: 1, sentOn: '2026-03-11', amountCents: 1000_00 }),
];
const event = <K extends FactKind>(kind: K, number: number, body: Partial<BodyOf<K>>): Fact<K> =>
  fact(kind, number, claim, body);
const pay = (number: number, amountCents: number, more: Partial<BodyOf<'payment-received'>> = {}) =>
  event('payment-received', number, {
    amountCents,
    receivedOn: '2026-04-20',
    lines: [],
    jointPayee: null,
    marked: 'not-marked',
    deposited: 'deposited',
    ...more,
  });
const folded = (...more: readonly Fact[]): ClaimState =>
  foldClaim(
    uuid(1),
    effectiveFacts([...base, ...more].map((each) => recorded(each, '2027-01-01T00:00:00Z'))).facts,
  )!;
const codes = ({ problems }: ClaimState): string[] => problems.map(({ code }) => code);

describe('the money of a claim (sums by hand)', () => {
  it('is what is asked while nothing came', () => {
    expect(folded().money).toMatchObject({
      askedCents: 1000_00,
      paidCents: 0,
      balanceCents: 1000_00,
      paidOn: null,
    });
  });

  it('a short payment leaves the rest, and the cut has its reason', () => {
    const { money, life } = folded(
      pay(10, 850_00, {
        lines: [
          {
            lineId: 'labor-1',
            paidCents: 400_00,
            shortCents: 150_00,
            reason: 'hours',
            words: 'Two would do',
          },
          { lineId: 'parts-1', paidCents: 450_00, shortCents: 0, reason: null, words: null },
        ],
      }),
    );
    expect(money).toMatchObject({
      paidCents: 850_00,
      balanceCents: 150_00,
      unallocatedCents: 0,
      lost: [{ reason: 'hours', cents: 150_00 }],
      lines: [
        { lineId: 'labor-1', paidCents: 400_00, shortCents: 150_00 },
        { lineId: 'parts-1', paidCents: 450_00, shortCents: 0 },
      ],
    });
    expect(life.standing).toBe('part-paid');
  });

  it('a cut that is paid after all is not lost; one that is written off is lost once', () => {
    const cut = pay(10, 850_00, {
      lines: [{ lineId: 'labor-1', paidCents: 0, shortCents: 150_00, reason: 'hours', words: null }],
    });
    const paid = folded(cut, pay(11, 150_00, { receivedOn: '2026-05-02' }));
    expect(paid.money).toMatchObject({ balanceCents: 0, lost: [], paidOn: '2026-05-02' });
    expect(paid.life.standing).toBe('paid');
    const off = folded(
      cut,
      event('written-off', 12, {
        amountCents: 150_00,
        reason: 'settled',
        lostTo: 'hours',
        writtenOffOn: '2026-06-01',
      }),
    );
    expect(off.money).toMatchObject({
      balanceCents: 0,
      writtenOffCents: 150_00,
      paidOn: null,
      lost: [{ reason: 'hours', cents: 150_00 }],
    });
    expect(off.life.standing).toBe('written-off');
  });

  it('a cheque that the bank sent back was never paid', () => {
    const back = event('payment-reversed', 11, {
      payment: uuid(10),
      amountCents: 1000_00,
      reversedOn: '2026-04-25',
    });
    const state = folded(pay(10, 1000_00), back);
    expect(state.money).toMatchObject({
      receivedCents: 1000_00,
      reversedCents: 1000_00,
      paidCents: 0,
      balanceCents: 1000_00,
      paidOn: null,
    });
    expect(codes(state)).toEqual([]);
    const twice = folded(pay(10, 1000_00), back, { ...back, submissionId: uuid(12) });
    expect(twice.money.paidCents).toBe(0);
    expect(codes(twice)).toEqual(['reversal-above-payment']);
    expect(codes(folded(back))).toEqual(['reverses-no-payment']);
  });

  it('a cheque in the drawer is not money yet, and is asked about', () => {
    const state = folded(pay(10, 900_00, { deposited: 'held', marked: 'full' }));
    expect(state.money).toMatchObject({ heldCents: 900_00, paidCents: 0, balanceCents: 1000_00 });
    expect(codes(state)).toEqual(['payment-held']);
    expect(folded(pay(10, 900_00, { deposited: 'returned' })).money).toMatchObject({
      heldCents: 0,
      paidCents: 0,
    });
  });

  // UCC 3-311(a): the instrument was tendered in good faith in full satisfaction, the claim was subject to a bona fide
  // dispute, and the claimant obtained payment of the instrument. All three, so no caution without a dispute.
  it('cashing a cheque marked as full payment on a disputed claim is cautioned, and only then', () => {
    const dispute = event('line-disputed', 9, { saidOn: '2026-04-01' });
    const full = (deposited: 'deposited' | 'held') => pay(10, 900_00, { marked: 'full', deposited });
    expect(codes(folded(dispute, full('deposited')))).toEqual(['full-payment-cashed']);
    expect(codes(folded(dispute, full('held')))).toEqual(['payment-held']);
    expect(codes(folded(full('deposited')))).toEqual([]);
    expect(codes(folded(dispute, pay(10, 900_00, { marked: 'part' })))).toEqual([]);
  });

  it('what is paid beyond what was asked is said, and what is given back is not', () => {
    const state = folded(pay(10, 1100_00));
    expect(state.money).toMatchObject({ balanceCents: 0, overpaidCents: 100_00 });
    expect(codes(state)).toEqual(['overpaid']);
    const refunded = folded(
      pay(10, 1100_00),
      event('refund-paid', 11, { payment: uuid(10), amountCents: 100_00, paidOn: '2026-05-01' }),
    );
    expect(refunded.money).toMatchObject({ overpaidCents: 0, paidCents: 1000_00, refundedCents: 100_00 });
    expect(codes(refunded)).toEqual([]);
  });

  it('what is passed on to an insurer stays paid and is not kept', () => {
    const shared = event('recovery-shared', 11, { amountCents: 750_00, paidOn: '2026-05-04' });
    expect(folded(pay(10, 1000_00), shared).money).toMatchObject({
      paidCents: 1000_00,
      sharedCents: 750_00,
      keptCents: 250_00,
    });
  });

  it('a payment that was corrected leaves no trace of what it said', () => {
    const first = pay(10, 100_00);
    const facts = [...base, first, correction(11, first, { ...first.body, amountCents: 1000_00 })];
    const state = foldClaim(
      uuid(1),
      effectiveFacts(facts.map((each) => recorded(each, '2027-01-01T00:00:00Z'))).facts,
    )!;
    expect(state.money).toMatchObject({ receivedCents: 1000_00, balanceCents: 0 });
  });
});

// Sums by hand. A check marked as full that is tendered back within the days of UCC 3-311(c)(2) is as if it never came.
describe('money that was given back', () => {
  const full = pay(10, 800_00, {
    marked: 'full',
    receivedOn: '2026-04-01',
    lines: [{ lineId: 'labor-1', paidCents: 800_00, shortCents: 200_00, reason: 'hours', words: null }],
  });
  const tendered = event('refund-paid', 11, { payment: uuid(10), amountCents: 800_00, paidOn: '2026-04-10' });

  it('is for no line any more, and what it cut is not decided', () => {
    expect(folded(full, tendered).money).toMatchObject({
      paidCents: 0,
      balanceCents: 1000_00,
      lines: [],
      cuts: [],
      lost: [],
    });
  });

  it('leaves lines alone while only what was too much of them went back', () => {
    const tooMuch = pay(10, 1200_00, {
      lines: [{ lineId: 'labor-1', paidCents: 1000_00, shortCents: 0, reason: null, words: null }],
    });
    const back = event('refund-paid', 11, { payment: uuid(10), amountCents: 200_00, paidOn: '2026-05-01' });
    expect(folded(tooMuch, back).money).toMatchObject({
      paidCents: 1000_00,
      lines: [{ lineId: 'labor-1', paidCents: 1000_00, shortCents: 0 }],
      unallocatedCents: 0,
    });
  });

  it('a claim is paid on the day on which the money came for good', () => {
    const rest = pay(12, 200_00, { receivedOn: '2026-05-01' });
    const again = pay(13, 800_00, { receivedOn: '2026-06-01' });
    expect(folded(full, tendered, rest).money.paidOn).toBe(null);
    expect(folded(full, tendered, rest, again).money.paidOn).toBe('2026-06-01');
  });
});

describe('any payments, reversals, refunds and write-offs, in any order', () => {
  const amount = fc.integer({ min: 1, max: 2000_00 });
  const drawn = fc.array(
    fc.oneof(
      fc.record({
        is: fc.constant('pay' as const),
        cents: amount,
        how: fc.constantFrom('deposited', 'held', 'returned'),
      }),
      fc.record({ is: fc.constant('reverse' as const), cents: amount, of: fc.nat(12) }),
      fc.record({ is: fc.constant('refund' as const), cents: amount }),
      fc.record({ is: fc.constant('off' as const), cents: amount }),
      fc.record({ is: fc.constant('share' as const), cents: amount }),
    ),
    { maxLength: 12 },
  );
  const factsOf = (events: readonly { is: string; cents: number; how?: string; of?: number }[]): Fact[] =>
    events.map(({ is, cents, how, of }, index) => {
      const number = 20 + index;
      if (is === 'pay') return pay(number, cents, { deposited: how as 'held' });
      if (is === 'reverse')
        return event('payment-reversed', number, {
          payment: uuid(20 + (of ?? 0)),
          amountCents: cents,
          reversedOn: '2026-05-01',
        });
      if (is === 'refund')
        return event('refund-paid', number, { amountCents: cents, paidOn: '2026-05-01', payment: null });
      if (is === 'off')
        return event('written-off', number, { amountCents: cents, writtenOffOn: '2026-05-01', lostTo: null });
      return event('recovery-shared', number, { amountCents: cents, paidOn: '2026-05-01' });
    });

  it('never make a balance negative, never lose a cent, and say what cannot be so', () => {
    fc.assert(
      fc.property(drawn, (events) => {
        const state = folded(...factsOf(events));
        const { money } = state;
        for (const [name, value] of Object.entries(money))
          if (name.endsWith('Cents')) {
            expect(Number.isInteger(value), name).toBe(true);
            expect(value as number, name).toBeGreaterThanOrEqual(0);
          }
        // Every cent asked is paid, written off or owed; beyond it there is an overpayment or a remark.
        const remarked = codes(state).length > 0;
        if (!remarked)
          expect(money.paidCents + money.writtenOffCents + money.balanceCents).toBe(
            money.askedCents + money.overpaidCents,
          );
        const cameCents = events
          .filter(({ is, ...rest }) => is === 'pay' && (rest as { how?: string }).how === 'deposited')
          .reduce((sum, { cents }) => sum + cents, 0);
        expect(money.receivedCents).toBe(cameCents);
        const refunds = events.filter(({ is }) => is === 'refund').reduce((sum, { cents }) => sum + cents, 0);
        if (refunds > cameCents - money.reversedCents)
          expect(codes(state)).toContain('refund-above-payments');
        if (money.paidCents > money.askedCents) expect(codes(state)).toContain('overpaid');
      }),
    );
  });

  it('come out the same in whatever order they arrive', () => {
    fc.assert(
      fc.property(
        drawn.chain((events) =>
          fc.tuple(
            fc.constant(events),
            fc.shuffledSubarray(
              events.map((_, index) => index),
              { minLength: events.length },
            ),
          ),
        ),
        ([events, order]) => {
          const facts = factsOf(events);
          const turned = order.map((index) => facts[index]!);
          expect(folded(...turned).money).toEqual(folded(...facts).money);
          expect(folded(...turned).life).toEqual(folded(...facts).life);
        },
      ),
    );
  });
});

describe('several claims of one strike', () => {
  const share = fc.record({
    claimId: fc.uuid(),
    claimNumber: fc.constant('2026-0001'),
    demandCents: fc.nat(2000_00),
    paidCents: fc.nat(2000_00),
    writtenOffCents: fc.nat(500_00),
    closed: fc.boolean(),
  });
  it('never ask more than the statement together, where each keeps to what it may ask', () => {
    fc.assert(
      fc.property(fc.array(share, { minLength: 1, maxLength: 5 }), fc.nat(3000_00), (claims, totalCents) => {
        // Each in turn asks no more than it may beside those before it.
        const asked: typeof claims = [];
        for (const each of claims) {
          const { mayAskCents } = sharesOf(each, asked, totalCents);
          const demandCents = Math.min(each.demandCents, mayAskCents);
          asked.push({
            ...each,
            demandCents,
            paidCents: Math.min(each.paidCents, demandCents),
            writtenOffCents: Math.min(each.writtenOffCents, demandCents),
          });
        }
        expect(asked.reduce((sum, each) => sum + countsCents(each), 0)).toBeLessThanOrEqual(totalCents);
      }),
    );
  });
  it('what one was paid, the others are not asked; what one gave up, they may be', () => {
    const one = {
      claimId: 'a',
      claimNumber: '1',
      demandCents: 600_00,
      paidCents: 0,
      writtenOffCents: 0,
      closed: false,
    };
    const mayAsk = (other: typeof one): number => sharesOf(one, [other], 1000_00).mayAskCents;
    expect(mayAsk(one)).toBe(400_00);
    expect(mayAsk({ ...one, paidCents: 700_00 })).toBe(300_00);
    expect(mayAsk({ ...one, paidCents: 200_00, closed: true })).toBe(800_00);
    expect(mayAsk({ ...one, writtenOffCents: 600_00 })).toBe(1000_00);
    expect(sharesOf({ ...one, demandCents: 500_00 }, [{ ...one, paidCents: 700_00 }], 1000_00)).toEqual({
      mayAskCents: 300_00,
      tooMuchCents: 200_00,
      // 300.00 of the statement are not paid yet; of the demand of 500.00 nobody has more to pay.
      dueCents: 300_00,
      overpaidCents: 0,
    });
    expect(
      sharesOf({ ...one, paidCents: 600_00 }, [{ ...one, paidCents: 600_00 }], 1000_00).overpaidCents,
    ).toBe(200_00);
  });
});
