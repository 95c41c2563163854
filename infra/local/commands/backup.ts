import { say } from '../../../shared/words/index.ts';
import { writeBackup } from '../backup/write.ts';
import { readCommandLine } from '../commandLine.ts';
import { openOperatorStores } from '../operatorStores.ts';
import { fromCaller } from '../options.ts';
import { RefusedStart } from '../refusedStart.ts';
import { askedLocale, command, tell } from '../terminal.ts';

/** `npm run backup -- FILE`: everything that nothing can compute anew, in one file. */
await command(async () => {
  const argv = process.argv.slice(2);
  const { files, on, unknown, valueless } = readCommandLine(argv, { flags: [], valued: ['--lang'] });
  if (on.has('--help')) {
    console.log(say(askedLocale(argv), 'backup.help'));
    return;
  }
  const [named, ...more] = files;
  if (named === undefined || more.length + unknown.length + valueless.length > 0)
    throw new RefusedStart('backup.usage');
  const file = fromCaller(named);
  const opened = await openOperatorStores(process.env);
  try {
    const { held } = await opened.evidence();
    const end = await writeBackup(
      { tables: opened.backupTables, projections: opened.stores.projections, held, now: () => new Date() },
      file,
    );
    tell('backup.written', { file, ...end.rows, evidence: end.evidence, awaited: end.awaited });
    tell('backup.fingerprint', { ...end.projections });
  } finally {
    await opened.close(false);
  }
});
