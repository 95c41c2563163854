import { describe, expect, it } from 'vitest';
import type { ClaimState } from '../../../shared/claims/state.ts';
import { plateMatches, search } from '../../../shared/search/search.ts';
import type { StrikeState } from '../../../shared/strikes/state.ts';

describe('a plate', () => {
  it.each([
    ['HTX 4471', 'htx4471', true],
    ['HTX-4471', '4471', true],
    ['htx·4471', 'HTX 44', true],
    ['HTX 4471', '44 72', false],
    // Two signs would match half the town.
    ['HTX 4471', '44', false],
    [null, '4471', false],
  ])('%s answers %s: %s', (plate, find, answers) => expect(plateMatches(plate, find)).toBe(answers));
});

describe('an archive of 10,000 strikes', () => {
  // A second is what a clerk waits for; looking through all claims for each strike took eleven.
  it('is looked through in seconds', { timeout: 5000 }, () => {
    const ids = Array.from({ length: 10_000 }, (_, index) => `strike-${index}`);
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
      strikeId,
      claimId: `claim-${index}`,
      claimNumber: `2026-${10_000 + index}`,
      payerName: null,
    })) as unknown as ClaimState[];
    const asked = { strikes, claims, timeZone: 'America/New_York', plateStrikes: new Set<string>() };
    expect(search({ ...asked, find: '2026-03' })).toHaveLength(10_000);
    expect(search({ ...asked, find: '2026-12345' })[0]?.claims).toEqual([
      { claimId: 'claim-2345', claimNumber: '2026-12345' },
    ]);
  });
});
