import { randomBytes } from 'node:crypto';
import { access, constants, mkdir, readdir, readFile, rename, rm, writeFile } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { exportJWK, generateKeyPair, type JWK } from 'jose';
import * as z from 'zod';
import { RefusedStart } from './refusedStart.ts';

/** The file that says a folder is ours to fill, and to delete on `npm run reset`. */
const MARKER = 'hydrant-strike-ledger.json';
const KEYS = 'keys.json';
const PACKET_KEY = 'packet-key.json';
const RUNNING = 'running.json';
const CLEAN = 'closed-cleanly';

/** Keys of the development issuer and of the evidence links, made once for each data folder. */
export interface LocalKeys {
  readonly issuerKey: JWK;
  readonly evidenceSecret: string;
}

export interface DataFolder {
  readonly path: string;
  readonly dynamodb: string;
  readonly objects: Readonly<Record<'evidence' | 'published' | 'inventory' | 'network', string>>;
  readonly keys: LocalKeys;
  /** The file of the key that signs packets, made once for each folder. */
  readonly packetKey: string;
  /** False when the last server on this folder was killed, so that what follows a fact may be missing. */
  readonly closedCleanly: boolean;
  /** Says which server uses the folder, so that a second one and a reset can tell. */
  markRunning(server: RunningServer): Promise<void>;
  markClosed(): Promise<void>;
}

const runningServer = z.object({ origin: z.url(), instance: z.string() });
/** A server that answers `GET <origin>/local/instance` with its instance. */
export type RunningServer = z.infer<typeof runningServer>;

/**
 * Opens the data folder, making it if need be. Refuses a folder that cannot be written, that holds other people's
 * files, or that another server uses.
 */
export async function openDataFolder(path: string): Promise<DataFolder> {
  const root = await claimDataFolder(path);
  const running = await serverUsing(root);
  if (running) throw new RefusedStart('command.folder-in-use', { folder: root, origin: running.origin });

  const objects = {
    evidence: join(root, 'objects', 'evidence'),
    published: join(root, 'objects', 'published'),
    inventory: inventoryFolder(root),
    network: networkFolder(root),
  };
  for (const folder of Object.values(objects)) await mkdir(folder, { recursive: true });
  const keys = await readKeys(root);
  const packetKey = await packetKeyFile(root);
  const dynamodb = join(root, 'dynamodb');
  // A folder in which nothing was ever stored has nothing left undone.
  const closedCleanly = (await exists(join(root, CLEAN))) || !(await exists(dynamodb));
  await rm(join(root, CLEAN), { force: true });
  return {
    path: root,
    dynamodb,
    objects,
    keys,
    packetKey,
    closedCleanly,
    markRunning: (server) => replaceFile(join(root, RUNNING), JSON.stringify(server)),
    async markClosed() {
      await rm(join(root, RUNNING), { force: true });
      await writeFile(join(root, CLEAN), '');
    },
  };
}

/** Where the inventory's files lie in a data folder. */
export const inventoryFolder = (root: string): string => join(root, 'objects', 'inventory');

/** Where the network models lie in a data folder. */
export const networkFolder = (root: string): string => join(root, 'objects', 'network');

/**
 * Makes the data folder if need be and marks it as ours, whether or not a server uses it: a command that only adds
 * files may run beside one. Answers its full path; refuses a folder that cannot be written or holds other people's
 * files.
 */
export async function claimDataFolder(path: string): Promise<string> {
  const root = resolve(path);
  try {
    await mkdir(root, { recursive: true });
    await access(root, constants.R_OK | constants.W_OK | constants.X_OK);
    // Root may write anywhere that `access` asks about, but not on a read-only disk: only a write tells.
    await writeFile(join(root, '.write-check'), '');
    await rm(join(root, '.write-check'));
  } catch {
    throw new RefusedStart('command.folder-unwritable', { folder: root });
  }
  await claim(root);
  return root;
}

/** Deletes the data folder. Refuses one that is not ours or that a server uses. False when there is none. */
export async function removeDataFolder(path: string): Promise<boolean> {
  const root = resolve(path);
  if (!(await exists(root))) return false;
  if (!(await exists(join(root, MARKER))))
    throw new RefusedStart('command.folder-not-ours', { folder: root });
  const running = await serverUsing(root);
  if (running) throw new RefusedStart('command.folder-in-use', { folder: root, origin: running.origin });
  await rm(root, { recursive: true });
  return true;
}

async function claim(root: string): Promise<void> {
  if (await exists(join(root, MARKER))) return;
  if ((await readdir(root)).length > 0) throw new RefusedStart('command.folder-not-ours', { folder: root });
  await writeFile(
    join(root, MARKER),
    `${JSON.stringify({ what: 'data of Hydrant Strike Ledger; npm run reset deletes this folder', format: 1 })}\n`,
  );
}

/** The server that uses this folder now. A file left by a killed server names one that no longer answers as itself. */
export async function serverUsing(root: string): Promise<RunningServer | null> {
  const text = await readFile(join(root, RUNNING), 'utf8').catch(() => null);
  if (text === null) return null;
  const parsed = runningServer.safeParse(parseOrNull(text));
  if (!parsed.success) return null;
  try {
    const answer = await fetch(`${parsed.data.origin}/local/instance`, { signal: AbortSignal.timeout(2000) });
    return (await answer.text()) === parsed.data.instance ? parsed.data : null;
  } catch {
    return null;
  }
}

/** The folder's keys, made when it has none yet. */
export async function readKeys(root: string): Promise<LocalKeys> {
  const file = join(root, KEYS);
  const text = await readFile(file, 'utf8').catch(() => null);
  if (text !== null) return JSON.parse(text) as LocalKeys;
  const { privateKey } = await generateKeyPair('ES256', { extractable: true });
  const keys: LocalKeys = {
    issuerKey: { ...(await exportJWK(privateKey)), alg: 'ES256', kid: randomBytes(8).toString('hex') },
    evidenceSecret: randomBytes(32).toString('base64url'),
  };
  await replaceFile(file, JSON.stringify(keys), 0o600);
  return keys;
}

/** The file of the key that signs packets, made when there is none yet. Lost, earlier packets can no longer be told ours. */
async function packetKeyFile(root: string): Promise<string> {
  const file = join(root, PACKET_KEY);
  if (await exists(file)) return file;
  const { privateKey } = await generateKeyPair('ES256', { extractable: true });
  await replaceFile(file, JSON.stringify(await exportJWK(privateKey)), 0o600);
  return file;
}

/** Whole or not at all, also when the process is killed in between. */
async function replaceFile(file: string, text: string, mode = 0o644): Promise<void> {
  await writeFile(`${file}.new`, text, { mode });
  await rename(`${file}.new`, file);
}

const exists = (path: string): Promise<boolean> =>
  access(path).then(
    () => true,
    () => false,
  );

function parseOrNull(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}
