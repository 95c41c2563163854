import { describe, expect, it } from 'vitest';
import { mainsOfHydrant, mainsStanding } from '../../../shared/shutMain/ofHydrant.ts';
import type { Submission } from '../../../shared/submissions/submission.ts';
import { at, correction, fact, onHydrant, onStrike, recorded } from '../../support/submissions.ts';
import { returned, struck, told } from '../../support/tell.ts';

/** A main shut with no strike: the same question as with one. Sources as in `standing.test.ts`. */
const H = onHydrant('H-1');
const turn = (number: number, action: 'closed' | 'reopened', subject = H) => {
  const { mainShut: _none, ...body } = fact('valve-operation', number, subject).body;
  return {
    ...fact('valve-operation', number, subject),
    body: {
      ...body,
      valveId: 'V-9',
      valve: 'main-line' as const,
      action,
      at: at(number),
      ...(action === 'closed'
        ? { mainShut: { customers: 12, addresses: null, lowestPsi: null, under20Psi: 'unknown' as const } }
        : {}),
    },
  };
};
const answer = (number: number, subject = H) =>
  fact('water-quality-answer', number, subject, {
    decision: 'no-notice',
    answeredAt: at(number),
    noticeGivenAt: null,
  });
const records = (...told: readonly Submission[]) => told.map((each) => recorded(each));
const standing = (...told: readonly Submission[]) =>
  mainsStanding(mainsOfHydrant(records(...told)), [])?.standing ?? null;

describe('a main shut from a hydrant’s page', () => {
  it('asks the question with no strike, and an answer ends it', () => {
    expect(standing(turn(5, 'closed'))).toMatchObject({
      closings: [{ valveId: 'V-9', reopenedAt: null, customersListed: true, under20Psi: 'unknown' }],
      unanswered: [turn(5, 'closed').submissionId],
    });
    expect(standing(turn(5, 'closed'), answer(8))).toMatchObject({ unanswered: [] });
  });

  it('is not there for a hydrant’s own valve, nor for one that was closed on a strike’s page', () => {
    const own = { ...turn(5, 'closed'), body: { ...turn(5, 'closed').body, valve: 'isolation' as const } };
    const { mainShut: _none, ...body } = own.body;
    expect(standing({ ...own, body })).toBeNull();
    expect(standing(turn(5, 'closed', onStrike(1)))).toBeNull();
  });

  it('knows a valve reopened and a question answered on a strike’s page', () => {
    const told = [turn(5, 'closed'), turn(9, 'reopened', onStrike(1)), answer(8, onStrike(1))];
    expect(standing(...told)).toMatchObject({ closings: [{ reopenedAt: at(9) }], unanswered: [] });
    expect(standing(...[...told].reverse())).toEqual(standing(...told));
  });

  it('follows corrections, and goes when the closing is withdrawn', () => {
    const first = turn(5, 'closed');
    const listed = { ...first.body, mainShut: { ...first.body.mainShut!, under20Psi: 'no' as const } };
    expect(standing(first, correction(6, first, listed))).toMatchObject({ unanswered: [] });
    expect(standing(first, correction(6, first, null))).toBeNull();
  });

  it('counts what waits on a device on top of what the server said', () => {
    const said = mainsOfHydrant(records(turn(5, 'closed')));
    expect(mainsStanding(said, records(turn(7, 'reopened'), answer(8)))?.standing).toMatchObject({
      closings: [{ reopenedAt: at(7) }],
      unanswered: [],
    });
    expect(mainsStanding(null, records(turn(5, 'closed')))?.standing.unanswered).toHaveLength(1);
    expect(mainsStanding(null, [])).toBeNull();
  });

  it('is asked of a strike while it is open, and is none of its business once it was over', () => {
    const closings = (...more: readonly Submission[]) =>
      told([struck(1, 0, 'H-1'), ...more]).strike(1)?.shutMain?.closings.length ?? 0;
    const shut = (number: number) => fact('valve-operation', number, H, turn(number, 'closed').body);
    expect(closings(shut(100))).toBe(1);
    expect(closings(returned([1], 300, { on: 'H-1' }), shut(400))).toBe(0);
  });
});
