import { describe, expect, it } from 'vitest';
import type { ClaimState } from '../../shared/claims/state.ts';
import { editionUse } from '../../shared/costs/editionUse.ts';
import type { StrikeState } from '../../shared/strikes/state.ts';
import { noRates } from '../support/rates.ts';

/** Whom the withdrawal of an edition touches. The days are by hand. */
const edition = (editionId: string, effectiveFrom: string, effectiveTo: string | null = null) => ({
  ...noRates,
  editionId,
  effectiveFrom,
  effectiveTo,
});
const strike = (strikeId: string, since: string, returnedAt: string | null) =>
  ({ strikeId, memberIds: [strikeId], since, returnedAt }) as unknown as StrikeState;
const claim = (claimId: string, strikeId: string, builtFrom: string[][] = [], closed = false) =>
  ({
    claimId,
    claimNumber: `C-${claimId}`,
    strikeId,
    life: { closed },
    packets: builtFrom.map((ids, index) => ({ revision: index + 1, builtFrom: ids })),
  }) as unknown as ClaimState;
const editions = [edition('2024', '2024-07-01'), edition('2025', '2025-07-01', '2026-06-30')];
const use = (claims: ClaimState[], strikes: StrikeState[], editionId = '2025', today = '2026-03-01') =>
  editionUse(
    { editionId, submissionId: `s-${editionId}` },
    editions,
    claims,
    strikes,
    'America/New_York',
    today,
  );

describe('the withdrawal of an edition', () => {
  it('touches bills whose days take rates from it, and says what comes in its place', () => {
    const strikes = [strike('in', '2026-01-01T12:00:00Z', '2026-01-02T12:00:00Z')];
    expect(use([claim('1', 'in')], strikes).bills).toEqual([
      { claimId: '1', claimNumber: 'C-1', insteadId: '2024' },
    ]);
    expect(use([claim('1', 'in')], strikes, '2024').bills).toEqual([]);
  });
  it('counts days in the utility’s zone, and days of work after the strike', () => {
    // 03:59 UTC on July 1 is June 30 in New York; the repair goes into July.
    const before = strike('before', '2025-07-01T03:59:00Z', '2025-07-01T03:59:00Z');
    const into = strike('into', '2025-07-01T03:59:00Z', '2025-07-01T04:00:00Z');
    expect(
      use([claim('1', 'before'), claim('2', 'into')], [before, into]).bills.map((b) => b.claimId),
    ).toEqual(['2']);
  });
  it('reaches to today while the hydrant is out of service', () => {
    const open = strike('open', '2025-06-01T12:00:00Z', null);
    expect(use([claim('1', 'open')], [open], '2025', '2025-06-30').bills).toEqual([]);
    expect(use([claim('1', 'open')], [open], '2025', '2025-07-01').bills).toHaveLength(1);
  });
  it('leaves closed claims and issued packets as they are, and names the packets', () => {
    const strikes = [strike('in', '2026-01-01T12:00:00Z', '2026-01-02T12:00:00Z')];
    const packets = [['s-2024', 'x'], ['s-2025']];
    expect(use([claim('1', 'in', packets, true)], strikes)).toEqual({
      packets: [{ claimId: '1', claimNumber: 'C-1', revision: 2 }],
      bills: [],
    });
  });
  it('says when no other edition is in force on those days', () => {
    const [, only] = editions;
    const strikes = [strike('in', '2026-01-01T12:00:00Z', '2026-01-02T12:00:00Z')];
    expect(
      editionUse(
        { editionId: '2025', submissionId: 's' },
        only ? [only] : [],
        [claim('1', 'in')],
        strikes,
        'UTC',
        '2026-02-01',
      ).bills[0]?.insteadId,
    ).toBeNull();
  });
});
