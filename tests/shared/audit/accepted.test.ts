import { describe, expect, it } from 'vitest';
import { acceptedStillBilled } from '../../../shared/audit/accepted.ts';
import type { AnsweredObjection } from '../../../shared/audit/objections.ts';
import { effectiveFacts } from '../../../shared/submissions/effective.ts';
import { fact, onStrike, recorded } from '../../support/submissions.ts';

// To accept an objection takes nothing off by itself (common practice, no source); amounts by hand.
const objection = (
  key: string,
  atStakeCents: number,
  answer: 'accepted' | 'answered' | 'overruled' | null,
): AnsweredObjection => ({
  key,
  rule: key.split(':')[0] ?? key,
  atStakeCents,
  params: {},
  lineId: null,
  add: null,
  corrects: [],
  answered: answer && {
    answer,
    reason: 'They are right',
    personId: 'w-7',
    at: '2026-03-04T00:00:00Z',
    submissionId: 's',
  },
});
const credits = (...amounts: readonly (readonly [string | undefined, number])[]) =>
  effectiveFacts(
    amounts.map(([key, amountCents], index) =>
      recorded(
        fact('credit', 50 + index, onStrike(1), {
          credit: 'other',
          title: 'Standby',
          amountCents,
          basis: 'as claimed',
          ...(key === undefined ? {} : { objection: key }),
        }),
      ),
    ),
  ).facts;

describe('accepted objections that are still billed', () => {
  const accepted = objection('machine-standby:L-2', 120_00, 'accepted');

  it('are those with money and no credit that names them', () => {
    const all = [
      accepted,
      objection('no-scale', 0, 'accepted'),
      objection('overtime:L-3', 80_00, 'overruled'),
      objection('overtime:L-4', 80_00, null),
    ];
    expect(acceptedStillBilled(all, credits([undefined, 120_00], ['overtime:L-4', 80_00]))).toEqual([
      { objection: accepted, creditedCents: 0, leftCents: 120_00 },
    ]);
  });
  it('go with credits of as much, and show what a smaller one left', () => {
    expect(acceptedStillBilled([accepted], credits(['machine-standby:L-2', 120_00]))).toEqual([]);
    expect(acceptedStillBilled([accepted], credits(['machine-standby:L-2', 100_00]))).toMatchObject([
      { creditedCents: 100_00, leftCents: 20_00 },
    ]);
  });
});
