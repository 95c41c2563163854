import { describe, expect, it } from 'vitest';
import { nextClaimNumber } from '../../../shared/claims/claimNumber.ts';

describe('the proposed claim number', () => {
  it.each([
    [[], '2026-0001'],
    [['2026-0001', '2026-0007', '2026-0003'], '2026-0008'],
    [['2025-0412'], '2026-0001'],
    [['2026-9999'], '2026-10000'],
    [['2026-10000', '2026-0002'], '2026-10001'],
  ])('after %j is %s', (inUse, next) => {
    expect(nextClaimNumber(inUse, 2026)).toBe(next);
  });
});
