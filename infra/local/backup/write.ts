import { createHash } from 'node:crypto';
import { createWriteStream } from 'node:fs';
import { open, rename, rm } from 'node:fs/promises';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { createGzip } from 'node:zlib';
import { inTurns } from '../../../functions/project/deps.ts';
import { fingerprint } from '../../../functions/project/fingerprint.ts';
import { backedUp, type BackedUp, type BackupTables } from '../../../functions/stores/backup/backupTables.ts';
import { toRowJson } from '../../../functions/stores/backup/rowJson.ts';
import type { ProjectionStore } from '../../../functions/stores/projections/projections.ts';
import { partitions } from '../../../shared/projections/items.ts';
import { RefusedStart } from '../refusedStart.ts';
import { BACKUP_FORMAT, BACKUP_OF, type End, type Head, type RowLine } from './format.ts';

export interface BackupDeps {
  readonly tables: BackupTables;
  readonly projections: ProjectionStore;
  /** Whether the bytes of a document are in the evidence store. */
  readonly held: (sha256: string) => Promise<boolean>;
  readonly now: () => Date;
}

/**
 * Writes everything that nothing can compute anew into one new file, whole or not at all, readable by its owner alone: it
 * holds people's names. Answers what the file's end says. Throws `RefusedStart` when there is such a file already.
 */
export async function writeBackup(deps: BackupDeps, file: string): Promise<End> {
  // The name is taken first: two who write the same backup at once, and a file that stands, are told before the work.
  const unfinished = `${file}.unfinished`;
  await (await open(file, 'wx', 0o600).catch(taken(file))).close();
  try {
    let end: End | undefined;
    await pipeline(
      Readable.from(lines(deps, (written) => (end = written))),
      createGzip(),
      createWriteStream(unfinished, { mode: 0o600, flush: true }),
    );
    if (end === undefined) throw new Error('a backup ended without its end');
    await rename(unfinished, file);
    return end;
  } catch (error) {
    await rm(unfinished, { force: true });
    await rm(file, { force: true });
    throw error;
  }
}

const taken = (file: string) => (error: unknown) => {
  if ((error as NodeJS.ErrnoException).code === 'EEXIST')
    throw new RefusedStart('backup.file-there', { file });
  throw new RefusedStart('backup.file-unwritable', {
    file,
    reason: (error as NodeJS.ErrnoException).code ?? String(error),
  });
};

/** The text of a backup, a page of a table at a time. */
async function* lines(
  { tables, projections, held, now }: BackupDeps,
  done: (end: End) => void,
): AsyncGenerator<string> {
  const hash = createHash('sha256');
  const text = (values: readonly unknown[]): string => {
    const written = values.map((value) => `${JSON.stringify(value)}\n`).join('');
    hash.update(written, 'utf8');
    return written;
  };
  const head: Head = { backupOf: BACKUP_OF, format: BACKUP_FORMAT, takenAt: now().toISOString() };
  yield text([head]);

  // Before the tables, so that it is of no more facts than they hold.
  const kept = await fingerprint(projections);
  const rows: Record<BackedUp, number> = { submissions: 0, personal: 0, unique: 0, outbox: 0 };
  for (const table of backedUp)
    for await (const page of tables[table].scan()) {
      rows[table] += page.length;
      yield text(page.map((row): RowLine => ({ table, ...toRowJson(row) })));
    }

  const named = (await projections.list(partitions.exhibits)).map(({ key }) => key);
  const there = await inTurns(named, held);
  const evidence = named.filter((_, at) => there[at]);
  yield text(evidence.map((sha256) => ({ evidence: sha256 })));

  const end: End = {
    rows,
    evidence: evidence.length,
    awaited: named.length - evidence.length,
    projections: kept,
    sha256: hash.digest('hex'),
  };
  yield `${JSON.stringify({ end })}\n`;
  done(end);
}
