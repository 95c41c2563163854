import { logLine } from '../../../functions/log/log.ts';
import { say } from '../../../shared/words/index.ts';
import { restoreBackup, type Restored } from '../backup/restore.ts';
import { readCommandLine } from '../commandLine.ts';
import { openOperatorStores } from '../operatorStores.ts';
import { fromCaller } from '../options.ts';
import { RefusedStart } from '../refusedStart.ts';
import { askedLocale, command, tell } from '../terminal.ts';

/** Rows and files named one by one; the rest are counted. */
const MOST_NAMED = 20;

/** `npm run restore -- FILE`: a backup into empty tables. Exit 1 when it did not end in what was backed up. */
await command(async () => {
  const argv = process.argv.slice(2);
  const { files, on, unknown, valueless } = readCommandLine(argv, {
    flags: ['--add-missing'],
    valued: ['--lang'],
  });
  if (on.has('--help')) {
    console.log(say(askedLocale(argv), 'restore.help'));
    return;
  }
  const [named, ...more] = files;
  if (named === undefined || more.length + unknown.length + valueless.length > 0)
    throw new RefusedStart('restore.usage');
  const addMissing = on.has('--add-missing');
  const opened = await openOperatorStores(process.env);
  let right = false;
  try {
    const restored = await restoreBackup(
      {
        tables: opened.backupTables,
        projections: opened.stores.projections,
        projector: opened.projector,
        unique: opened.stores.unique,
        log: logLine,
        ...(await opened.evidence()),
      },
      fromCaller(named),
      { addMissing },
    );
    right = restored.left === 0;
    const same = told(restored);
    if (!right || restored.missing.length > 0 || restored.others.length > 0 || (!addMissing && !same))
      process.exitCode = 1;
  } finally {
    await opened.close(right);
  }
});

/** Prints what a restore did. Answers whether what is kept for reading is what was kept at the backup. */
function told({ backup, rows, others, erasures, left, kept, missing }: Restored): boolean {
  tell('restore.rows', { takenAt: backup.head.takenAt, ...rows });
  for (const { table, key } of others.slice(0, MOST_NAMED)) tell('restore.other', { table, key });
  if (erasures > 0) tell('restore.erasures', { count: erasures });
  if (left > 0) tell('command.rebuild-left', { count: left });
  tell('backup.fingerprint', { ...kept });
  const same = kept.sha256 === backup.end.projections.sha256;
  tell(same ? 'restore.same' : 'restore.not-same', { sha256: backup.end.projections.sha256 });
  for (const sha256 of missing.slice(0, MOST_NAMED)) tell('restore.missing', { sha256 });
  tell('restore.evidence', { there: backup.evidence.length - missing.length, missing: missing.length });
  return same;
}
