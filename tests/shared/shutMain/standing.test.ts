import { describe, expect, it } from 'vitest';
import { project } from '../../../shared/projections/project.ts';
import { missingOf } from '../../../shared/strikes/missing.ts';
import type { StrikeState } from '../../../shared/strikes/state.ts';
import { joinPersonal, splitPersonal } from '../../../shared/submissions/personal.ts';
import { parseSubmission, type BodyOf, type Submission } from '../../../shared/submissions/submission.ts';
import { at, correction, fact, onHydrant, onStrike, recorded } from '../../support/submissions.ts';

/**
 * When a main is shut and pressure under 20 psi is not ruled out, somebody responsible for water quality answers. The
 * 20 psi: common rule of state primacy agencies, from memory. That not knowing keeps the question open: common practice.
 */
type MainShut = NonNullable<BodyOf<'valve-operation'>['mainShut']>;

const strike = fact('strike', 1, onStrike(1), { hydrantId: 'H-1' });
const shut = (
  number: number,
  mainShut: Partial<MainShut> = {},
  body: Partial<BodyOf<'valve-operation'>> = {},
) =>
  fact('valve-operation', number, onStrike(1), {
    valveId: 'V-9',
    valve: 'main-line',
    action: 'closed',
    at: at(number),
    mainShut: { customers: null, addresses: null, lowestPsi: null, under20Psi: 'unknown', ...mainShut },
    ...body,
  });
/** As it was recorded before these questions were asked. */
const shutBefore = (number: number, body: Partial<BodyOf<'valve-operation'>> = {}): Submission => {
  const { mainShut: _left, ...rest } = shut(number, {}, body).body;
  return { ...shut(number), body: rest };
};
const answer = (number: number, decision: BodyOf<'water-quality-answer'>['decision']) =>
  fact('water-quality-answer', number, onStrike(1), {
    decision,
    answeredAt: at(number),
    noticeGivenAt: null,
  });

const stateOf = (...told: readonly Submission[]): StrikeState =>
  project(
    [strike, ...told].map((each) => recorded(each)),
    () => 'dry-barrel',
  ).strikes[0]!;
const asked = (...told: readonly Submission[]): string[] =>
  missingOf({ strike: stateOf(...told), desk: false, claims: [], photosAwaited: 0 })
    .map(({ code }) => code)
    .filter((code) => code === 'water-quality' || code === 'customers');

describe('a main that is shut', () => {
  it('is not there while none is: a state of before is unchanged', () => {
    expect('shutMain' in stateOf()).toBe(false);
    const { mainShut: _none, ...lateral } = fact('valve-operation', 5, onStrike(1), {
      valve: 'isolation',
      action: 'closed',
    }).body;
    expect('shutMain' in stateOf({ ...fact('valve-operation', 5, onStrike(1)), body: lateral })).toBe(false);
  });

  it.each([
    ['nothing said', shut(5), ['water-quality', 'customers']],
    ['pressure fell', shut(5, { under20Psi: 'yes', customers: 14 }), ['water-quality']],
    ['pressure not known', shut(5, { customers: 14 }), ['water-quality']],
    ['pressure held', shut(5, { under20Psi: 'no', lowestPsi: 45, customers: 14 }), []],
    ['nobody on it', shut(5, { under20Psi: 'no', customers: 0 }), []],
    [
      'named, not counted',
      shut(5, { under20Psi: 'no', addresses: '12 to 40 Alder St', addressLines: 1 }),
      [],
    ],
    ['by another valve', shut(5, {}, { valve: 'other' }), ['water-quality', 'customers']],
    ['as recorded before it was asked', shutBefore(5), ['water-quality', 'customers']],
    ['reopened', fact('valve-operation', 5, onStrike(1), { valve: 'main-line', action: 'reopened' }), []],
  ] as const)('%s', (_, told, expected) => {
    expect(asked(told)).toEqual(expected);
  });

  it('asks until somebody answers by name; samples keep it open', () => {
    const fell = shut(5, { under20Psi: 'yes', customers: 3 });
    expect(asked(fell, answer(6, 'samples-first'))).toEqual(['water-quality']);
    expect(asked(fell, answer(6, 'samples-first'), answer(9, 'no-notice'))).toEqual([]);
    expect(asked(fell, answer(6, 'notice'))).toEqual([]);
    expect(asked(answer(6, 'notice'), fell)).toEqual([]);
  });

  it('is answered by a record whose name is kept apart, as the folds of the server read it', () => {
    const fell = shut(5, { under20Psi: 'yes', customers: 3 });
    const told = [fell, answer(6, 'notice')].map((each) => splitPersonal(each).fact);
    expect(asked(...told)).toEqual([]);
  });

  it('asks anew for a closing after the answer', () => {
    const first = shut(5, { under20Psi: 'yes', customers: 3 });
    const again = shut(30, { under20Psi: 'yes', customers: 3 });
    expect(asked(first, answer(6, 'notice'), again)).toEqual(['water-quality']);
    expect(asked(first, answer(6, 'notice'), again, answer(30, 'notice'))).toEqual([]);
  });

  it('an answer that is withdrawn is none', () => {
    const fell = shut(5, { under20Psi: 'yes', customers: 3 });
    const given = answer(6, 'notice');
    expect(asked(fell, given, correction(7, given, null))).toEqual(['water-quality']);
  });

  it('shut from the hydrant’s own page counts for its strike', () => {
    const there = { ...shut(5), subject: onHydrant('H-1') };
    expect(asked(there)).toEqual(['water-quality', 'customers']);
    expect(asked({ ...there, subject: onHydrant('H-2') })).toEqual([]);
  });

  it('says when the valve was opened again, also by the return', () => {
    const [closing] = stateOf(shut(5)).shutMain!.closings;
    expect(closing).toMatchObject({ valveId: 'V-9', at: at(5), reopenedAt: null });
    const opened = fact('valve-operation', 40, onStrike(1), {
      valveId: 'V-9',
      action: 'reopened',
      at: at(40),
    });
    expect(stateOf(shut(5), opened).shutMain!.closings[0]).toMatchObject({ reopenedAt: at(40) });
  });

  it('stands the same in whatever order it arrived', () => {
    const told = [shut(5, { under20Psi: 'yes' }), answer(6, 'samples-first'), shut(30)];
    expect(stateOf(...[...told].reverse()).shutMain).toEqual(stateOf(...told).shutMain);
  });

  it('stays the same on a strike that is over, unless it was asked: old records raise nothing', () => {
    const strikeOver = { ...stateOf(shutBefore(5)), returnedAt: at(90) };
    expect(
      missingOf({ strike: strikeOver, desk: false, claims: [], photosAwaited: 0 }).map(({ code }) => code),
    ).not.toContain('water-quality');
    const askedOver = { ...stateOf(shut(5)), returnedAt: at(90) };
    expect(
      missingOf({ strike: askedOver, desk: false, claims: [], photosAwaited: 0 }).map(({ code }) => code),
    ).toContain('water-quality');
  });
});

