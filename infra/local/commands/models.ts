import { v7 } from 'uuid';
import { ImportRefused } from '../../../shared/inventory/refused.ts';
import { say } from '../../../shared/words/index.ts';
import { accountName } from '../account.ts';
import { deploymentOf, openAccess } from '../deployed/access.ts';
import { exampleCsv } from '../import/models/example.ts';
import { readModelOptions } from '../import/models/options.ts';
import { runModelImport, sayDoubt } from '../import/models/run.ts';
import { modelServer, modelServerThere } from '../import/models/server.ts';
import { dataDir, fromCaller } from '../options.ts';
import { askedLocale, command } from '../terminal.ts';

/** `npm run models -- FILE.csv`: reads hydrant models, and records them when nothing is doubtful. Exit 2: the file or the command line has to change. */
await command(async () => {
  const argv = process.argv.slice(2);
  const locale = askedLocale(argv);
  try {
    const options = readModelOptions(argv, locale);
    if (options === 'help') console.log(say(locale, 'models.help'));
    else if (options === 'example') process.stdout.write(exampleCsv);
    else
      await runModelImport(
        { ...options, file: fromCaller(options.file) },
        {
          openServer: async (personId) => {
            const deployment = deploymentOf(process.env);
            return deployment === null
              ? modelServer(dataDir(process.env), personId, options.locale)
              : modelServerThere(await openAccess(deployment, process.env), options.locale);
          },
          now: () => new Date().toISOString(),
          newId: () => v7(),
          account: accountName,
          print: (line) => console.log(line),
        },
      );
  } catch (error) {
    if (!(error instanceof ImportRefused)) throw error;
    for (const each of error.problems) console.error(sayDoubt(each, locale));
    process.exitCode = 2;
  }
});
