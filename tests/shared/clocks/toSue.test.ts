import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { clocksNotSet } from '../../../shared/clocks/clocks.ts';
import type { Submission } from '../../../shared/submissions/submission.ts';
import { answered, dates, demand, opened, payer, rule, settingsWith, told, uuid } from './support.ts';

/** Rules and days here are invented; the counting itself is held against outside sources in tests/reference. */
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