describe('what is typed of it', () => {
  const problems = (mainShut: Partial<MainShut>): string[] => {
    const parsed = parseSubmission(JSON.parse(JSON.stringify(shut(5, mainShut))));
    return parsed.ok ? [] : parsed.problems.map(({ path, code }) => `${path} ${code}`);
  };

  it.each([
    [{ lowestPsi: 12, under20Psi: 'no' }, ['body.mainShut.under20Psi pressure-not-as-answered']],
    [{ lowestPsi: 20, under20Psi: 'yes' }, ['body.mainShut.under20Psi pressure-not-as-answered']],
    [{ lowestPsi: 19.9, under20Psi: 'yes' }, []],
    [{ lowestPsi: 20, under20Psi: 'no' }, []],
    [{ lowestPsi: 3, under20Psi: 'unknown' }, []],
  ] as const)('%j', (mainShut, expected) => {
    expect(problems(mainShut)).toEqual(expected);
  });

  it('of an answer names somebody, or a position at the least', () => {
    const problemsOf = (body: Partial<BodyOf<'water-quality-answer'>>) => {
      const parsed = parseSubmission({
        ...answer(6, 'notice'),
        body: { ...answer(6, 'notice').body, ...body },
      });
      return parsed.ok ? [] : parsed.problems.map(({ path, code }) => `${path} ${code}`);
    };
    expect(problemsOf({ answeredBy: null, position: null })).toEqual(['body.answeredBy answer-needs-a-name']);
    expect(problemsOf({ answeredBy: null })).toEqual([]);
  });

  it('keeps addresses and who answered as personal fields, which may be erased', () => {
    const told = shut(5, { addresses: '12 to 40 Alder St' });
    const { fact: kept, personal } = splitPersonal(told);
    expect(personal).toEqual({ 'mainShut.addresses': '12 to 40 Alder St' });
    expect(JSON.stringify(kept)).not.toContain('Alder');
    expect(joinPersonal(kept, personal)).toEqual(told);
    expect(splitPersonal(answer(6, 'notice')).personal).toEqual({
      answeredBy: 'The one for water quality',
    });
    // A closing that lists none, and a record of before, have none.
    expect(splitPersonal(shut(5)).personal).toEqual({});
    expect(splitPersonal(shutBefore(5)).personal).toEqual({});
  });

  it('counts as listed once its addresses were erased', () => {
    const told = shut(5, { addresses: '12 to 40 Alder St', addressLines: 1, under20Psi: 'no' });
    const { fact: kept } = splitPersonal(told);
    const state = project([recorded(strike), { ...recorded(kept), erased: true }], () => 'dry-barrel')
      .strikes[0]!;
    expect(state.shutMain!.closings[0]).toMatchObject({ customersListed: true });
  });
});
