import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { StoreUnavailable } from '../../functions/stores/faults.ts';
import { filePublished } from '../../functions/stores/published/filePublished.ts';
import { memoryPublished } from '../../functions/stores/published/memoryPublished.ts';
import { openPublishedStore } from '../../functions/stores/published/openPublished.ts';
import type { PublishedObject, PublishedStore } from '../../functions/stores/published/published.ts';
import { s3Published } from '../../functions/stores/published/s3Published.ts';
import { fakeS3 } from '../support/fakeS3.ts';

let folder: string;
let s3: Awaited<ReturnType<typeof fakeS3>>;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'published-'));
  s3 = await fakeS3();
});
afterAll(async () => {
  await rm(folder, { recursive: true, force: true });
  await s3.close();
});

const page = (text: string, checkedAt: string | null = '2026-03-04T20:05:00.000Z'): PublishedObject => ({
  bytes: new TextEncoder().encode(text),
  contentType: 'text/html; charset=utf-8',
  cacheControl: 'public, max-age=30',
  checkedAt,
});
const textOf = (object: PublishedObject | null): string | null =>
  object && new TextDecoder().decode(object.bytes);

const stores: readonly [string, () => PublishedStore][] = [
  ['in memory', () => memoryPublished()],
  ['in files', () => filePublished(join(folder, 'site'))],
  ['in S3 over HTTP', () => s3Published(s3.client, 'bucket', 'public')],
];

describe.each(stores)('a store of published files %s', (_, open) => {
  let store: PublishedStore;
  beforeAll(() => {
    store = open();
  });

  test('answers null for what is not there', async () => {
    expect(await store.get('none/index.html')).toBeNull();
    expect(await store.head('none/index.html')).toBeNull();
  });

  test('gives back what was put, with type, cache time and age', async () => {
    const etag = await store.put('a/index.html', page('one'), null);
    expect(etag).toEqual(expect.any(String));
    const found = await store.get('a/index.html');
    expect(textOf(found)).toBe('one');
    expect(found).toMatchObject({
      etag,
      contentType: 'text/html; charset=utf-8',
      cacheControl: 'public, max-age=30',
      checkedAt: '2026-03-04T20:05:00.000Z',
    });
    expect(await store.head('a/index.html')).toMatchObject({ etag, checkedAt: '2026-03-04T20:05:00.000Z' });
  });

  test('an asset has no age', async () => {
    await store.put('b.css', page('css', null), null);
    expect(await store.head('b.css')).toMatchObject({ checkedAt: null });
  });

  test('writes only over what was seen', async () => {
    const first = await store.put('c.html', page('1'), null);
    expect(await store.put('c.html', page('other first'), null)).toBeNull();
    const second = await store.put('c.html', page('2'), first);
    expect(second).not.toBeNull();
    expect(await store.put('c.html', page('stale'), first)).toBeNull();
    expect(await store.put('d.html', page('gone'), first)).toBeNull();
    expect(textOf(await store.get('c.html'))).toBe('2');
    expect(await store.get('d.html')).toBeNull();
  });

  test('of many writers over the same page exactly one wins', async () => {
    const seen = await store.put('e.html', page('0'), null);
    const results = await Promise.all(
      Array.from({ length: 20 }, (__, index) => store.put('e.html', page(String(index + 1)), seen)),
    );
    const winners = results.flatMap((etag, index) => (etag === null ? [] : [index + 1]));
    expect(winners).toHaveLength(1);
    expect(textOf(await store.get('e.html'))).toBe(String(winners[0]));
  });

  test.each(['../x.html', 'a//b.html', '/a.html', 'a/../b.html', '', 'a b.html'])(
    'refuses the key %j',
    async (key) => {
      await expect(store.put(key, page('x'), null)).rejects.toThrow();
    },
  );
});

describe('faults are never an absence', () => {
  test('S3 that does not answer', async () => {
    const store = s3Published(s3.client, 'bucket', 'public');
    s3.fail(true);
    try {
      await expect(store.get('a/index.html')).rejects.toBeInstanceOf(StoreUnavailable);
      await expect(store.head('a/index.html')).rejects.toBeInstanceOf(StoreUnavailable);
      await expect(store.put('a/index.html', page('x'), null)).rejects.toBeInstanceOf(StoreUnavailable);
    } finally {
      s3.fail(false);
    }
  });

  test('a folder that is a file', async () => {
    const path = join(folder, 'not-a-folder');
    await writeFile(path, '');
    await expect(filePublished(path).put('a.html', page('x'), null)).rejects.toBeInstanceOf(StoreUnavailable);
    await expect(filePublished(path).head('a.html')).rejects.toBeInstanceOf(StoreUnavailable);
  });
});

describe('files', () => {
  test('are plain files that any web server can serve', async () => {
    const store = openPublishedStore(`file://${folder}/plain`);
    await store.put('x/index.html', page('hello'), null);
    expect(await readFile(join(folder, 'plain', 'x', 'index.html'), 'utf8')).toBe('hello');
  });

  test('other addresses are refused', () => {
    expect(() => openPublishedStore('ftp://somewhere/')).toThrow(/s3:, file: or memory:/);
  });
});
