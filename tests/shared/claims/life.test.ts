import { describe, expect, it } from 'vitest';
import type { LifeContext } from '../../../shared/claims/context.ts';
import { claimFlags, standings } from '../../../shared/claims/life.ts';
import { foldClaim, type ClaimState } from '../../../shared/claims/state.ts';
import { effectiveFacts } from '../../../shared/submissions/effective.ts';
import type { FactKind } from '../../../shared/submissions/kinds.ts';
import type { BodyOf, Fact } from '../../../shared/submissions/submission.ts';
import { hasWords, sayProblem } from '../../../shared/words/index.ts';
import { fact, onClaim, recorded, uuid } from '../../support/submissions.ts';

/** A claim of $1,000.00, demanded on 11 March 2026. Rules of this project; no outside source. All of it is invented. */
const claim = onClaim(1);
const event = <K extends FactKind>(kind: K, number: number, body: Partial<BodyOf<K>>): Fact<K> =>
  fact(kind, number, claim, body);
const opened = event('claim-opened', 1, {});
const packet = event('packet-frozen', 2, { revision: 1, demandCents: 1000_00 });
const demand = event('demand-sent', 3, { revision: 1, sentOn: '2026-03-11', amountCents: 1000_00 });
const pay = (number: number, amountCents: number, more: Partial<BodyOf<'payment-received'>> = {}) =>
  event('payment-received', number, {
    amountCents,
    receivedOn: '2026-04-20',
    lines: [],
    marked: 'not-marked',
    deposited: 'deposited',
    ...more,
  });
const fold = (facts: readonly Fact[], context: LifeContext = {}): ClaimState =>
  foldClaim(
    uuid(1),
    effectiveFacts(facts.map((each) => recorded(each, '2027-01-01T00:00:00Z'))).facts,
    context,
  )!;
const folded = (...more: readonly Fact[]): ClaimState => fold([opened, packet, demand, ...more]);
const codes = ({ problems }: ClaimState): string[] => problems.map(({ code }) => code);

