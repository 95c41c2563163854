import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { clocksNotSet, clocksOf, todayIn } from '../../../shared/clocks/clocks.ts';
import { deadlineWords } from '../../../shared/clocks/words.ts';
import { clockSettings } from '../../../shared/clocks/settings.ts';
import { effectiveFacts } from '../../../shared/submissions/effective.ts';
import type { Submission } from '../../../shared/submissions/submission.ts';
import { correction, recorded } from '../../support/submissions.ts';
import { dates, opened, rule, settingsWith, told, uuid } from './support.ts';

/** Rules and days here are invented; the counting itself is held against outside sources in tests/reference. */
const demand = (number: number, sentOn: string, over: object = {}) =>
  told('demand-sent', number, { sentOn, amountCents: 500_000, ...over });
const answered = (number: number, body: object) =>
  told('deadline-answered', number, { until: null, ...body });

const payer = settingsWith([
  rule({
    clock: 'acknowledge-by',
    from: 'demand-sent',
    count: 10,
    unit: 'working-days',
    whose: 'payer-target',
  }),
  rule({ clock: 'answer-by', from: 'demand-sent', count: 15, whose: 'payer-target' }),
  rule({ clock: 'pay-by', from: 'demand-sent', count: 60 }),
  rule({ clock: 'pay-by', from: 'offer-answered', count: 30, whose: 'payer-target' }),
  rule({ clock: 'follow-up-by', from: 'demand-sent', count: 30 }),
  rule({ clock: 'follow-up-by', from: 'letter-sent', count: 14 }),
]);

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

