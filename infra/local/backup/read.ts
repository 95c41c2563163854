import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { createGunzip } from 'node:zlib';
import { backedUp, type BackedUp } from '../../../functions/stores/backup/backupTables.ts';
import { RefusedStart } from '../refusedStart.ts';
import {
  BACKUP_FORMAT,
  BACKUP_OF,
  end,
  evidenceLine,
  head,
  rowLine,
  type End,
  type Head,
  type RowLine,
} from './format.ts';

export interface WholeBackup {
  readonly head: Head;
  readonly end: End;
  /** Hashes of what stood in the evidence store. */
  readonly evidence: readonly string[];
}

/**
 * Reads a backup from its first byte to its last before anything is done with it. Throws `RefusedStart` for a file that
 * is none, that was cut off, or of which one byte is not as it was written.
 */
export async function checkBackup(file: string): Promise<WholeBackup> {
  const hash = createHash('sha256');
  let first: Head | undefined;
  let last: End | undefined;
  const evidence: string[] = [];
  const rows: Record<BackedUp, number> = { submissions: 0, personal: 0, unique: 0, outbox: 0 };
  for await (const line of linesOf(file)) {
    if (last !== undefined) throw changed(file);
    const value = parsed(line);
    if (first === undefined) first = headOf(file, value);
    else {
      const ending = end.safeParse(value);
      if (ending.success) {
        last = ending.data.end;
        continue;
      }
      const row = rowLine.safeParse(value);
      const held = evidenceLine.safeParse(value);
      if (row.success) rows[row.data.table] += 1;
      else if (held.success) evidence.push(held.data.evidence);
      else throw changed(file);
    }
    hash.update(`${line}\n`, 'utf8');
  }
  if (first === undefined || last === undefined) throw new RefusedStart('backup.cut-off', { file });
  const counted =
    backedUp.every((name) => rows[name] === last.rows[name]) && evidence.length === last.evidence;
  if (!counted || hash.digest('hex') !== last.sha256) throw changed(file);
  return { head: first, end: last, evidence };
}

/** The rows of a backup that `checkBackup` has found whole, in the order in which they were read. */
export async function* rowsOf(file: string): AsyncGenerator<RowLine> {
  for await (const line of linesOf(file)) {
    const row = rowLine.safeParse(parsed(line));
    if (row.success) yield row.data;
  }
}

const changed = (file: string): RefusedStart => new RefusedStart('backup.changed', { file });

function headOf(file: string, value: unknown): Head {
  const read = head.safeParse(value);
  if (read.success) return read.data;
  const { backupOf, format } = (value ?? {}) as { backupOf?: unknown; format?: unknown };
  if (backupOf === BACKUP_OF && typeof format === 'number' && format > BACKUP_FORMAT)
    throw new RefusedStart('backup.newer', { file, format, newest: BACKUP_FORMAT });
  throw new RefusedStart('backup.not-one', { file });
}

function parsed(line: string): unknown {
  try {
    return JSON.parse(line);
  } catch {
    return undefined;
  }
}

/**
 * Lines of a gzipped file, ended by a line feed and by nothing else: text may hold the other separators that readers of
 * lines know. What the disk or the packing says is wrong becomes a sentence.
 */
async function* linesOf(file: string): AsyncGenerator<string> {
  const source = createReadStream(file);
  const unpacked = source.pipe(createGunzip());
  unpacked.setEncoding('utf8');
  // A pipe passes no error on, and without one the lines would only wait.
  source.on('error', (error) => unpacked.destroy(error));
  let rest = '';
  try {
    for await (const chunk of unpacked as AsyncIterable<string>) {
      const parts = (rest + chunk).split('\n');
      rest = parts.pop() ?? '';
      yield* parts;
    }
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code ?? '';
    if (code === 'Z_BUF_ERROR') throw new RefusedStart('backup.cut-off', { file });
    if (code === 'Z_DATA_ERROR') throw new RefusedStart('backup.not-one', { file });
    if (/^E[A-Z]+$/.test(code)) throw new RefusedStart('backup.file-unreadable', { file, reason: code });
    throw error;
  } finally {
    source.destroy();
    unpacked.destroy();
  }
  // The end of a backup is a whole line; what follows the last one was cut off.
  if (rest !== '') throw new RefusedStart('backup.cut-off', { file });
}
