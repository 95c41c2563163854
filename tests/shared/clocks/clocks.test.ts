import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Submission } from '../../../shared/submissions/submission.ts';
import { correction } from '../../support/submissions.ts';
import { answered, dates, demand, opened, payer, rule, settingsWith, told, uuid } from './support.ts';

/** Rules and days here are invented; the counting itself is held against outside sources in tests/reference. */
describe('a date starts with its event', () => {
  it('the day of the event is not counted, the last day is', () => {
    const found = dates([opened(), demand(10, '2026-04-01')], payer, '2026-04-01');
    expect(Object.fromEntries(Object.entries(found).map(([id, { dueOn }]) => [id, dueOn]))).toEqual({
      // 1 April 2026 is a Wednesday: ten working days on is Wednesday the 15th.
      [`acknowledge-by:${uuid(10)}`]: '2026-04-15',
      [`answer-by:${uuid(10)}`]: '2026-04-16',
      [`follow-up-by:${uuid(10)}`]: '2026-05-01',
      [`pay-by:${uuid(10)}`]: '2026-05-31',
    });
  });

  it.each([
    ['2026-04-15', 'running'],
    ['2026-04-16', 'due-today'],
    ['2026-04-17', 'overdue'],
  ])('on %s it is %s', (today, state) => {
    const found = dates([opened(), demand(10, '2026-04-01')], payer, today);
    expect(found[`answer-by:${uuid(10)}`]?.state).toBe(state);
  });

  it('and with nothing before the claim is opened', () => {
    expect(dates([demand(10, '2026-04-01')], payer, '2026-04-01')).toEqual({});
  });

  it('which a correction may move, and a withdrawal take away', () => {
    const sent = demand(10, '2026-04-01');
    const moved = correction(20, sent, { ...sent.body, sentOn: '2026-04-03' });
    expect(dates([opened(), sent, moved], payer, '2026-04-03')[`answer-by:${uuid(10)}`]?.dueOn).toBe(
      '2026-04-18',
    );
    expect(dates([opened(), sent, correction(20, sent, null)], payer, '2026-04-03')).toEqual({});
  });

  it('for the payers that the rule names', () => {
    const only = settingsWith([
      rule({ clock: 'answer-by', from: 'demand-sent', payerKinds: ['drivers-insurer'] }),
      rule({ clock: 'government-notice', from: 'strike', count: 6, unit: 'months' }),
      rule({ clock: 'own-policy-notice', from: 'strike', count: 20 }),
    ]);
    const ids = (payerKind: never) =>
      Object.keys(dates([opened({ payerKind }), demand(10, '2026-04-01')], only, '2026-03-10'));
    expect(ids('drivers-insurer' as never)).toEqual([`answer-by:${uuid(10)}`]);
    expect(ids('government' as never)).toEqual(['government-notice']);
    expect(ids('own-policy' as never)).toEqual(['own-policy-notice']);
    expect(ids('driver' as never)).toEqual([]);
  });
});

