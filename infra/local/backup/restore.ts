import { eraseAgain } from '../../../functions/erasures/erase.ts';
import { inTurns, type ProjectorDeps } from '../../../functions/project/deps.ts';
import { fingerprint, type Fingerprint } from '../../../functions/project/fingerprint.ts';
import { rebuild } from '../../../functions/project/rebuild.ts';
import { filledTables, type BackedUp } from '../../../functions/stores/backup/backupTables.ts';
import { erasedRows, putBack, type PutBack } from '../../../functions/stores/backup/putBack.ts';
import { fromRowJson } from '../../../functions/stores/backup/rowJson.ts';
import type { Erasures } from '../../../functions/stores/erasures/erasures.ts';
import type { Unique } from '../../../functions/stores/unique/unique.ts';
import type { Log } from '../../../functions/log/log.ts';
import { uploadsSpace } from '../../../shared/deployment/tables.ts';
import { streamOfSubmission } from '../../../shared/submissions/submission.ts';
import { RefusedStart } from '../refusedStart.ts';
import type { RowLine } from './format.ts';
import { checkBackup, rowsOf, type WholeBackup } from './read.ts';
import type { BackupDeps } from './write.ts';

export interface RestoreDeps extends Omit<BackupDeps, 'now'> {
  readonly projector: ProjectorDeps;
  readonly unique: Unique;
  readonly erasures: Erasures;
  readonly log: Log;
}

export interface Restored {
  readonly backup: WholeBackup;
  readonly rows: Readonly<Record<PutBack, number>>;
  /** Rows that stand with another content, by table and key. What changes by itself (a letter's state) is not among them. */
  readonly others: readonly { readonly table: BackedUp; readonly key: string }[];
  readonly erasures: number;
  /** Items that are not what the facts say, after the rebuild. */
  readonly left: number;
  readonly kept: Fingerprint;
  /** Evidence that stood when the backup was made and stands no more, by SHA-256. */
  readonly missing: readonly string[];
}

/** Rows under way at once. */
const AT_ONCE = 32;
/** Rows read before they are written. */
const BATCH = 512;
/** Letters and messages change as they go out, and uploads are counted: of these the one that stands is the later. */
const changes = ({ table, key: [partition] }: RowLine): boolean =>
  table === 'outbox' || (table === 'unique' && partition === uploadsSpace);

/**
 * Puts a backup into empty tables, or with `addMissing` what is missing into those that hold something; erases anew what
 * was erased since it was made; computes what is kept for reading; and looks that every file of evidence still stands.
 * The file is read whole before anything is written. Throws `RefusedStart` for a file that is not whole, and for tables
 * that hold something.
 */
export async function restoreBackup(
  deps: RestoreDeps,
  file: string,
  { addMissing }: { readonly addMissing: boolean },
): Promise<Restored> {
  const backup = await checkBackup(file);
  const filled = await filledTables(deps.tables);
  if (filled.length > 0 && !addMissing)
    throw new RefusedStart('backup.not-empty', { tables: filled.join(', ') });

  const listed = await deps.erasures.list();
  const erased = erasedRows(
    listed.map(({ submission }) => ({
      stream: streamOfSubmission(submission),
      targetIds: submission.body.targetIds,
    })),
  );
  const rows: Record<PutBack, number> = { added: 0, same: 0, other: 0, erased: 0 };
  const others: { table: BackedUp; key: string }[] = [];
  const put = async (line: RowLine): Promise<void> => {
    const { table, key, attributes } = line;
    const became = await putBack(deps.tables, table, fromRowJson({ key, attributes }), erased);
    rows[became] += 1;
    if (became === 'other' && !changes(line)) others.push({ table, key: key.join(' ') });
  };
  // Facts last: where something follows them at once, it finds the messages that were sent of them, and sends none again.
  for (const facts of [false, true])
    for await (const batch of batches(rowsOf(file)))
      await inTurns(
        batch.filter(({ table }) => (table === 'submissions') === facts),
        put,
        AT_ONCE,
      );

  const erasures = await eraseAgain({
    ledger: deps.projector.ledger,
    unique: deps.unique,
    erasures: deps.erasures,
    log: deps.log,
    // The rebuild that follows computes everything at once.
    afterAppend: async () => undefined,
  });
  const { left } = await rebuild(deps.projector, { write: true });
  const there = await inTurns(backup.evidence, deps.held);
  return {
    backup,
    rows,
    others,
    erasures,
    left: left.length,
    kept: await fingerprint(deps.projections),
    missing: backup.evidence.filter((_, at) => !there[at]),
  };
}

async function* batches(rows: AsyncIterable<RowLine>): AsyncGenerator<readonly RowLine[]> {
  let batch: RowLine[] = [];
  for await (const row of rows) {
    batch.push(row);
    if (batch.length < BATCH) continue;
    yield batch;
    batch = [];
  }
  if (batch.length > 0) yield batch;
}
