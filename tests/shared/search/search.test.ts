import { describe, expect, it } from 'vitest';
import type { ClaimState } from '../../../shared/claims/state.ts';
import { search } from '../../../shared/search/search.ts';
import { plateMatches } from '../../../shared/search/text.ts';
import type { StrikeState } from '../../../shared/strikes/state.ts';

describe('a plate', () => {
  it.each([
    ['HTX 4471', 'htx4471', true],
    ['HTX-4471', '4471', true],
    ['htx·4471', 'HTX 44', true],
    ['HTX 4471', '44 72', false],
    // Two signs would match half the town.
    ['HTX 4471', '44', false],
    // Letters alone must be the whole plate.
    ['GULLS', 'gulls', true],
    ['GULLS', 'gull', false],
    ['THE HARBOR GULLS', 'the harbor gulls', false],
    [null, '4471', false],
  ])('%s answers %s: %s', (plate, find, answers) => expect(plateMatches(plate, find)).toBe(answers));
});

describe('a large archive', () => {
  // Looking through all claims for each strike took eleven seconds of a clerk's time at 10,000 of each.
  it('looks at each claim a few times, however many strikes there are', () => {
    const ids = Array.from({ length: 1_000 }, (_, index) => `strike-${index}`);
    let looks = 0;
    const strikes = ids.map((id) => ({
      strikeId: id,
      memberIds: [id],
      hydrantIds: [`H-${id}`],
      hydrantId: `H-${id}`,
      struckAt: '2026-03-03T17:00:00Z',
      since: '2026-03-03T17:00:00Z',
      placeDescription: null,
    })) as unknown as StrikeState[];
    const claims = ids.map((strikeId, index) => ({
      get strikeId() {
        looks++;
        return strikeId;
      },
      claimId: `claim-${index}`,
      claimNumber: `2026-${10_000 + index}`,
      payerName: null,
    })) as unknown as ClaimState[];
    const asked = {
      strikes,
      claims,
      timeZone: 'America/New_York',
      placeOf: () => null,
      privately: new Map(),
    };
    expect(search({ ...asked, find: '2026-03' })).toHaveLength(1_000);
    expect(search({ ...asked, find: '2026-10345' })[0]?.claims).toEqual([
      { claimId: 'claim-345', claimNumber: '2026-10345' },
    ]);
    expect(looks).toBeLessThan(10 * ids.length);
  });
});

describe('a case is found as it is spoken of', () => {
  const strike = {
    strikeId: 's1',
    memberIds: ['s1'],
    hydrantIds: ['TH-0071'],
    hydrantId: 'TH-0071',
    struckAt: '2026-03-04T17:00:00Z',
    since: '2026-03-04T17:00:00Z',
    placeDescription: null,
  } as unknown as StrikeState;
  const found = (find: string) =>
    search({
      find,
      strikes: [strike],
      claims: [],
      timeZone: 'America/New_York',
      placeOf: () => null,
      privately: new Map(),
    })
      .flatMap(({ by }) => by)
      .join();
  // Ways in which people write a day in the United States and in Spanish, and a number without its hyphen: common
  // practice, no source.
  it.each([
    ['2026-03-04', 'day'],
    ['2026-03', 'day'],
    ['3/4/2026', 'day'],
    ['03/04/2026', 'day'],
    ['Mar 4, 2026', 'day'],
    ['march 4 2026', 'day'],
    ['4 mar 2026', 'day'],
    ['4 de marzo de 2026', 'day'],
    ['4/3/2026', ''],
    ['Foo 4, 2026', ''],
    ['th0071', 'hydrant'],
    ['TH 71', ''],
    ['--', ''],
  ])('%s: %s', (find, by) => expect(found(find)).toBe(by));
});