describe('what meets it', () => {
  const state = (id: string, submissions: readonly Submission[], settings = payer) => {
    const one = dates([opened(), ...submissions], settings, '2026-12-01')[id];
    return one && [one.state, one.metBy?.submissionId ?? null, one.late];
  };
  const sent = demand(10, '2026-04-01');

  it.each([
    ['an acknowledgment', told('claim-acknowledged', 11, { receivedOn: '2026-04-10' }), false],
    ['one that came late', told('claim-acknowledged', 11, { receivedOn: '2026-04-20' }), true],
    ['an adjuster', told('adjuster-assigned', 11, { assignedOn: '2026-04-10' }), false],
    ['a denial', told('claim-denied', 11, { deniedOn: '2026-04-10' }), false],
  ])('acknowledging: %s', (_, event, late) =>
    expect(state(`acknowledge-by:${uuid(10)}`, [sent, event])).toEqual(['met', uuid(11), late]),
  );

  it('answering is more than acknowledging', () => {
    const receipt = told('claim-acknowledged', 11, { receivedOn: '2026-04-10' });
    const offer = told('offer-made', 12, { offeredOn: '2026-04-12', expiresOn: null });
    expect(state(`answer-by:${uuid(10)}`, [sent, receipt])).toEqual(['overdue', null, false]);
    expect(state(`answer-by:${uuid(10)}`, [sent, receipt, offer])).toEqual(['met', uuid(12), false]);
  });

  it('what happened before does not count', () => {
    const early = told('claim-denied', 11, { deniedOn: '2026-03-20' });
    expect(state(`answer-by:${uuid(10)}`, [sent, early])?.[0]).toBe('overdue');
  });

  const pays = (number: number, receivedOn: string, amountCents: number, over: object = {}) =>
    told('payment-received', number, { receivedOn, amountCents, lines: [], ...over });
  it.each([
    ['a short payment does not', [pays(11, '2026-04-20', 400_000)], ['overdue', null, false]],
    [
      'the rest does',
      [pays(11, '2026-04-20', 400_000), pays(12, '2026-05-30', 100_000)],
      ['met', uuid(12), false],
    ],
    [
      'not when the bank sends one back',
      [
        pays(11, '2026-04-20', 400_000),
        pays(12, '2026-05-30', 100_000),
        told('payment-reversed', 13, { payment: uuid(12), amountCents: 100_000, reversedOn: '2026-06-04' }),
      ],
      ['overdue', null, false],
    ],
    [
      'a cheque that was returned does not',
      [pays(11, '2026-04-20', 500_000, { deposited: 'returned' })],
      ['overdue', null, false],
    ],
    [
      'a check in the drawer does not: it is no money yet',
      [pays(11, '2026-04-20', 500_000, { deposited: 'held' })],
      ['overdue', null, false],
    ],
    [
      'not when it was given back',
      [
        pays(11, '2026-04-20', 500_000),
        told('refund-paid', 13, { payment: uuid(11), amountCents: 500_000, paidOn: '2026-06-04' }),
      ],
      ['overdue', null, false],
    ],
    [
      'what was too much may go back',
      [
        pays(11, '2026-04-20', 600_000),
        told('refund-paid', 13, { payment: null, amountCents: 100_000, paidOn: '2026-06-04' }),
      ],
      ['met', uuid(11), false],
    ],
    [
      'nobody waits for what was written off',
      [
        pays(11, '2026-04-20', 400_000),
        told('written-off', 12, { writtenOffOn: '2026-05-20', amountCents: 100_000 }),
      ],
      ['met', uuid(12), false],
    ],
  ])('paying a demand: %s', (_, events, expected) =>
    expect(state(`pay-by:${uuid(10)}`, [sent, ...events])).toEqual(expected),
  );

  it('an accepted offer is to be paid as far as it goes, and one declined is not', () => {
    const offer = told('offer-made', 11, { offeredOn: '2026-04-10', amountCents: 300_000, expiresOn: null });
    const says = (answer: 'accepted' | 'declined') =>
      told('offer-answered', 12, { answers: uuid(11), answer, answeredOn: '2026-04-12' });
    expect(state(`pay-by:${uuid(12)}`, [sent, offer, says('declined')])).toBeUndefined();
    expect(state(`pay-by:${uuid(12)}`, [sent, offer, says('accepted')])?.[0]).toBe('overdue');
    expect(
      state(`pay-by:${uuid(12)}`, [sent, offer, says('accepted'), pays(13, '2026-05-12', 300_000)]),
    ).toEqual(['met', uuid(13), false]);
  });

  it('any word between the two sides is a follow-up, but not a letter to somebody else', () => {
    const letter = (kind: 'follow-up' | 'notice-own-insurer') =>
      told('letter-sent', 11, { letter: kind, sentOn: '2026-05-01' });
    expect(state(`follow-up-by:${uuid(10)}`, [sent, letter('follow-up')])).toEqual(['met', uuid(11), false]);
    expect(state(`follow-up-by:${uuid(11)}`, [sent, letter('follow-up')])?.[0]).toBe('overdue');
    expect(state(`follow-up-by:${uuid(10)}`, [sent, letter('notice-own-insurer')])?.[0]).toBe('overdue');
  });

  it('a revised demand takes over, a supplement stands beside', () => {
    const later = (what: 'revised' | 'supplement') => demand(11, '2026-04-05', { what, revision: 2 });
    expect(state(`answer-by:${uuid(10)}`, [sent, later('revised')])?.[0]).toBe('met');
    expect(state(`answer-by:${uuid(10)}`, [sent, later('supplement')])?.[0]).toBe('overdue');
  });

  it('a revised demand asks for the acknowledgment anew, unless it has come', () => {
    const revised = demand(12, '2026-04-05', { what: 'revised', revision: 2 });
    const receipt = told('claim-acknowledged', 11, { receivedOn: '2026-04-03' });
    expect(state(`acknowledge-by:${uuid(10)}`, [sent, revised])?.[0]).toBe('met');
    expect(state(`acknowledge-by:${uuid(12)}`, [sent, revised])?.[0]).toBe('overdue');
    expect(state(`acknowledge-by:${uuid(12)}`, [sent, revised, receipt])).toBeUndefined();
    const again = demand(13, '2026-04-08', { what: 'revised', revision: 3 });
    expect(state(`acknowledge-by:${uuid(12)}`, [sent, revised, again])?.[0]).toBe('met');
    expect(state(`acknowledge-by:${uuid(13)}`, [sent, revised, again])?.[0]).toBe('overdue');
  });

  it('a closed claim waits for nothing, and a reopened one again', () => {
    const closed = told('claim-closed', 11, { closedOn: '2026-06-01', how: 'written-off' });
    const again = told('claim-reopened', 12, { reopenedOn: '2026-07-01' });
    expect(state(`answer-by:${uuid(10)}`, [sent, closed])).toEqual(['met', uuid(11), true]);
    expect(state(`answer-by:${uuid(10)}`, [sent, closed, again])?.[0]).toBe('overdue');
  });
});

