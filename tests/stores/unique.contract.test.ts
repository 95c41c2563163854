import { beforeAll, expect, it } from 'vitest';
import type { Unique } from '../../functions/stores/unique/unique.ts';
import { describeOnPlaces } from './onPlaces.ts';

describeOnPlaces('unique numbers', (opened) => {
  let unique: Unique;
  beforeAll(() => {
    unique = opened().stores.unique;
  });

  it('the first owner holds the number; taking it again is a retry, another owner is told who has it', async () => {
    expect(await unique.take('claim-number', '2026-0001', 'a')).toEqual({ taken: true, owner: 'a' });
    expect(await unique.take('claim-number', '2026-0001', 'a')).toEqual({ taken: true, owner: 'a' });
    expect(await unique.take('claim-number', '2026-0001', 'b')).toEqual({ taken: false, owner: 'a' });
  });

  it('spaces are apart, names are listed in order', async () => {
    await unique.take('revision', '2026-0001', 'b');
    await unique.take('claim-number', '2026-0010', 'a');
    await unique.take('claim-number', '2026-0002', 'c');
    expect(await unique.names('claim-number')).toEqual(['2026-0001', '2026-0002', '2026-0010']);
    expect(await unique.names('revision')).toEqual(['2026-0001']);
    expect(await unique.names('never used')).toEqual([]);
  });

  it('of 40 takers at once one holds it, and all are told the same owner', async () => {
    const answers = await Promise.all(
      Array.from({ length: 40 }, (_, index) => unique.take('race', '1', `owner ${index}`)),
    );
    expect(answers.filter(({ taken }) => taken)).toHaveLength(1);
    expect(new Set(answers.map(({ owner }) => owner)).size).toBe(1);
  });

  it('20 clerks who each take the next free number get 20 different ones', async () => {
    const next = async (owner: string): Promise<number> => {
      for (let number = (await unique.names('series')).length + 1; ; number += 1)
        if ((await unique.take('series', String(number).padStart(4, '0'), owner)).taken) return number;
    };
    const numbers = await Promise.all(Array.from({ length: 20 }, (_, index) => next(`clerk ${index}`)));
    expect(new Set(numbers).size).toBe(20);
    expect(await unique.names('series')).toHaveLength(20);
  });
});
