import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openObjectStore } from '../../functions/stores/objects/open.ts';
import type { ObjectStore } from '../../functions/stores/objects/objects.ts';

// One contract for every adapter. OBJECTS_URL adds any store there is an address for, such as s3://bucket/prefix.
const text = (value: string): Uint8Array => new TextEncoder().encode(value);
const plain = { contentType: 'text/plain' };

interface Adapter {
  readonly name: string;
  readonly open: () => Promise<{ store: ObjectStore; close: () => Promise<void> }>;
}

const adapters: Adapter[] = [
  {
    name: 'memory',
    open: async () => ({ store: await openObjectStore('memory:'), close: async () => undefined }),
  },
  {
    name: 'file',
    open: async () => {
      const folder = await mkdtemp(join(tmpdir(), 'objects-'));
      return {
        store: await openObjectStore(pathToFileURL(folder).href),
        close: () => rm(folder, { recursive: true }),
      };
    },
  },
];
const given = process.env['OBJECTS_URL'];
if (given !== undefined)
  adapters.push({
    name: given,
    open: async () => ({ store: await openObjectStore(given), close: async () => undefined }),
  });

/** Keys as they come from hydrant ids and from people who wish us ill. */
const oddKeys = [
  'hydrants/H-1',
  'hydrants/h-1',
  'hydrants/Ñ 12 "x" <y> | z?*',
  'hydrants/../../etc/passwd',
  'stations/..',
  'hydrants/.hidden',
  'hydrants/con',
  'hydrants/a%2fb',
  'hydrants/a%b',
  'hydrants/a\\b',
  'hydrants//empty',
  'hydrants/~writing/x',
  'hydrants/ends.',
  `hydrants/${'長'.repeat(64)}`,
  '/absolute',
  '~writing/x',
  'hydrants/🚒 12',
];

describe.each(adapters)('an object store in $name', ({ open }) => {
  let store: ObjectStore;
  let close: () => Promise<void>;
  beforeAll(async () => ({ store, close } = await open()));
  afterAll(() => close());

  it('gives back what was put, byte for byte', async () => {
    const bytes = Uint8Array.from({ length: 70_000 }, (_, at) => (at * 7) % 256);
    expect(
      await store.put('a/bytes', bytes, {
        contentType: 'application/octet-stream',
        cacheControl: 'max-age=60',
      }),
    ).toEqual({ written: true });
    expect([...((await store.get('a/bytes'))?.bytes ?? [])]).toEqual([...bytes]);
    expect(await store.head('a/bytes')).toMatchObject({ sizeBytes: 70_000 });
  });

  it('holds an empty object', async () => {
    await store.put('a/empty', new Uint8Array(), plain);
    expect((await store.get('a/empty'))?.bytes.byteLength).toBe(0);
    expect(await store.head('a/empty')).toMatchObject({ sizeBytes: 0 });
  });

  it('answers null for what is not there, also under an object and for a folder', async () => {
    await store.put('b/there', text('x'), plain);
    for (const key of ['b/nothing', 'b/there/below', 'b']) {
      expect(await store.get(key)).toBeNull();
      expect(await store.head(key)).toBeNull();
    }
  });

  it('replaces, unless the key must be new', async () => {
    await store.put('c/key', text('one'), plain);
    expect(await store.put('c/key', text('two'), plain)).toEqual({ written: true });
    expect(await store.put('c/key', text('three'), { ...plain, ifAbsent: true })).toEqual({ written: false });
    expect(Buffer.from((await store.get('c/key'))!.bytes).toString()).toBe('two');
  });

  it('lets exactly one of many writers of a new key win, and keeps what it wrote', async () => {
    const answers = await Promise.all(
      Array.from({ length: 20 }, (_, writer) =>
        store.put('d/one', text(`writer ${writer}`), { ...plain, ifAbsent: true }),
      ),
    );
    const winner = answers.findIndex(({ written }) => written);
    expect(answers.filter(({ written }) => written)).toHaveLength(1);
    expect(Buffer.from((await store.get('d/one'))!.bytes).toString()).toBe(`writer ${winner}`);
  });

  it('deletes, and does not mind what is not there', async () => {
    await store.put('e/key', text('x'), plain);
    await store.delete('e/key');
    await store.delete('e/key');
    expect(await store.get('e/key')).toBeNull();
  });

  it('lists by any prefix, in the order of UTF-8 bytes', async () => {
    // U+FF5E sorts before U+1F692 in UTF-8 and after it in UTF-16.
    for (const key of ['f/b', 'f/a/2', 'f/a/1', 'f/\u{1f692}', 'f/\uff5e', 'fa'])
      await store.put(key, text('x'), plain);
    expect(await store.list('f/')).toEqual(['f/a/1', 'f/a/2', 'f/b', 'f/\uff5e', 'f/\u{1f692}']);
    expect(await store.list('f/a')).toEqual(['f/a/1', 'f/a/2']);
    expect(await store.list('f')).toEqual(['f/a/1', 'f/a/2', 'f/b', 'f/\uff5e', 'f/\u{1f692}', 'fa']);
    expect(await store.list('nothing/')).toEqual([]);
  });

  it('keeps every odd key apart from every other, and lists each as it was', async () => {
    for (const key of oddKeys)
      expect(await store.put(key, text(key), { ...plain, ifAbsent: true })).toEqual({ written: true });
    for (const key of oddKeys) expect(Buffer.from((await store.get(key))!.bytes).toString()).toBe(key);
    expect((await store.list('')).filter((key) => oddKeys.includes(key)).toSorted()).toEqual(
      oddKeys.toSorted(),
    );
    for (const key of oddKeys) await store.delete(key);
  });

  it.each(['', 'a/', '\ud800', 'x'.repeat(1025)])('refuses %j as a key', async (key) => {
    await expect(store.put(key, text('x'), plain)).rejects.toThrow(RangeError);
  });

  it('does not share its memory with the caller', async () => {
    const bytes = text('before');
    await store.put('g/key', bytes, plain);
    bytes.fill(0);
    expect(Buffer.from((await store.get('g/key'))!.bytes).toString()).toBe('before');
  });
});