describe('the date to sue', () => {
  const sue = settingsWith([rule({ clock: 'limitation', from: 'strike', count: 2, unit: 'years' })]);
  const limitation = (submissions: readonly Submission[], today: string, settings = sue) =>
    dates([opened(), ...submissions], settings, today)['limitation'];

  it('warns from far off and stays red', () => {
    const found = limitation([], '2026-04-01');
    expect(found).toMatchObject({ dueOn: '2028-03-03', state: 'running', warnFrom: '2027-03-04' });
    // 365, 180, 90 and 30 days before 3 March 2028, by Python's datetime.
    expect(found?.warnOn).toEqual(['2027-03-04', '2027-09-05', '2027-12-04', '2028-02-02']);
    expect(limitation([], '2028-03-03')?.state).toBe('due-today');
    expect(limitation([], '2031-01-01')?.state).toBe('overdue');
  });

  it.each([
    ['put-off', 'overdue'],
    ['done', 'overdue'],
    ['suit-brought', 'answered'],
    ['let-go', 'answered'],
    ['not-ours', 'answered'],
  ])('an answer “%s” leaves it %s', (answer, state) => {
    const given = answered(11, { deadline: 'limitation', dueOn: '2028-03-03', answer, until: '2029-01-01' });
    const found = limitation([given], '2028-05-01');
    expect(found?.state).toBe(state);
    expect(found?.problems.map(({ code }) => code)).toEqual(
      state === 'overdue' ? ['deadline-not-answered-so'] : [],
    );
  });

  it('tolled, it runs to the new day and asks again', () => {
    const tolled = answered(11, {
      deadline: 'limitation',
      dueOn: '2028-03-03',
      answer: 'tolled',
      until: '2028-09-03',
    });
    expect(limitation([tolled], '2028-05-01')).toMatchObject({
      dueOn: '2028-09-03',
      countedOn: '2028-03-03',
      state: 'running',
      warnFrom: '2027-09-04',
    });
    expect(limitation([tolled], '2028-09-04')?.state).toBe('overdue');
    const sued = answered(12, { deadline: 'limitation', dueOn: '2028-09-03', answer: 'suit-brought' });
    expect(limitation([tolled, sued], '2028-09-04')?.state).toBe('answered');
  });

  it('tolling one rule hides no other that ends before the new day', () => {
    // Two years from 3 March 2026; thirty months from 1 April 2026 are 1 October 2028, by dateutil.
    const both = settingsWith([
      rule({ clock: 'limitation', from: 'strike', count: 2, unit: 'years' }),
      rule({ clock: 'limitation', from: 'claim-denied', count: 30, unit: 'months' }),
    ]);
    const denied = told('claim-denied', 10, { deniedOn: '2026-04-01' });
    const until = (number: number, dueOn: string, answer: string) =>
      answered(number, { deadline: 'limitation', dueOn, answer, until: '2030-01-01' });
    const tolled = until(11, '2028-03-03', 'tolled');
    expect(limitation([denied], '2026-05-01', both)?.dueOn).toBe('2028-03-03');
    expect(limitation([denied, tolled], '2028-05-01', both)?.dueOn).toBe('2028-10-01');
    expect(limitation([denied, tolled, until(12, '2028-10-01', 'tolled')], '2028-11-01', both)?.dueOn).toBe(
      '2030-01-01',
    );
    expect(
      limitation([denied, tolled, until(12, '2028-10-01', 'suit-brought')], '2031-01-01', both)?.state,
    ).toBe('answered');
  });

  it('an answer for another date is none', () => {
    const other = answered(11, { deadline: 'limitation', dueOn: '2028-03-04', answer: 'let-go' });
    expect(limitation([other], '2028-05-01')?.state).toBe('overdue');
  });

  it.each([
    ['paid', 'met'],
    ['settled', 'met'],
    ['joined', 'met'],
    ['written-off', 'running'],
    ['withdrawn', 'running'],
  ] as const)('a claim closed as %s leaves it %s', (how, state) =>
    expect(limitation([told('claim-closed', 11, { closedOn: '2026-06-01', how })], '2026-07-01')?.state).toBe(
      state,
    ),
  );

  it.each([
    ['paid', 1000_00, null, 'met'],
    ['paid', 400_00, null, 'running'],
    // The bank sends the check back after the claim was closed: nothing is paid, and the right to sue still runs out.
    ['paid', 1000_00, '2026-06-20', 'running'],
    ['settled', 400_00, null, 'met'],
    ['settled', 400_00, '2026-06-20', 'running'],
  ] as const)('closed as %s with %i cents paid, back on %s: %s', (how, amountCents, reversedOn, state) =>
    expect(
      limitation(
        [
          told('packet-frozen', 10, { revision: 1, demandCents: 1000_00 }),
          demand(11, '2026-03-04', { amountCents: 1000_00 }),
          told('payment-received', 12, { receivedOn: '2026-05-01', amountCents, lines: [] }),
          told('claim-closed', 13, { closedOn: '2026-06-01', how }),
          ...(reversedOn === null
            ? []
            : [told('payment-reversed', 14, { payment: uuid(12), amountCents, reversedOn })]),
        ],
        '2026-07-01',
      )?.state,
    ).toBe(state),
  );

  it('of two rules the earlier stands, also beside the older setting', () => {
    const both = settingsWith([
      rule({ clock: 'limitation', from: 'strike', count: 3, unit: 'years' }),
      rule({ clock: 'limitation', from: 'claim-denied', count: 6, unit: 'months' }),
    ]);
    const denied = told('claim-denied', 11, { deniedOn: '2026-04-01' });
    expect(limitation([], '2026-04-01', both)?.dueOn).toBe('2029-03-03');
    expect(limitation([denied], '2026-04-01', both)?.dueOn).toBe('2026-10-01');
    const older = { ...both, limitation: { years: 2, citation: 'Invented Code 9' } };
    expect(limitation([], '2026-04-01', older)).toMatchObject({
      dueOn: '2028-03-03',
      rule: { citation: 'Invented Code 9', confirmedBy: null },
    });
  });

  it('a strike on a leap day ends with February', () => {
    expect(dates([opened()], sue, '2028-03-01', '2028-02-29')['limitation']?.dueOn).toBe('2030-02-28');
  });

  it('where there is no rule, that is said', () => {
    expect(clocksNotSet(sue)).not.toContain('limitation');
    expect(clocksNotSet(settingsWith([]))).toContain('limitation');
    expect(clocksNotSet({ timeZone: 'UTC', limitation: { years: 2, citation: 'x' } })).not.toContain(
      'limitation',
    );
  });

  it('never disappears while nobody has answered, whatever else is recorded and in whatever order', () => {
    const others: Submission[] = [
      demand(11, '2026-04-01'),
      told('payment-received', 12, { receivedOn: '2026-05-01', amountCents: 500_000, lines: [] }),
      told('claim-denied', 13, { deniedOn: '2026-05-02' }),
      told('claim-closed', 14, { closedOn: '2026-06-01', how: 'written-off' }),
      told('claim-reopened', 15, { reopenedOn: '2026-07-01' }),
      told('legal-hold', 16, { from: '2026-06-01', hold: 'set' }),
      answered(17, { deadline: 'limitation', dueOn: '2028-03-03', answer: 'put-off', until: '2030-01-01' }),
      answered(18, { deadline: `answer-by:${uuid(11)}`, dueOn: '2026-04-16', answer: 'let-go' }),
      told('claim-referred', 19, { referredOn: '2026-06-05' }),
    ];
    fc.assert(
      fc.property(fc.shuffledSubarray(others), (some) => {
        expect(limitation(some, '2030-06-01')?.state).toBe('overdue');
      }),
    );
  });
});

