import { describe, expect, it } from 'vitest';
import { compareStatements } from '../../shared/costs/compareStatements.ts';
import { editionDayDoubts, pastEditionProblems, sameEdition } from '../../shared/costs/newEdition.ts';
import { statementOf } from '../../shared/costs/statement.ts';
import { labor, noRates, noRecord, noWork, span, stock, worked } from '../support/rates.ts';
import { correction, fact, onUtility, recorded } from '../support/submissions.ts';

const days = (editionId: string, effectiveFrom: string, effectiveTo: string | null = null) => ({
  editionId,
  effectiveFrom,
  effectiveTo,
});
const doubts = (...args: Parameters<typeof editionDayDoubts>) =>
  editionDayDoubts(...args).map(({ code, params }) => [code, ...Object.values(params)].join(' '));

describe('the days of a new edition', () => {
  const known = [days('2025', '2025-07-01', '2026-06-30')];
  it('that follow on from the last one raise no doubt', () => {
    expect(doubts(days('2026', '2026-07-01'), known, '2026-06-15')).toEqual([]);
  });
  it('are told of a gap, of a start in the past, and of a later edition that counts in its place', () => {
    expect(doubts(days('2026', '2026-07-03'), known, '2026-06-15')).toEqual([
      'edition-gap-before 2026-07-01 2026-07-03',
    ]);
    expect(doubts(days('2026', '2026-07-01'), known, '2026-07-02')).toEqual([
      'edition-starts-in-past 2026-07-01',
    ]);
    expect(doubts(days('x', '2025-01-01'), known, '2024-01-01')).toEqual([
      'edition-later-counts 2025 2025-07-01',
    ]);
    expect(doubts(days('x', '2025-01-01', '2025-06-30'), known, '2024-01-01')).toEqual([]);
  });
  it('that start with another one are told that no rate is found where both hold', () => {
    expect(doubts(days('x', '2025-07-01'), known, '2025-01-01')).toEqual([
      'edition-same-start 2025 2025-07-01',
    ]);
  });
});

describe('an edition on record', () => {
  const first = fact('rate-book', 1, onUtility);
  const on = [recorded(first)];
  it('keeps its id', () => {
    const other = fact('rate-book', 2, onUtility, { ...first.body, title: 'Another' });
    expect(pastEditionProblems(other, on)).toMatchObject([{ code: 'edition-taken', path: 'body.editionId' }]);
    expect(pastEditionProblems(first, on)).toEqual([]);
  });
  it('is known again under another submission when every field is the same, until it is withdrawn', () => {
    const again = fact('rate-book', 2, onUtility, first.body);
    expect(sameEdition(again, on)?.submissionId).toBe(first.submissionId);
    expect(sameEdition(fact('rate-book', 2, onUtility, { ...first.body, title: 'x' }), on)).toBeNull();
    expect(sameEdition(first, on)).toBeNull();
    const off = [...on, recorded(correction(3, first, null))];
    expect(sameEdition(again, off)).toBeNull();
    expect(pastEditionProblems(again, off).map(({ code }) => code)).toEqual(['edition-withdrawn']);
  });
  it('is not replaced by a correction, and may be withdrawn', () => {
    expect(pastEditionProblems(correction(3, first, first.body), on).map(({ code }) => code)).toEqual([
      'edition-not-edited',
    ]);
    expect(pastEditionProblems(correction(3, first, null), on)).toEqual([]);
  });
});

describe('two statements of one work', () => {
  const work = {
    ...noWork,
    records: [
      {
        ...noRecord,
        crew: [
          worked('w-1', 'lead', [span('2026-03-03T15:00:00Z', 60)]),
          worked('w-2', 'hand', [span('2026-03-03T15:00:00Z', 90)]),
        ],
      },
    ],
  };
  const before = statementOf(work, [{ ...noRates, labor: [labor('lead', '40'), labor('hand', '30')] }]);
  it('are set side by side, line by line, and the differences are that of the totals', () => {
    const after = statementOf(work, [{ ...noRates, labor: [labor('lead', '42'), labor('hand', '30')] }]);
    const pairs = compareStatements(before, after);
    expect(
      pairs.map(({ before: old, after: next, differenceCents }) => [old?.item, next?.item, differenceCents]),
    ).toEqual([
      ['w-2', 'w-2', 0],
      ['w-1', 'w-1', 200],
    ]);
    expect(pairs.reduce((sum, { differenceCents }) => sum + differenceCents, 0)).toBe(
      after.totalCents - before.totalCents,
    );
  });
  it('show what only one of them has: a fee that is new, a line that loses its rate', () => {
    const fee = { feeId: 'f', title: 'Fee', usd: '25', damage: [], authorityId: 'a' };
    const after = statementOf(work, [
      { ...noRates, labor: [labor('lead', '40')], jobFees: [fee], stock: [stock('p', '1')] },
    ]);
    const pairs = compareStatements(before, after);
    expect(
      pairs.map(({ before: old, after: next, differenceCents }) => [old?.kind, next?.kind, differenceCents]),
    ).toEqual([
      ['labor', 'labor', -4500],
      ['labor', 'labor', 0],
      [undefined, 'job-fee', 2500],
    ]);
    expect(pairs[0]?.after?.amountCents).toBeNull();
  });
});
