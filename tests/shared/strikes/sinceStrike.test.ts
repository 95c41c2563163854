import { describe, expect, it } from 'vitest';
import { sinceStrike } from '../../../shared/strikes/sinceStrike.ts';
import type { Submission } from '../../../shared/submissions/submission.ts';
import { at, correction, fact, onHydrant, recorded } from '../../support/submissions.ts';

/** Which records of a hydrant's own page bear on a strike of it. Common practice, no source. */
const told = (outage: { since: string; returnedAt: string | null }, ...submissions: readonly Submission[]) =>
  sinceStrike(
    submissions.map((each) => recorded(each)),
    outage,
  ).map(({ submission }) => submission.submissionId);

const look = (number: number) => fact('inspection', number, onHydrant('H-1'));
const open = { since: at(10), returnedAt: null };
const over = { since: at(10), returnedAt: at(30) };

describe('records of a hydrant that bear on a strike', () => {
  it('happened since the strike, and before the return', () => {
    expect(told(open, look(5), look(10), look(20), look(40))).toEqual(
      [look(10), look(20), look(40)].map(({ submissionId }) => submissionId),
    );
    expect(told(over, look(5), look(20), look(40))).toEqual([look(20).submissionId]);
  });

  it('are looks, valves and answers on the water; an answer may come after the return', () => {
    const answer = fact('water-quality-answer', 40, onHydrant('H-1'));
    const valve = fact('valve-operation', 41, onHydrant('H-1'));
    const test = fact('flow-test', 20, onHydrant('H-1'));
    expect(told(over, answer, valve, test)).toEqual([answer.submissionId]);
    expect(told(open, answer, valve, test)).toEqual([answer.submissionId, valve.submissionId]);
  });

  it('come with the corrections that led to what stands, and not when they were withdrawn', () => {
    const right = correction(22, look(20), { ...look(20).body, result: 'not-usable' });
    expect(told(open, look(20), right)).toEqual([look(20).submissionId, right.submissionId]);
    expect(told(open, look(20), correction(22, look(20), null))).toEqual([]);
  });
});