describe('put off by name', () => {
  const until = (number: number, dueOn: string, day: string | null) =>
    answered(number, { deadline: `answer-by:${uuid(10)}`, dueOn, answer: 'put-off', until: day });
  const answerBy = (submissions: readonly Submission[], today: string) =>
    dates([opened(), demand(10, '2026-04-01'), ...submissions], payer, today)[`answer-by:${uuid(10)}`];

  it('the new day counts, and may be put off again', () => {
    expect(answerBy([until(11, '2026-04-16', '2026-04-30')], '2026-04-20')).toMatchObject({
      dueOn: '2026-04-30',
      countedOn: '2026-04-16',
      state: 'running',
      answer: { answer: 'put-off', decidedByWorkerId: 'w-9' },
    });
    const twice = [until(11, '2026-04-16', '2026-04-30'), until(12, '2026-04-30', '2026-05-15')];
    expect(answerBy(twice, '2026-05-10')).toMatchObject({ dueOn: '2026-05-15', state: 'running' });
  });

  it.each([
    ['no new day', null],
    ['an earlier one', '2026-04-10'],
    ['the same one', '2026-04-16'],
  ])('with %s it is not', (_, day) => {
    expect(answerBy([until(11, '2026-04-16', day)], '2026-04-20')).toMatchObject({
      dueOn: '2026-04-16',
      state: 'overdue',
      problems: [{ code: 'deadline-not-answered-so' }],
    });
  });
});

describe('retention', () => {
  const keep = settingsWith([
    rule({ clock: 'limitation', from: 'strike', count: 2, unit: 'years' }),
    rule({
      clock: 'retention-end',
      from: 'claim-closed',
      count: 3,
      unit: 'years',
      citation: 'Town schedule 7',
    }),
    rule({
      clock: 'retention-end',
      from: 'restitution-ordered',
      count: 10,
      unit: 'years',
      citation: 'Judgments',
    }),
  ]);
  const end = (submissions: readonly Submission[], today = '2026-12-01', settings = keep) =>
    dates([opened(), ...submissions], settings, today)['retention-end'];
  const closed = told('claim-closed', 11, { closedOn: '2026-06-01', how: 'paid' });
  const order = told('restitution-ordered', 12, { orderedOn: '2026-05-01', payBy: null });

  it('is the longest of the schedule, a year beyond the date to sue, and a judgment’s life', () => {
    expect(end([])).toBeUndefined();
    expect(end([closed])).toMatchObject({ dueOn: '2029-06-01', rule: { citation: 'Town schedule 7' } });
    expect(end([closed, order])).toMatchObject({ dueOn: '2036-05-01', rule: { citation: 'Judgments' } });
    const bare = settingsWith([rule({ clock: 'limitation', from: 'strike', count: 2, unit: 'years' })]);
    expect(end([closed], '2026-12-01', bare)).toMatchObject({
      dueOn: '2029-03-03',
      rule: { yearAfterLimitation: true, citation: 'Invented Code 1-2' },
    });
  });

  it('when it is over nothing is late', () => {
    expect(end([closed], '2029-05-31')?.state).toBe('running');
    expect(end([closed], '2029-06-01')?.state).toBe('reached');
    expect(end([closed], '2035-01-01')?.state).toBe('reached');
  });

  it('a legal hold suspends it until it is lifted', () => {
    const hold = (number: number, from: string, what: 'set' | 'lifted') =>
      told('legal-hold', number, { from, hold: what });
    expect(end([closed, hold(13, '2026-07-01', 'set')], '2035-01-01')?.state).toBe('held');
    const lifted = [closed, hold(13, '2026-07-01', 'set'), hold(14, '2027-07-01', 'lifted')];
    expect(end(lifted, '2035-01-01')?.state).toBe('reached');
  });
});

