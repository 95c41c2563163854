import { describe, expect, it } from 'vitest';
import { byTime, effectiveFacts } from '../../../shared/submissions/effective.ts';
import { history } from '../../../shared/submissions/history.ts';
import type { Recorded } from '../../../shared/submissions/recorded.ts';
import type { Submission } from '../../../shared/submissions/submission.ts';
import { at, correction, fact, onStrike, recorded, uuid } from '../../support/submissions.ts';

/** Design decision 1: a correction names what it replaces and why; corrections chain in a line. */
const strike = fact('strike', 1, onStrike(1));
const saying = (note: string) => ({ ...strike.body, note });
const once = correction(2, strike, saying('once'));
const twice = correction(3, once, saying('twice'));
const all = (...submissions: readonly Submission[]): Recorded[] => submissions.map((one) => recorded(one));

/** Every order of a few things. */
function orders<T>(things: readonly T[]): T[][] {
  if (things.length === 0) return [[]];
  return things.flatMap((first, index) =>
    orders(things.filter((_, at) => at !== index)).map((rest) => [first, ...rest]),
  );
}

describe('corrections', () => {
  it('the last of the chain stands, in whatever order they arrive, under the first id', () => {
    for (const order of orders([strike, once, twice])) {
      const { facts, withdrawn, problems } = effectiveFacts(all(...order));
      expect(facts).toMatchObject([
        { fact: { submissionId: uuid(1), kind: 'strike', body: { note: 'twice' } } },
      ]);
      expect(facts[0]?.corrections.map(({ submission }) => submission.submissionId)).toEqual([
        uuid(2),
        uuid(3),
      ]);
      expect([withdrawn, problems]).toEqual([[], []]);
    }
  });

  it('puts right when it happened, too', () => {
    const moved = correction(2, strike, strike.body, { occurredAt: at(-60) });
    expect(effectiveFacts(all(strike, moved)).facts[0]?.fact.occurredAt).toBe(at(-60));
  });

  it('a withdrawal leaves nothing standing, and a correction of it brings the fact back', () => {
    const gone = correction(2, strike, null);
    expect(effectiveFacts(all(strike, gone))).toMatchObject({
      facts: [],
      withdrawn: [{ fact: { submissionId: uuid(1) } }],
    });
    const back = correction(3, strike, saying('back after all'));
    const again = { ...back, body: { ...back.body, targetId: gone.submissionId } };
    for (const order of orders([strike, gone, again]))
      expect(effectiveFacts(all(...order))).toMatchObject({
        facts: [{ fact: { body: { note: 'back after all' } } }],
        withdrawn: [],
      });
  });

  it('that waits for its target says so, and changes nothing else', () => {
    const { facts, problems } = effectiveFacts(all(twice, strike));
    expect(facts).toMatchObject([{ fact: { body: { note: strike.body.note } }, corrections: [] }]);
    expect(problems).toEqual([
      { code: 'correction-awaits-target', path: uuid(3), params: { targetId: uuid(2) } },
    ]);
  });

  it('of another kind than its target changes nothing, is reported, and may be corrected itself', () => {
    const wrong = { ...once, body: { ...once.body, targetKind: 'repair' } };
    const { facts, problems } = effectiveFacts(all(strike, wrong));
    expect(facts).toMatchObject([{ fact: { body: { note: strike.body.note } }, corrections: [] }]);
    expect(problems).toEqual([
      { code: 'correction-of-other-kind', path: uuid(2), params: { targetKind: 'repair', kind: 'strike' } },
    ]);
    // It holds its target's only place, so the next correction aims at it.
    expect(effectiveFacts(all(strike, wrong, twice)).facts).toMatchObject([
      { fact: { body: { note: 'twice' } } },
    ]);
  });

  it('from another stream corrects nothing, whichever came first', () => {
    const foreign = { ...correction(4, strike, saying('foreign')), subject: onStrike(2) };
    for (const order of orders([strike, once, foreign])) {
      const { facts, problems } = effectiveFacts(all(...order));
      expect(facts).toMatchObject([{ fact: { body: { note: 'once' } } }]);
      expect(problems).toMatchObject([{ code: 'correction-awaits-target', path: uuid(4) }]);
    }
  });

  it('that name each other in a ring do not hang and change nothing', () => {
    const ring = [
      correction(5, correction(6, strike, null), null),
      correction(6, correction(5, strike, null), null),
    ];
    const self = correction(7, correction(7, strike, null), null);
    const { facts, problems } = effectiveFacts(all(strike, ...ring, self));
    expect(facts).toHaveLength(1);
    expect(problems).toHaveLength(3);
  });

  it('one erased link of the chain marks the fact as erased', () => {
    const [first, second] = all(strike, once);
    expect(effectiveFacts([first!, { ...second!, erased: true }]).facts[0]?.erased).toBe(true);
  });
});

describe('order of reading', () => {
  it('is by the instant, not by its text', () => {
    const when = (number: number, occurredAt: string) =>
      fact('inspection', number, onStrike(1), {}, { occurredAt });
    const given = [
      when(1, '2026-03-04T02:10:00.5Z'),
      when(2, '2026-03-04T02:10:00Z'),
      when(3, '2026-03-04T02:10Z'),
      when(4, '2026-03-04T02:09:59.999999Z'),
      when(5, '2026-03-04T02:10:00.25Z'),
    ];
    const { facts } = effectiveFacts(all(...given));
    expect(facts.map(({ fact: { submissionId } }) => submissionId)).toEqual([4, 2, 3, 5, 1].map(uuid));
    expect([...facts].reverse().sort(byTime)).toEqual(facts);
  });
});

describe('history', () => {
  const standings = (...submissions: Submission[]) =>
    history(all(...submissions)).map(({ recorded: { submission }, standing }) => [
      submission.submissionId,
      standing,
    ]);

  it('says of every entry what became of it, corrections right after what they correct', () => {
    const other = fact('valve-operation', 9, onStrike(1), {}, { occurredAt: at(1.5) });
    const moved = { ...once, occurredAt: at(500) };
    for (const order of orders([strike, moved, twice, other]))
      expect(standings(...order)).toEqual([
        [uuid(1), 'corrected'],
        [uuid(2), 'corrected'],
        [uuid(3), 'stands'],
        [uuid(9), 'stands'],
      ]);
    expect(standings(strike, correction(2, strike, null))).toEqual([
      [uuid(1), 'withdrawn'],
      [uuid(2), 'stands'],
    ]);
  });

  it('a correction that changes nothing leaves its target standing', () => {
    const wrong = { ...once, body: { ...once.body, targetKind: 'repair' } };
    expect(standings(strike, wrong)).toEqual([
      [uuid(1), 'stands'],
      [uuid(2), 'stands'],
    ]);
    expect(standings(strike, wrong, twice)).toEqual([
      [uuid(1), 'corrected'],
      [uuid(3), 'stands'],
      [uuid(2), 'stands'],
    ]);
    expect(standings(twice)).toEqual([[uuid(3), 'stands']]);
  });
});