describe('how a claim stands', () => {
  const dispute = event('line-disputed', 10, { saidOn: '2026-04-01' });
  const asked = event('information-asked', 11, { askedOn: '2026-03-20' });
  const offer = event('offer-made', 12, { offeredOn: '2026-04-10' });
  const denial = event('claim-denied', 13, { deniedOn: '2026-04-12' });
  const plan = event('payment-plan', 14, {
    agreedOn: '2026-06-10',
    instalments: [
      { dueOn: '2026-07-10', amountCents: 400_00 },
      { dueOn: '2026-08-10', amountCents: 600_00 },
    ],
  });
  const referred = event('claim-referred', 15, { referredOn: '2026-06-20' });
  const order = event('restitution-ordered', 16, { orderedOn: '2026-07-01', amountCents: 1000_00 });
  const off = event('written-off', 17, { writtenOffOn: '2026-08-01', amountCents: 1000_00, lostTo: null });
  const closed = event('claim-closed', 18, { closedOn: '2026-08-02', how: 'written-off' });

  it.each([
    ['open', fold([opened])],
    ['packet-issued', fold([opened, packet])],
    ['demand-sent', folded()],
    ['acknowledged', folded(event('claim-acknowledged', 9, { receivedOn: '2026-03-14' }))],
    ['information-asked', folded(asked)],
    [
      'demand-sent',
      folded(asked, event('information-given', 30, { givenOn: '2026-03-24', answers: uuid(11) })),
    ],
    ['disputed', folded(dispute)],
    [
      'demand-sent',
      folded(dispute, event('dispute-answered', 30, { answers: uuid(10), outcome: 'conceded' })),
    ],
    ['offered', folded(offer)],
    ['demand-sent', folded(offer, event('offer-answered', 30, { answers: uuid(12), answer: 'declined' }))],
    ['denied', folded(denial)],
    // Who offers or pays after all has taken the denial back.
    ['offered', folded(denial, event('offer-made', 30, { offeredOn: '2026-04-13' }))],
    [
      'denied',
      folded(
        denial,
        event('offer-made', 30, { offeredOn: '2026-04-11' }),
        event('offer-answered', 31, { answers: uuid(30) }),
      ),
    ],
    ['part-paid', folded(pay(20, 400_00))],
    ['plan', folded(plan)],
    ['plan', folded(plan, pay(20, 400_00, { receivedOn: '2026-07-09' }))],
    ['referred', folded(plan, referred)],
    ['restitution', folded(referred, order)],
    ['written-off', folded(referred, off)],
    ['paid', folded(plan, pay(20, 1000_00, { receivedOn: '2026-07-09' }))],
    ['closed', folded(off, closed)],
    ['written-off', folded(off, closed, event('claim-reopened', 30, { reopenedOn: '2026-09-01' }))],
  ] as const)('%s', (standing, state) => expect(state.life.standing).toBe(standing));

  it('says what else holds', () => {
    const { life } = folded(dispute, pay(20, 400_00), pay(21, 100_00, { deposited: 'held' }), referred);
    expect(life.standing).toBe('referred');
    expect(life.also).toEqual(['packet-issued', 'demand-sent', 'disputed', 'part-paid']);
    expect(life.flags).toEqual(['held-payment']);
    expect(folded(closed, event('claim-reopened', 30, { reopenedOn: '2026-09-01' })).life.flags).toEqual([
      'reopened',
    ]);
    expect(folded(pay(20, 1000_01)).life.flags).toEqual(['overpaid']);
    expect(folded(event('legal-hold', 30, { hold: 'set' })).life.flags).toEqual(['legal-hold']);
  });

  it('tells instalments that are met, missed and still to come; only a day can miss one', () => {
    const states = (today: string | undefined, ...more: readonly Fact[]) =>
      fold([opened, packet, demand, plan, ...more], today === undefined ? {} : { today }).life;
    const of = (life: ClaimState['life']) => life.plan?.instalments.map(({ state }) => state);
    expect(of(states(undefined))).toEqual(['open', 'open']);
    expect(of(states('2026-07-10'))).toEqual(['open', 'open']);
    expect(of(states('2026-07-11'))).toEqual(['missed', 'open']);
    expect(states('2026-07-11').flags).toEqual(['plan-missed']);
    const first = pay(20, 400_00, { receivedOn: '2026-07-09' });
    expect(of(states('2026-08-11', first))).toEqual(['met', 'missed']);
    // A payment of before the plan that goes back takes nothing from what came for it.
    const before = pay(22, 100_00, { receivedOn: '2026-05-01' });
    const bounced = event('payment-reversed', 23, {
      payment: uuid(22),
      amountCents: 100_00,
      reversedOn: '2026-07-12',
    });
    expect(of(states('2026-07-11', before, first, bounced))).toEqual(['met', 'open']);
    // What came before the plan was agreed is not of it.
    expect(of(states('2026-07-11', pay(20, 400_00, { receivedOn: '2026-06-09' })))).toEqual([
      'missed',
      'open',
    ]);
    const back = event('payment-reversed', 21, {
      payment: uuid(20),
      amountCents: 400_00,
      reversedOn: '2026-07-12',
    });
    expect(of(states('2026-08-11', first, back))).toEqual(['missed', 'missed']);
  });

  it('marks the first demand, from which interest may run, and names supplements', () => {
    const more = [
      event('packet-frozen', 30, { revision: 2, demandCents: 1200_00 }),
      event('demand-sent', 31, {
        revision: 2,
        sentOn: '2026-05-01',
        amountCents: 1200_00,
        what: 'supplement',
      }),
    ];
    const { life, money } = folded(...more);
    expect(life.firstDemand).toMatchObject({ on: '2026-03-11', amountCents: 1000_00 });
    expect(life.supplements).toMatchObject([{ revision: 2, amountCents: 1200_00 }]);
    expect(money.askedCents).toBe(1200_00);
    // A demand that no packet bears out is no demand for a sum certain.
    const early = event('demand-sent', 32, { revision: 7, sentOn: '2026-03-05', amountCents: 5_00 });
    expect(folded(early).life.firstDemand?.on).toBe('2026-03-11');
  });

  it('has its events by their own days, with their sums and who wrote them', () => {
    const late = event('claim-acknowledged', 40, { receivedOn: '2026-03-14' });
    const { events } = fold([late, pay(20, 5_00), opened, demand, packet], {
      timeZone: 'America/New_York',
    }).life;
    expect(events.map(({ kind, on }) => [kind, on])).toEqual([
      // 02:01 UTC is the evening before in New York.
      ['claim-opened', '2026-03-03'],
      ['packet-frozen', '2026-03-03'],
      ['demand-sent', '2026-03-11'],
      ['claim-acknowledged', '2026-03-14'],
      ['payment-received', '2026-04-20'],
    ]);
    expect(events.at(-1)).toMatchObject({ amountCents: 5_00, personId: 'w-7', submissionId: uuid(20) });
  });
});