describe('dates that papers name', () => {
  const none = settingsWith([]);
  it('of a request, an offer and an order', () => {
    const found = dates(
      [
        opened(),
        told('information-asked', 11, { askedOn: '2026-04-01', answerBy: '2026-04-20' }),
        told('offer-made', 12, { offeredOn: '2026-04-10', expiresOn: '2026-05-10' }),
        told('restitution-ordered', 13, { orderedOn: '2026-07-01', payBy: '2026-12-31', amountCents: 100 }),
        told('information-given', 14, { givenOn: '2026-04-18', answers: uuid(11) }),
        told('offer-answered', 15, { answers: uuid(12), answer: 'declined', answeredOn: '2026-05-11' }),
      ],
      none,
      '2026-08-01',
    );
    expect(
      Object.values(found).map(({ id, dueOn, state, late, whose }) => [id, dueOn, state, late, whose]),
    ).toEqual([
      [`information-due:${uuid(11)}`, '2026-04-20', 'met', false, 'named'],
      [`offer-expires:${uuid(12)}`, '2026-05-10', 'met', true, 'named'],
      [`pay-by:${uuid(13)}:named`, '2026-12-31', 'running', false, 'named'],
    ]);
  });

  it('a rule counts only where the paper names none', () => {
    const own = settingsWith([rule({ clock: 'information-due', from: 'information-asked', count: 10 })]);
    const found = dates(
      [
        opened(),
        told('information-asked', 11, { askedOn: '2026-04-01', answerBy: '2026-04-20' }),
        told('information-asked', 12, { askedOn: '2026-04-01', answerBy: null }),
      ],
      own,
      '2026-04-01',
    );
    expect(Object.values(found).map(({ id, dueOn }) => [id, dueOn])).toEqual([
      [`information-due:${uuid(12)}`, '2026-04-11'],
      [`information-due:${uuid(11)}`, '2026-04-20'],
    ]);
  });

  it('the plan agreed last, each date met by what came in until then', () => {
    const plan = (number: number, first: string) =>
      told('payment-plan', number, {
        agreedOn: '2026-06-10',
        instalments: [
          { dueOn: '2026-08-10', amountCents: 50_000 },
          { dueOn: first, amountCents: 50_000 },
        ],
      });
    const paid = told('payment-received', 13, { receivedOn: '2026-07-09', amountCents: 70_000, lines: [] });
    const found = dates([opened(), plan(11, '2026-07-01'), plan(12, '2026-07-10'), paid], none, '2026-08-11');
    expect(Object.values(found).map(({ id, dueOn, state }) => [id, dueOn, state])).toEqual([
      [`instalment-due:${uuid(12)}:2`, '2026-07-10', 'met'],
      [`instalment-due:${uuid(12)}:1`, '2026-08-10', 'overdue'],
    ]);
  });
});

it('the order of arrival makes no difference', () => {
  const all: Submission[] = [
    opened(),
    demand(10, '2026-04-01'),
    told('claim-acknowledged', 11, { receivedOn: '2026-04-03' }),
    told('offer-made', 12, { offeredOn: '2026-04-10', expiresOn: '2026-05-01' }),
    told('offer-answered', 13, { answers: uuid(12), answer: 'accepted', answeredOn: '2026-04-20' }),
    told('payment-received', 14, { receivedOn: '2026-05-01', amountCents: 400_000, lines: [] }),
    answered(15, {
      deadline: `pay-by:${uuid(10)}`,
      dueOn: '2026-05-31',
      answer: 'put-off',
      until: '2026-07-01',
    }),
    answered(16, { deadline: `pay-by:${uuid(10)}`, dueOn: '2026-07-01', answer: 'let-go' }),
  ];
  const expected = dates(all, payer, '2026-06-15');
  expect(Object.keys(expected).length).toBeGreaterThan(5);
  fc.assert(
    fc.property(fc.shuffledSubarray(all, { minLength: all.length }), (shuffled) => {
      expect(dates(shuffled, payer, '2026-06-15')).toEqual(expected);
    }),
  );
});
