import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import {
  spend,
  usualUploadBudget,
  type UploadBudget,
  type UploadsOfDay,
} from '../../shared/evidence/uploadBudget.ts';

const file = (number: number, bytes: number) => ({
  sha256: createHash('sha256').update(String(number)).digest('hex'),
  bytes,
});
/** What of so many files, one after the other, was let through, and how the day stands after them. */
function day(
  files: readonly ReturnType<typeof file>[],
  budget: UploadBudget = usualUploadBudget,
  before: UploadsOfDay | null = null,
) {
  let state = before;
  const outcomes = files.map((each) => {
    const spent = spend(state, each, { day: '2026-03-04', budget });
    if (spent.outcome === 'counted') state = spent.next;
    return spent.outcome;
  });
  return { state, outcomes };
}

// The limits are the house's own, no source; an honest day is the task's: 400 photos.
describe('what one person may send in a day', () => {
  it('is enough for a crew’s heaviest: 400 photos of 48 megapixels, some 15 MB each', () => {
    const { outcomes } = day(Array.from({ length: 400 }, (_, number) => file(number, 15_000_000)));
    expect(new Set(outcomes)).toEqual(new Set(['counted']));
  });

  it('is not enough to fill the store: 20 GB, whatever the files are', () => {
    const { state, outcomes } = day(Array.from({ length: 3000 }, (_, number) => file(number, 100_000_000)));
    expect(outcomes.filter((outcome) => outcome === 'counted')).toHaveLength(200);
    expect(state!.bytes).toBe(20_000_000_000);
    const small = day(Array.from({ length: 3000 }, (_, number) => file(number, 1)));
    expect(small.outcomes.filter((outcome) => outcome === 'counted')).toHaveLength(2000);
  });

  it('ends at the limit exactly, and says how much it was and how much it may be', () => {
    const budget = { files: 2, megabytes: 100 };
    expect(day([file(1, 60_000_000), file(2, 40_000_000)], budget).outcomes).toEqual(['counted', 'counted']);
    const { state } = day([file(1, 60_000_000)], budget);
    expect(spend(state, file(2, 40_000_001), { day: '2026-03-04', budget })).toMatchObject({
      outcome: 'over',
      problem: {
        code: 'upload-budget',
        path: 'sha256',
        params: { files: 1, megabytes: 60, mostFiles: 2, mostMegabytes: 100 },
      },
    });
  });

  it('counts a file once, however often its address is asked for', () => {
    const { state, outcomes } = day([file(1, 5), file(1, 5), file(2, 5), file(1, 5)], {
      files: 2,
      megabytes: 100,
    });
    expect(outcomes).toEqual(['counted', 'counted-before', 'counted', 'counted-before']);
    expect(state).toMatchObject({ bytes: 10 });
  });

  it('begins again with the next day', () => {
    const full = { day: '2026-03-03', bytes: 20_000_000_000, files: ['aaaaaaaaaaaa'] };
    expect(spend(full, file(1, 5), { day: '2026-03-04', budget: usualUploadBudget })).toMatchObject({
      outcome: 'counted',
      next: { day: '2026-03-04', bytes: 5 },
    });
  });
});
