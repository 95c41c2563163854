import { describe, expect, it } from 'vitest';
import { history } from '../../../shared/submissions/history.ts';
import type { Submission } from '../../../shared/submissions/submission.ts';
import { at, correction, fact, onStrike, recorded, uuid } from '../../support/submissions.ts';

const told = (submissions: Submission[]) =>
  history(submissions.map((each) => recorded(each))).map(({ recorded: { submission }, standing }) => [
    submission.submissionId,
    standing,
  ]);
const strike = fact('strike', 1, onStrike(9));
const repair = fact('repair', 5, onStrike(9));

describe('the history of a strike', () => {
  it('keeps everything, whatever the order of arrival, a correction right after what it corrects', () => {
    const first = correction(6, strike, { ...strike.body });
    const second = correction(7, first, { ...strike.body });
    const expected = [
      [strike.submissionId, 'corrected'],
      [first.submissionId, 'corrected'],
      [second.submissionId, 'stands'],
      [repair.submissionId, 'stands'],
    ];
    expect(told([strike, repair, first, second])).toEqual(expected);
    expect(told([second, first, repair, strike])).toEqual(expected);
  });

  it('shows what was withdrawn, and by what', () => {
    const withdrawal = correction(6, repair, null);
    expect(told([repair, withdrawal])).toEqual([
      [repair.submissionId, 'withdrawn'],
      [withdrawal.submissionId, 'stands'],
    ]);
  });

  it('keeps a correction beside its target also when it moves the time to before it', () => {
    const moved = correction(6, repair, { ...repair.body }, { occurredAt: at(-500) });
    expect(told([strike, repair, moved]).map(([id]) => id)).toEqual([
      strike.submissionId,
      repair.submissionId,
      moved.submissionId,
    ]);
  });

  it('lets a correction of another kind change nothing, and one without its target stand alone', () => {
    const wrong = {
      ...correction(6, strike, { ...strike.body }),
      body: { targetId: strike.submissionId, targetKind: 'repair', reason: 'x', replacement: null },
    };
    const lost = correction(7, repair, null);
    expect(told([strike, wrong, lost])).toEqual([
      [strike.submissionId, 'stands'],
      [wrong.submissionId, 'stands'],
      [lost.submissionId, 'stands'],
    ]);
  });

  it('ends even when two corrections name each other', () => {
    const one = correction(6, strike, null);
    const a: Submission = { ...one, submissionId: uuid(20), body: { ...one.body, targetId: uuid(21) } };
    const b: Submission = { ...one, submissionId: uuid(21), body: { ...one.body, targetId: uuid(20) } };
    expect(told([a, b])).toHaveLength(2);
  });
});
