import { chmod, mkdtemp, readdir, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { StoreUnavailable } from '../../functions/stores/faults.ts';
import { fileObjects } from '../../functions/stores/objects/file.ts';
import { keyOf, namesOf } from '../../functions/stores/objects/fileNames.ts';
import { openObjectStore } from '../../functions/stores/objects/open.ts';

describe('names of files for keys', () => {
  const key = fc
    .array(
      fc.oneof(
        fc.string({ unit: 'grapheme', maxLength: 90 }),
        fc.constantFrom('', '.', '..', '~', '%', 'con', 'A', 'a', 'nul.txt'),
      ),
      { minLength: 1, maxLength: 5 },
    )
    .map((segments) => segments.join('/'));

  it('lead back to the key', () =>
    fc.assert(
      fc.property(key, (each) => {
        expect(keyOf(namesOf(each))).toBe(each);
      }),
    ));

  it('differ for different keys, also where the disk does not tell upper case from lower', () => {
    fc.assert(
      fc.property(key, key, (one, other) => {
        fc.pre(one !== other);
        expect(namesOf(one).join('/').toLowerCase()).not.toBe(namesOf(other).join('/').toLowerCase());
      }),
    );
    expect(namesOf('H-1')).not.toEqual(namesOf('h-1'));
  });

  it('never lead out of the folder, and fit every file system', () => {
    fc.assert(
      fc.property(key, (each) => {
        for (const name of namesOf(each)) {
          expect(name).toMatch(/^[a-z0-9_.%-]+~?$/);
          expect(name).not.toMatch(/^\.|\.$/);
          expect(name.length).toBeLessThanOrEqual(201);
        }
      }),
    );
  });

  it('leave ordinary keys as they are', () =>
    expect(namesOf('shards/0a1b-2.ndjson.gz')).toEqual(['shards', '0a1b-2.ndjson.gz']));
});

describe('objects in a folder', () => {
  let folder: string;
  beforeEach(async () => {
    folder = await mkdtemp(join(tmpdir(), 'objects-'));
  });
  afterEach(() => rm(folder, { recursive: true, force: true }));

  it('leave nothing of a write behind but the object', async () => {
    const store = fileObjects(folder);
    await store.put('a', Buffer.from('x'), { contentType: 'text/plain' });
    await store.put('a', Buffer.from('y'), { contentType: 'text/plain', ifAbsent: true });
    expect(await readdir(join(folder, '~writing'))).toEqual([]);
    expect(await store.list('')).toEqual(['a']);
  });

  it('are read by another program that opens the same folder', async () => {
    await fileObjects(folder).put('a/b', Buffer.from('x'), { contentType: 'text/plain' });
    expect((await fileObjects(folder).get('a/b'))?.bytes.toString()).toBe('x');
  });

  it('are unavailable, not absent, where the disk refuses', async () => {
    // A file where the folder should be: the disk answers ENOTDIR or EEXIST to a write.
    const blocked = join(folder, 'blocked');
    await writeFile(blocked, '');
    await expect(
      fileObjects(blocked).put('a', Buffer.from('x'), { contentType: 'text/plain' }),
    ).rejects.toThrow(StoreUnavailable);
    await chmod(blocked, 0o600);
  });
});

describe('addresses', () => {
  it.each(['', 'nonsense', 'https://example.invalid/', '/tmp'])('%j is none', async (address) => {
    await expect(openObjectStore(address)).rejects.toThrow(RangeError);
  });
});