describe('what cannot be so', () => {
  it.each([
    ['answers-nothing', [event('offer-answered', 30, { answers: uuid(99) })]],
    ['answers-nothing', [event('information-given', 30, { givenOn: '2026-03-24', answers: uuid(99) })]],
    // A dispute is not answered as an offer is.
    [
      'answers-nothing',
      [
        event('line-disputed', 29, { saidOn: '2026-04-01' }),
        event('offer-answered', 30, { answers: uuid(29) }),
      ],
    ],
    ['event-later-than-recorded', [event('claim-denied', 30, { deniedOn: '2027-01-03' })]],
    ['event-before-opening', [event('claim-denied', 30, { deniedOn: '2026-03-02' })]],
    ['closed-with-balance', [event('claim-closed', 30, { closedOn: '2026-08-02', how: 'settled' })]],
    [
      'refund-of-no-payment',
      [
        event('refund-paid', 30, { payment: uuid(99), paidOn: '2026-05-01', amountCents: 1 }),
        pay(20, 1000_01),
      ],
    ],
    [
      'refund-above-overpaid',
      [
        pay(20, 1000_00),
        event('refund-paid', 30, { payment: uuid(20), paidOn: '2026-05-01', amountCents: 1 }),
      ],
    ],
    [
      'refund-above-payments',
      [event('refund-paid', 30, { payment: null, paidOn: '2026-05-01', amountCents: 1 })],
    ],
    ['shared-above-paid', [event('recovery-shared', 30, { paidOn: '2026-05-04', amountCents: 1 })]],
    [
      'write-off-above-balance',
      [event('written-off', 30, { writtenOffOn: '2026-08-01', amountCents: 1000_01, lostTo: null })],
    ],
  ] as const)('%s', (code, facts) => {
    const found = folded(...(facts as readonly Fact[])).problems.filter((each) => each.code !== 'overpaid');
    expect(found.map((each) => each.code)).toEqual([code]);
    for (const locale of ['en', 'es'] as const) expect(sayProblem(locale, found[0]!)).not.toMatch(/[[{]/);
  });

  it('a payment before any demand', () => {
    expect(codes(fold([opened, pay(20, 5_00)]))).toEqual(['payment-without-demand']);
  });

  it('a claim that was withdrawn or joined to another gives nothing up; a held cheque is asked about', () => {
    for (const how of ['withdrawn', 'joined'] as const)
      expect(codes(folded(event('claim-closed', 30, { closedOn: '2026-08-02', how })))).toEqual([]);
    const held = pay(20, 1000_00, { deposited: 'held' });
    expect(codes(folded(held, event('claim-closed', 30, { closedOn: '2026-08-02', how: 'joined' })))).toEqual(
      ['closed-with-held-payment', 'payment-held'],
    );
  });

  it('days before the strike, and a court’s sum above the statement, where those are known', () => {
    const order = event('restitution-ordered', 30, { orderedOn: '2026-07-01', amountCents: 1500_00 });
    const state = (context: LifeContext) => codes(fold([opened, packet, demand, order], context));
    expect(state({})).toEqual([]);
    expect(state({ statementCents: 1500_00, struckOn: '2026-03-03' })).toEqual([]);
    expect(state({ statementCents: 1499_99 })).toEqual(['restitution-above-statement']);
    expect(state({ struckOn: '2026-03-12' })).toContain('event-before-strike');
  });

  it('giving a cheque back that was marked as full is no refund of too much', () => {
    const full = pay(20, 900_00, { marked: 'full' });
    const back = event('refund-paid', 30, { payment: uuid(20), paidOn: '2026-05-01', amountCents: 900_00 });
    expect(codes(folded(full, back))).toEqual([]);
    expect(folded(full, back).money).toMatchObject({ paidCents: 0, balanceCents: 1000_00 });
  });
});

it('the day on which a claim was paid is that of the cent that paid it', () => {
  const later = (number: number, cents: number) => pay(number, cents, { receivedOn: '2026-06-01' });
  expect(folded(pay(20, 1000_00), later(21, 5_00)).money.paidOn).toBe('2026-04-20');
  const back = event('payment-reversed', 22, {
    payment: uuid(20),
    amountCents: 1000_00,
    reversedOn: '2026-04-25',
  });
  expect(folded(pay(20, 1000_00), back, later(21, 1000_00)).money.paidOn).toBe('2026-06-01');
  expect(folded(pay(20, 1000_00), back).money.paidOn).toBeNull();
});

it('has words for every standing and flag', () => {
  for (const code of standings) expect(hasWords(`standing.${code}`), code).toBe(true);
  for (const code of claimFlags) expect(hasWords(`claim-flag.${code}`), code).toBe(true);
});