describe('how it is said', () => {
  const found = dates([opened(), demand(10, '2026-04-01')], payer, '2026-04-02');

  it.each(['en', 'es'] as const)('what is asked of insurers is never the utility’s right (%s)', (locale) => {
    for (const one of Object.values(found).filter(({ whose }) => whose === 'payer-target')) {
      const { source } = deadlineWords(locale, one);
      expect(source).toContain('Invented Code 1-2');
      expect(source).toMatch(
        locale === 'en'
          ? /^Target set for insurers by .*; not the utility’s right/
          : /^Meta fijada a las aseguradoras por .*; no es un derecho/,
      );
      expect(source).not.toMatch(/own date|entitled|must|fecha propia/i);
    }
  });

  it('every date shows its rule, its source, and who has confirmed it', () => {
    expect(deadlineWords('en', found[`pay-by:${uuid(10)}`]!)).toEqual({
      clock: 'Payment',
      state: 'open',
      of: 'after the demand of Apr 1, 2026',
      ended: null,
      rule: '60 days after the demand of Apr 1, 2026',
      source: 'The utility’s own date. By Invented Code 1-2 (Nowhere). Not confirmed: have counsel confirm.',
    });
    const confirmed = settingsWith([
      rule({
        clock: 'limitation',
        from: 'strike',
        count: 1,
        unit: 'years',
        ifNotWorking: 'day-before',
        confirmedBy: { name: 'A. Counsel', on: '2026-01-05' },
      }),
    ]);
    expect(deadlineWords('en', dates([opened()], confirmed, '2026-04-02')['limitation']!)).toMatchObject({
      rule: '1 year after the strike of Mar 3, 2026; a day that is not worked moves to the one before that is',
      source:
        'The utility’s own date. By Invented Code 1-2 (Nowhere). Confirmed by A. Counsel on Jan 5, 2026.',
    });
  });
});

describe('the settings', () => {
  const codes = (rules: readonly object[]) =>
    clockSettings
      .safeParse({ rules })
      .error?.issues.map((issue) => [
        'params' in issue ? issue.params?.['problem'] : issue.code,
        issue.path.join('.'),
      ]);

  it.each([
    [
      'a clock that starts from what it cannot',
      [rule({ clock: 'limitation', from: 'demand-sent' })],
      [['clock-starts-elsewhere', 'rules.0.from']],
    ],
    [
      'years where days were meant',
      [rule({ clock: 'limitation', from: 'strike', count: 730, unit: 'years' })],
      [['clock-too-long', 'rules.0.count']],
    ],
    [
      'a target where there can be none',
      [rule({ clock: 'limitation', from: 'strike', whose: 'payer-target' })],
      [['clock-is-the-utilitys', 'rules.0.whose']],
    ],
    [
      'the same clock twice',
      [
        rule({ clock: 'answer-by', from: 'demand-sent' }),
        rule({ clock: 'answer-by', from: 'demand-sent', payerKinds: ['driver'] }),
      ],
      [['clock-rule-twice', 'rules.1']],
    ],
    [
      'apart by payer',
      [
        rule({ clock: 'answer-by', from: 'demand-sent', payerKinds: ['government'] }),
        rule({ clock: 'answer-by', from: 'demand-sent', payerKinds: ['driver'] }),
      ],
      undefined,
    ],
  ])('%s', (_, rules, expected) => expect(codes(rules)).toEqual(expected));

  it('hold no legal default', () => {
    expect(clockSettings.parse({ rules: [] }).rules).toEqual([]);
    expect(
      clocksOf({
        facts: effectiveFacts([recorded(opened())]).facts,
        struckOn: '2026-03-03',
        settings: { timeZone: 'UTC' },
        today: '2026-04-01',
      }),
    ).toEqual([]);
  });
});

describe('the utility’s day', () => {
  // 8 March 2026, 2:00 → 3:00 in New York (IANA); 03:30 UTC is still the evening before.
  it.each([
    ['2026-03-08T03:30:00Z', 'America/New_York', '2026-03-07'],
    ['2026-11-01T05:30:00Z', 'America/New_York', '2026-11-01'],
    ['2027-01-01T06:59:00Z', 'America/Los_Angeles', '2026-12-31'],
  ])('%s in %s is %s', (instant, zone, day) => expect(todayIn(new Date(instant), zone)).toBe(day));
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
