import { beforeAll, expect, it } from 'vitest';
import type { Uploads } from '../../functions/stores/uploads/uploads.ts';
import { spend } from '../../shared/evidence/uploadBudget.ts';
import { describeOnPlaces } from './onPlaces.ts';

describeOnPlaces('the count of uploads', (opened) => {
  let uploads: Uploads;
  beforeAll(() => {
    uploads = opened().stores.uploads;
  });

  const budget = { files: 10, megabytes: 100 };
  const ask = (personId: string, number: number, day = '2026-03-04') =>
    uploads.count(personId, (before) =>
      spend(before, { sha256: number.toString(16).padStart(12, '0'), bytes: 1000 }, { day, budget }),
    );

  it('is each person’s own, and kept', async () => {
    for (let number = 0; number < 10; number += 1) expect((await ask('a', number)).outcome).toBe('counted');
    expect((await ask('a', 10)).outcome).toBe('over');
    expect((await ask('a', 3)).outcome).toBe('counted-before');
    expect((await ask('b', 10)).outcome).toBe('counted');
    expect((await ask('a', 10, '2026-03-05')).outcome).toBe('counted');
  });

  it('holds when many are asked for at once: never one more than may be', async () => {
    const answers = await Promise.allSettled(Array.from({ length: 30 }, (_, number) => ask('c', number)));
    const counted = answers.filter(
      (answer) => answer.status === 'fulfilled' && answer.value.outcome === 'counted',
    );
    // One that stayed contended is told to try again, and is not counted.
    for (const answer of answers)
      if (answer.status === 'rejected') expect(answer.reason).toMatchObject({ name: 'StoreUnavailable' });
    expect(counted.length).toBeLessThanOrEqual(10);
    for (let number = 0; number < 30; number += 1) await ask('c', number);
    expect((await ask('c', 99)).outcome).toBe('over');
  });

  it('leaves the numbers that must be unique alone', async () => {
    await ask('claim-number', 1);
    expect(await opened().stores.unique.names('claim-number')).toEqual([]);
  });
});
