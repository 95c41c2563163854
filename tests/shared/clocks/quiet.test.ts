import { describe, expect, it } from 'vitest';
import { demoClocks } from '../../../infra/local/demo/clocks.ts';
import { foldClaim } from '../../../shared/claims/state.ts';
import { clocksOf } from '../../../shared/clocks/clocks.ts';
import { quietClaim } from '../../../shared/clocks/quiet.ts';
import { deadlineWords } from '../../../shared/clocks/words.ts';
import { clockSettings } from '../../../shared/clocks/settings.ts';
import { digestOf } from '../../../shared/digest/digest.ts';
import { effectiveFacts } from '../../../shared/submissions/effective.ts';
import type { Submission } from '../../../shared/submissions/submission.ts';
import { borneOut, dates, opened, rule, settingsWith, told, uuid } from './support.ts';

/** Rules and days are invented. */
const onlyToSue = settingsWith([
  rule({ clock: 'limitation', from: 'strike', count: 3, unit: 'years' }),
  rule({ clock: 'answer-by', from: 'demand-sent', count: 15, whose: 'payer-target' }),
]);
const demand = told('demand-sent', 10, { sentOn: '2026-04-01', amountCents: 500_000 });
const quietOf = (submissions: readonly Submission[], today = '2026-06-01', settings = onlyToSue) => {
  const { facts } = effectiveFacts(borneOut(submissions));
  const claim = foldClaim(uuid(1), facts);
  return claim && quietClaim(claim, clocksOf({ facts, struckOn: '2026-03-03', settings, today }))?.standing;
};
const cut = told('payment-received', 11, {
  receivedOn: '2026-04-10',
  amountCents: 300_000,
  deposited: 'deposited',
  lines: [],
});

describe('an open claim of which nothing but the last day to sue runs', () => {
  it.each([
    ['disputed', [told('line-disputed', 11, { saidOn: '2026-04-10' })]],
    ['denied', [told('claim-denied', 11, { deniedOn: '2026-04-10' })]],
    ['part-paid', [cut]],
  ] as const)('is named while it is %s', (standing, events) =>
    expect(quietOf([opened(), demand, ...events])).toBe(standing),
  );

  it('and before anything was demanded', () => expect(quietOf([opened()])).toBe('open'));

  it('but not while a date runs, however late, nor once it is paid or closed', () => {
    expect(quietOf([opened(), demand])).toBeUndefined();
    const paid = { ...cut, body: { ...cut.body, amountCents: 500_000 } };
    expect(quietOf([opened(), demand, paid])).toBeUndefined();
    const closed = told('claim-closed', 12, { closedOn: '2026-05-01', how: 'withdrawn' });
    expect(quietOf([opened(), demand, cut, closed])).toBeUndefined();
    const reopened = told('claim-reopened', 13, { reopenedOn: '2026-05-02' });
    expect(quietOf([opened(), demand, cut, closed, reopened])).toBe('part-paid');
  });

  it('stands in the daily letter, which is then sent', () => {
    const { text, something } = digestOf({
      deadlines: [],
      quiet: [
        {
          claimId: uuid(1),
          claimNumber: '2026-0007',
          strikeId: uuid(9),
          payerKind: 'drivers-insurer',
          payerName: 'Ann Example',
          standing: 'denied',
          flags: ['overpaid'],
          balanceCents: 1,
        },
      ],
      today: '2026-06-01',
      locale: 'en',
      utilityName: 'Water',
      publicUrl: null,
      notSet: [],
      undelivered: 0,
    });
    expect(something).toBe(true);
    expect(text).toContain('Open, and no date is running\n  2026-0007  Denied, Overpaid');
    expect(text).not.toContain('Nothing is overdue');
    expect(text).not.toContain('Ann Example');
  });
});

