import { randomBytes } from 'node:crypto';
import { beforeAll, expect, it } from 'vitest';
import type { ProjectionStore } from '../../functions/stores/projections/projections.ts';
import { describeOnPlaces } from './onPlaces.ts';

describeOnPlaces('projection store', (opened) => {
  let store: ProjectionStore;
  beforeAll(() => {
    store = opened().stores.projections;
  });

  it('keeps a value and counts its writes', async () => {
    expect(await store.get('p', 'a')).toBeNull();
    expect(await store.versionOf('p', 'a')).toBe(0);
    const value = { text: '', list: [], none: null, deep: { number: 0.1 + 0.2, name: 'ñ 🚒' } };
    expect(await store.put('p', 'a', value, 0)).toBe(true);
    expect(await store.get('p', 'a')).toEqual({ value, version: 1 });
    expect(await store.put('p', 'a', 'other', 1)).toBe(true);
    expect(await store.get('p', 'a')).toEqual({ value: 'other', version: 2 });
  });

  it('an older version never replaces a newer', async () => {
    await store.put('older', 'a', 'one', 0);
    await store.put('older', 'a', 'two', 1);
    for (const expected of [0, 1, 3]) expect(await store.put('older', 'a', 'late', expected)).toBe(false);
    for (const expected of [0, 1, 3]) expect(await store.remove('older', 'a', expected)).toBe(false);
    expect(await store.get('older', 'a')).toEqual({ value: 'two', version: 2 });
  });

  it('a removal counts on, so a writer from before it loses', async () => {
    await store.put('gone', 'a', 'one', 0);
    expect(await store.remove('gone', 'a', 1)).toBe(true);
    expect(await store.get('gone', 'a')).toBeNull();
    expect(await store.list('gone')).toEqual([]);
    expect(await store.versionOf('gone', 'a')).toBe(2);
    for (const expected of [0, 1]) expect(await store.put('gone', 'a', 'late', expected)).toBe(false);
    expect(await store.put('gone', 'a', 'again', 2)).toBe(true);
    expect(await store.get('gone', 'a')).toEqual({ value: 'again', version: 3 });
    // Keeping a key removed that never was is a write too: it stops a writer from before.
    expect(await store.remove('gone', 'never', 0)).toBe(true);
    expect(await store.put('gone', 'never', 'late', 0)).toBe(false);
  });

  it('lists a partition, or the keys with a prefix, in the order of their UTF-8 bytes', async () => {
    // U+FF5E sorts before U+1F692 in UTF-8 and after it in UTF-16.
    const keys = ['b', 'a', 'a:1', 'a:10', 'a:2', 'aa', '\uff5e', '\u{1f692}', 'é'];
    for (const key of keys) await store.put('list', key, { key }, 0);
    await store.put('list2', 'other', 'x', 0);
    expect((await store.list('list')).map(({ key }) => key)).toEqual([
      'a',
      'a:1',
      'a:10',
      'a:2',
      'aa',
      'b',
      'é',
      '\uff5e',
      '\u{1f692}',
    ]);
    expect(await store.list('list', 'a:')).toEqual([
      { key: 'a:1', value: { key: 'a:1' }, version: 1 },
      { key: 'a:10', value: { key: 'a:10' }, version: 1 },
      { key: 'a:2', value: { key: 'a:2' }, version: 1 },
    ]);
  });

  it('lists more than one page (1 MB) and values larger than one item as text', async () => {
    const note = randomBytes(15_000).toString('hex');
    await Promise.all(
      Array.from({ length: 50 }, (_, index) =>
        store.put('pages', String(index).padStart(2, '0'), { note, index }, 0),
      ),
    );
    const listed = await store.list<{ note: string; index: number }>('pages');
    expect(listed.map(({ value }) => value.index)).toEqual(Array.from({ length: 50 }, (_, index) => index));
    const large = { text: 'a large but plain value, '.repeat(40_000) };
    await store.put('pages2', 'large', large, 0);
    expect(await store.get('pages2', 'large')).toEqual({ value: large, version: 1 });
  });

  it('of 30 writers from the same version one wins', async () => {
    await store.put('race', 'a', 0, 0);
    const answers = await Promise.all(
      Array.from({ length: 30 }, (_, index) =>
        index % 3 === 0 ? store.remove('race', 'a', 1) : store.put('race', 'a', index, 1),
      ),
    );
    expect(answers.filter(Boolean)).toHaveLength(1);
    expect(await store.versionOf('race', 'a')).toBe(2);
  });
});
