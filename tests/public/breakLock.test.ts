import { mkdir, mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { breakLock, filePublished } from '../../functions/stores/published/filePublished.ts';

let folder: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'lock-'));
});
afterEach(() => rm(folder, { recursive: true, force: true }));

const page = {
  bytes: new TextEncoder().encode('page'),
  contentType: 'text/html; charset=utf-8',
  cacheControl: 'no-store',
  checkedAt: null,
};
/** What a process leaves that is killed while it writes. */
const leaveLock = () => mkdir(join(folder, '.published', 'lock'), { recursive: true });

test('a lock that a killed server left is broken by the next, which writes at once', async () => {
  await leaveLock();
  await breakLock(folder);
  const began = performance.now();
  expect(await filePublished(folder).put('index.html', page, null)).toEqual(expect.any(String));
  expect(performance.now() - began).toBeLessThan(2000);
  // Where there is none there is nothing to break.
  await breakLock(folder);
});

test('nobody breaks it: it counts as left behind before the writer gives up', async () => {
  await leaveLock();
  expect(await filePublished(folder).put('index.html', page, null)).toEqual(expect.any(String));
}, 30_000);