describe('by the demo’s rules none of these falls silent', () => {
  const settings = {
    timeZone: 'America/New_York',
    clocks: clockSettings.parse(demoClocks),
  };
  it.each([
    ['a cut', cut],
    ['a denial', told('claim-denied', 11, { deniedOn: '2026-04-10' })],
    ['a dispute', told('line-disputed', 11, { saidOn: '2026-04-10' })],
    ['information given', told('information-given', 11, { givenOn: '2026-04-10', answers: null })],
    ['a referral', told('claim-referred', 11, { referredOn: '2026-04-10' })],
  ] as const)('after %s the next look at it has a day', (_what, event) => {
    const { facts } = effectiveFacts(borneOut([opened(), demand, event]));
    const running = clocksOf({ facts, struckOn: '2026-03-03', settings, today: '2026-04-11' }).filter(
      ({ clock, state }) => clock === 'follow-up-by' && state === 'running',
    );
    expect(running.map(({ startedBy }) => startedBy.submissionId)).toEqual([uuid(11)]);
  });

  it('nor after a reopening', () => {
    const closed = told('claim-closed', 12, { closedOn: '2026-05-01', how: 'withdrawn' });
    const reopened = told('claim-reopened', 13, { reopenedOn: '2026-05-04' });
    const found = dates([opened(), demand, closed, reopened], settings, '2026-05-05');
    // The tenth day after 4 May 2026, a Monday, is Thursday the 14th.
    expect(found[`follow-up-by:${uuid(13)}`]).toMatchObject({ dueOn: '2026-05-14', state: 'running' });
  });

  it('and a payment that leaves nothing to ask is followed up by nothing', () => {
    const paid = { ...cut, body: { ...cut.body, amountCents: 500_000 } };
    expect(dates([opened(), demand, paid], settings, '2026-04-11')[`follow-up-by:${uuid(11)}`]?.state).toBe(
      'met',
    );
  });
});

describe('a demand that does not count', () => {
  const { facts } = effectiveFacts(borneOut([opened()]));
  const clocksOfDemand = (submissions: readonly Submission[], recordedAt: string) => {
    const all = submissions.map((submission) => ({
      submission,
      recordedAt,
      deliveredBy: null,
      erased: false,
    }));
    const own = effectiveFacts(all).facts;
    return clocksOf({
      facts: [...facts, ...own],
      struckOn: '2026-03-03',
      settings: onlyToSue,
      today: '2026-04-02',
    }).map(({ clock }) => clock);
  };
  const packet = told('packet-frozen', 9, { revision: 1, demandCents: 500_000 });

  it('starts nothing: of a revision that was never issued, of another sum, of a day to come', () => {
    const late = '2026-04-01T15:00:00Z';
    const other = { ...demand, body: { ...demand.body, revision: 7 } };
    const sum = { ...demand, body: { ...demand.body, amountCents: 499_999 } };
    const ahead = { ...demand, body: { ...demand.body, sentOn: '2026-06-01' } };
    for (const wrong of [other, sum, ahead])
      expect(clocksOfDemand([packet, wrong], late)).toEqual(['limitation']);
    expect(clocksOfDemand([packet, demand], late)).toEqual(['answer-by', 'limitation']);
  });
});

describe('what the payer no longer has to answer', () => {
  it.each([
    ['a referral', told('claim-referred', 11, { referredOn: '2026-04-10' }), 'claim-referred'],
    [
      'a suit',
      told('deadline-answered', 11, {
        deadline: 'limitation',
        dueOn: '2029-03-03',
        answer: 'suit-brought',
        until: null,
      }),
      'deadline-answered',
    ],
  ] as const)('ends with %s', (_what, event, kind) => {
    const settings = settingsWith([
      rule({ clock: 'answer-by', from: 'demand-sent', count: 365, whose: 'payer-target' }),
      rule({ clock: 'acknowledge-by', from: 'demand-sent', count: 365, whose: 'payer-target' }),
    ]);
    const early = { ...demand, body: { ...demand.body, sentOn: '2026-01-01' } };
    const found = dates([opened(), early, event], settings, '2027-06-01');
    for (const clock of ['answer-by', 'acknowledge-by'])
      expect(found[`${clock}:${uuid(10)}`]).toMatchObject({ state: 'met', metBy: { kind } });
    const answer = found[`answer-by:${uuid(10)}`];
    expect(answer && deadlineWords('en', answer).ended).toMatch(/^Not awaited any more: /);
    expect(answer && deadlineWords('en', answer).of).toBe('after the demand of Jan 1, 2026');
  });
});
