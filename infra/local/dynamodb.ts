import { mkdir } from 'node:fs/promises';
import { createRequire } from 'node:module';
import type { Server } from 'node:http';
import { createTables, prefixedTableNames } from '../../functions/stores/dynamodb/createTables.ts';
import { dynamodbClient } from '../../functions/stores/dynamodb/client.ts';

/** The embedded store answers anyone on this machine and checks no signature; the SDK still wants to sign. */
const anyCredentials = {
  AWS_ACCESS_KEY_ID: 'local',
  AWS_SECRET_ACCESS_KEY: 'local',
  AWS_REGION: 'us-east-1',
};

export const localTableNames = prefixedTableNames('');

export interface EmbeddedDynamodb {
  readonly endpoint: string;
  /** Resolves when everything accepted so far is on disk and the folder is free for another process. */
  stop(): Promise<void>;
}

/** Another process holds the folder: the server runs, or did not end. */
export class FolderInUse extends Error {
  override readonly name = 'FolderInUse';
}

/**
 * Starts an embedded server of the DynamoDB API on 127.0.0.1 and creates the tables that are not there yet.
 * `folder` null keeps everything in memory; port 0 takes a free one. Rejects with node's `EADDRINUSE` when the port is
 * taken, and with `FolderInUse` when the folder is.
 */
export async function startDynamodb({
  folder,
  port,
}: {
  folder: string | null;
  port: number;
}): Promise<EmbeddedDynamodb> {
  setCredentials();
  const require = createRequire(import.meta.url);
  if (folder !== null) {
    await mkdir(folder, { recursive: true });
    await assertFree(folder, createRequire(require.resolve('dynalite')));
  }
  const dynalite = require('dynalite') as (options: object) => Server;
  const server = dynalite({
    ...(folder === null ? {} : { path: folder }),
    createTableMs: 0,
    deleteTableMs: 0,
    updateTableMs: 0,
  });
  await new Promise<void>((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, '127.0.0.1', resolve);
  });
  const address = server.address();
  if (address === null || typeof address === 'string') throw new Error('the embedded store has no port');
  const endpoint = `http://127.0.0.1:${address.port}`;
  const stop = (): Promise<void> =>
    new Promise((resolve, reject) => {
      server.close((error) => {
        if (error) reject(error);
        else resolve();
      });
      server.closeAllConnections();
    });
  const client = dynamodbClient(endpoint);
  try {
    await createTables(client, localTableNames);
  } catch (error) {
    // Whoever called has nothing to stop it by, and a command would never end.
    await stop();
    throw error;
  } finally {
    client.destroy();
  }
  return { endpoint, stop };
}

interface LevelModule {
  readonly Level: new (path: string) => { open(): Promise<void>; close(): Promise<void> };
}

/** The embedded server would fail in the middle of its first answer; opening the folder first tells in time. */
async function assertFree(folder: string, requireBesideDynalite: NodeJS.Require): Promise<void> {
  const { Level } = requireBesideDynalite('level') as LevelModule;
  const level = new Level(folder);
  try {
    await level.open();
  } catch (error) {
    const cause = (error as { cause?: { code?: string } }).cause;
    if (cause?.code === 'LEVEL_LOCKED') throw new FolderInUse(folder, { cause: error });
    throw error;
  } finally {
    await level.close();
  }
}

/** Sets what the SDK needs to sign, where the environment has nothing. Called before the first client is made. */
export function setCredentials(environment: NodeJS.ProcessEnv = process.env): void {
  for (const [name, value] of Object.entries(anyCredentials)) environment[name] ??= value;
}
