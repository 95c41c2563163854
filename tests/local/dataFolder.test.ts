import { mkdtemp, mkdir, readdir, rm, writeFile } from 'node:fs/promises';
import { createServer } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { openDataFolder, removeDataFolder } from '../../infra/local/dataFolder.ts';
import { RefusedStart } from '../../infra/local/refusedStart.ts';

let base: string;
let folder: string;
beforeEach(async () => {
  base = await mkdtemp(join(tmpdir(), 'hsl-folder-'));
  folder = join(base, 'data');
});
afterEach(() => rm(base, { recursive: true, force: true }));

const refusal = (promise: Promise<unknown>): Promise<string> =>
  promise.then(
    () => 'accepted',
    (error: unknown) => (error instanceof RefusedStart ? error.key : String(error)),
  );

/** A server that answers as the instance it is, on a free port. */
async function serving(instance: string): Promise<{ origin: string; close: () => Promise<void> }> {
  const server = createServer((_request, response) => response.end(instance));
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.address() as { port: number };
  return {
    origin: `http://127.0.0.1:${port}`,
    close: () => new Promise((resolve) => server.close(() => resolve())),
  };
}

describe('the data folder', () => {
  it('is made, and keeps its keys from one start to the next', async () => {
    const first = await openDataFolder(folder);
    expect(first.keys.issuerKey).toMatchObject({ kty: 'EC', alg: 'ES256' });
    await first.markClosed();
    const second = await openDataFolder(folder);
    expect(second.keys).toEqual(first.keys);
  });

  it('knows whether the last server on it closed', async () => {
    const first = await openDataFolder(folder);
    expect(first.closedCleanly).toBe(true);
    await mkdir(first.dynamodb);
    const second = await openDataFolder(folder);
    expect(second.closedCleanly).toBe(false);
    await second.markClosed();
    expect((await openDataFolder(folder)).closedCleanly).toBe(true);
    expect((await openDataFolder(folder)).closedCleanly).toBe(false);
  });

  it('with files of other people is neither used nor deleted', async () => {
    await mkdir(folder);
    await writeFile(join(folder, 'thesis.txt'), 'mine');
    expect(await refusal(openDataFolder(folder))).toBe('command.folder-not-ours');
    expect(await refusal(removeDataFolder(folder))).toBe('command.folder-not-ours');
    expect(await readdir(folder)).toEqual(['thesis.txt']);
  });

  it('that cannot be a folder is refused', async () => {
    await writeFile(folder, 'a file stands here');
    expect(await refusal(openDataFolder(folder))).toBe('command.folder-unwritable');
    expect(await refusal(openDataFolder(join(folder, 'below')))).toBe('command.folder-unwritable');
  });

  it('is not opened or deleted while its server answers, and is when that server is gone', async () => {
    const opened = await openDataFolder(folder);
    const server = await serving('instance-1');
    await opened.markRunning({ origin: server.origin, instance: 'instance-1' });
    expect(await refusal(openDataFolder(folder))).toBe('command.folder-in-use');
    expect(await refusal(removeDataFolder(folder))).toBe('command.folder-in-use');
    await server.close();
    expect(await refusal(openDataFolder(folder))).toBe('accepted');
    expect(await removeDataFolder(folder)).toBe(true);
    expect(await readdir(base)).toEqual([]);
    expect(await removeDataFolder(folder)).toBe(false);
  });

  it('is free when another program answers at the address its killed server left', async () => {
    const opened = await openDataFolder(folder);
    const server = await serving('something else');
    await opened.markRunning({ origin: server.origin, instance: 'instance-1' });
    expect(await refusal(openDataFolder(folder))).toBe('accepted');
    await server.close();
  });
});
