import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import {
  backedUp,
  memoryBackupTables,
  type BackupTables,
} from '../../../functions/stores/backup/backupTables.ts';
import { projectStream } from '../../../functions/project/project.ts';
import { memoryTable } from '../../../functions/stores/dynamodb/memoryTable.ts';
import { storesOn, type TableStores } from '../../../functions/stores/dynamodb/stores.ts';
import type { Row } from '../../../functions/stores/dynamodb/table.ts';
import type { Erasures } from '../../../functions/stores/erasures/erasures.ts';
import { objectErasures } from '../../../functions/stores/erasures/objectErasures.ts';
import { memoryObjects } from '../../../functions/stores/objects/memory.ts';
import type { RestoreDeps } from '../../../infra/local/backup/restore.ts';
import { writeBackup } from '../../../infra/local/backup/write.ts';
import { streamOfSubmission, type Submission } from '../../../shared/submissions/submission.ts';

export const takenAt = '2026-03-05T06:00:00.000Z';

/** A utility whose tables can be backed up, with its evidence by hash. */
export interface Utility {
  readonly tables: BackupTables;
  readonly stores: TableStores;
  readonly erasures: Erasures;
  readonly evidence: Set<string>;
  readonly deps: RestoreDeps;
}

export function utility({
  tables = memoryBackupTables(),
  stores = storesOn((name) => (name in tables ? tables[name as keyof BackupTables] : memoryTable())),
  evidence = new Set<string>(),
  erasures = objectErasures(memoryObjects()),
}: Partial<Omit<Utility, 'deps'>> = {}): Utility {
  const held = async (sha256: string): Promise<boolean> => evidence.has(sha256);
  return {
    tables,
    stores,
    erasures,
    evidence,
    deps: {
      tables,
      projections: stores.projections,
      projector: { ...stores, hydrantType: async () => 'dry-barrel', pause: async () => undefined },
      unique: stores.unique,
      erasures,
      held,
      log: () => undefined,
    },
  };
}

export async function accept({ stores, deps }: Utility, submissions: readonly Submission[]): Promise<void> {
  for (const submission of submissions) {
    await stores.ledger.accept(submission, { recordedAt: takenAt, deliveredBy: null });
    await projectStream(deps.projector, streamOfSubmission(submission));
  }
}

export const backUp = ({ tables, stores, deps }: Utility, file: string) =>
  writeBackup(
    { tables, projections: stores.projections, held: deps.held, now: () => new Date(takenAt) },
    file,
  );

/** Every row of the four tables, in one order. */
export async function rowsIn(tables: BackupTables): Promise<readonly (readonly [string, Row])[]> {
  const all: (readonly [string, Row])[] = [];
  for (const name of backedUp)
    for await (const page of tables[name].scan()) all.push(...page.map((row) => [name, row] as const));
  return all.sort((a, b) => (keyOf(a) < keyOf(b) ? -1 : 1));
}
const keyOf = ([name, { partition, sort }]: readonly [string, Row]): string =>
  JSON.stringify([name, partition, sort]);

/** A folder for the files of one test. */
export async function inFolder<T>(work: (at: (name: string) => string) => Promise<T>): Promise<T> {
  const folder = await mkdtemp(join(tmpdir(), 'backup-'));
  try {
    return await work((name) => join(folder, name));
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}
