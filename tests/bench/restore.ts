import { mkdtemp, rm, stat } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fingerprint } from '../../functions/project/fingerprint.ts';
import { rebuild } from '../../functions/project/rebuild.ts';
import {
  backedUp,
  dynamodbBackupTables,
  memoryBackupTables,
} from '../../functions/stores/backup/backupTables.ts';
import { dynamodbClient } from '../../functions/stores/dynamodb/client.ts';
import { memoryTable } from '../../functions/stores/dynamodb/memoryTable.ts';
import { dynamodbStores, storesOn } from '../../functions/stores/dynamodb/stores.ts';
import { objectErasures } from '../../functions/stores/erasures/objectErasures.ts';
import { memoryObjects } from '../../functions/stores/objects/memory.ts';
import { restoreBackup } from '../../infra/local/backup/restore.ts';
import { writeBackup } from '../../infra/local/backup/write.ts';
import { localTableNames, setCredentials } from '../../infra/local/dynamodb.ts';
import { killable } from '../support/killable.ts';
import type { BenchRow } from './row.ts';
import { years } from './support/years.ts';

/** A town's hundred years, or ten of a big city. */
const FACTS = Number(process.env['RESTORE_FACTS'] ?? 10_000);
export const limitS = 3600;
const counted = new Intl.NumberFormat('en-US');

/** `npm run bench -- restore`: a backup of so many facts, and its restore into the embedded store over HTTP. `RESTORE_FACTS` sets how many. */
export async function bench(): Promise<readonly BenchRow[]> {
  const folder = await mkdtemp(join(tmpdir(), 'bench-restore-'));
  const server = killable(join(import.meta.dirname, '../support/dynaliteChild.ts'), [
    join(folder, 'dynamodb'),
    '0',
  ]);
  setCredentials();
  const client = dynamodbClient(await server.start());
  try {
    const hydrantType = async () => 'dry-barrel' as const;
    const held = async () => true;
    const from = memoryBackupTables();
    const source = storesOn((table) => (table in from ? from[table as keyof typeof from] : memoryTable()));
    for (const submission of years(FACTS))
      await source.ledger.accept(submission, { recordedAt: submission.sentAt, deliveredBy: null });
    await rebuild({ ...source, hydrantType }, { write: true });

    const file = join(folder, 'backup');
    const written = await seconds(() =>
      writeBackup({ tables: from, projections: source.projections, held, now: () => new Date() }, file),
    );
    const bytes = (await stat(file)).size;

    const stores = dynamodbStores(client, localTableNames);
    const began = performance.now();
    const restored = await restoreBackup(
      {
        tables: dynamodbBackupTables(client, localTableNames),
        projections: stores.projections,
        projector: { ...stores, hydrantType },
        unique: stores.unique,
        erasures: objectErasures(memoryObjects()),
        held,
        log: () => undefined,
      },
      file,
      { addMissing: false },
    );
    const took = (performance.now() - began) / 1000;
    const same = (await fingerprint(source.projections)).sha256;
    if (restored.kept.sha256 !== same || restored.left > 0) throw new Error('the restore is not the same');
    const rows = backedUp.reduce((sum, name) => sum + restored.backup.end.rows[name], 0);
    const of = `${counted.format(FACTS)} facts`;
    return [
      { name: `backup of ${of}, from memory`, value: written, unit: 's' },
      { name: 'its size', value: bytes / 1e6, unit: 'MB' },
      {
        name: `restore of it, ${counted.format(rows)} rows over HTTP, with the rebuild`,
        value: took,
        unit: 's',
      },
    ];
  } finally {
    client.destroy();
    await server.kill();
    await rm(folder, { recursive: true, force: true });
  }
}

async function seconds(work: () => Promise<unknown>): Promise<number> {
  const began = performance.now();
  await work();
  return (performance.now() - began) / 1000;
}
