import { describe, expect, it } from 'vitest';
import { futureProblems } from '../../../shared/submissions/futures.ts';
import type { FactKind } from '../../../shared/submissions/kinds.ts';
import { sampleBodies } from '../../support/sampleBodies.ts';
import { correction, fact, onClaim, onStrike } from '../../support/submissions.ts';

/** Sent at 9 in the evening of 1 April 2026 in New York, when UTC already has 2 April. */
const sentAt = '2026-04-02T01:00:00Z';
const zone = 'America/New_York';
const told = (kind: FactKind, body: object, more: object = { sentAt }) =>
  futureProblems(fact(kind, 10, onClaim(1), body, more), zone).map(({ code, path }) => `${code} ${path}`);

describe('a day of what happened that has not come yet', () => {
  it.each([
    ['demand-sent', 'sentOn'],
    ['claim-acknowledged', 'receivedOn'],
    ['line-disputed', 'saidOn'],
    ['payment-received', 'receivedOn'],
    ['claim-denied', 'deniedOn'],
    ['claim-closed', 'closedOn'],
    ['payment-plan', 'agreedOn'],
  ] as const)('is said of %s', (kind, name) => {
    expect(told(kind, { [name]: '2026-04-02' })).toEqual([`still-to-come body.${name}`]);
    expect(told(kind, { [name]: '2026-04-01' })).toEqual([]);
  });

  it('is said of a contractor’s invoice, and of a correction', () => {
    const { contractors } = sampleBodies.repair;
    const repair = fact('repair', 10, onStrike(9), {
      contractors: [{ ...contractors[0]!, invoicedOn: '2099-01-01' }],
    });
    const found = (submission: Parameters<typeof futureProblems>[0]) =>
      futureProblems({ ...submission, sentAt: '2026-05-01T00:00:00Z' }, zone).map(({ path }) => path);
    expect(found(repair)).toEqual(['body.contractors.0.invoicedOn']);
    expect(found(correction(11, repair, repair.body))).toEqual(['body.replacement.contractors.0.invoicedOn']);
  });

  it('is the utility’s day: where it is further ahead the same day has come', () => {
    const sent = fact('demand-sent', 10, onClaim(1), { sentOn: '2026-04-02' }, { sentAt });
    expect(futureProblems(sent, 'America/New_York')).toHaveLength(1);
    expect(futureProblems(sent, 'UTC')).toEqual([]);
  });

  it('but not of what is due, offered until, agreed or put off', () => {
    expect(told('offer-made', { offeredOn: '2026-04-01', expiresOn: '2027-01-01' })).toEqual([]);
    expect(told('information-asked', { askedOn: '2026-04-01', answerBy: '2027-01-01' })).toEqual([]);
    expect(told('restitution-ordered', { orderedOn: '2026-04-01', payBy: '2027-01-01' })).toEqual([]);
    expect(
      told('payment-plan', {
        agreedOn: '2026-04-01',
        instalments: [{ dueOn: '2027-01-01', amountCents: 1 }],
      }),
    ).toEqual([]);
    expect(told('deadline-answered', { dueOn: '2027-01-01', until: '2028-01-01' })).toEqual([]);
    expect(told('legal-hold', { from: '2027-01-01' })).toEqual([]);
    // Words that look like a day are words.
    expect(told('claim-acknowledged', { receivedOn: '2026-04-01', reference: '2027-01-01' })).toEqual([]);
  });
});
