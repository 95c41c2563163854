import { userInfo } from 'node:os';
import { resolve } from 'node:path';
import { v7 } from 'uuid';
import { acceptable } from '../../../shared/inventory/choices.ts';
import { importFields } from '../../../shared/inventory/mapping/fields.ts';
import { ImportRefused } from '../../../shared/inventory/refused.ts';
import { isLocale, say, sayProblem, type Locale } from '../../../shared/words/index.ts';
import { readOptions } from '../import/options.ts';
import { runImport } from '../import/run.ts';
import { importStores } from '../import/stores.ts';
import { command, terminalLocale } from '../terminal.ts';

/** Paths on the command line are meant from where the person stands; npm runs the script in the project's folder. */
const fromCaller = (path: string): string => resolve(process.env['INIT_CWD'] ?? '.', path);

/** `npm run import -- FILE`: reads an inventory, reports on it and puts it in force. Exit 2: the file or the command line has to change. */
await command(async () => {
  const argv = process.argv.slice(2);
  let locale: Locale = terminalLocale();
  try {
    const now = new Date().toISOString();
    const asked = argv[argv.indexOf('--lang') + 1];
    if (argv.includes('--lang') && isLocale(asked)) locale = asked;
    const options = readOptions(argv, now.slice(0, 10), locale);
    if (options === 'help') {
      console.log(
        say(locale, 'inventory.help', { acceptable: acceptable.join(', '), fields: importFields.join(', ') }),
      );
      return;
    }
    const stores = importStores(process.env);
    await runImport(
      {
        ...options,
        file: fromCaller(options.file),
        report: options.report === null ? null : fromCaller(options.report),
      },
      {
        openInventory: stores.openInventory,
        lookAtInventory: stores.lookAtInventory,
        now: () => new Date().toISOString(),
        newId: () => v7(),
        account: () => userInfo().username,
        recordLoad: stores.recordLoad,
        print: (line) => console.log(line),
      },
    );
  } catch (error) {
    if (!(error instanceof ImportRefused)) throw error;
    for (const each of error.problems) console.error(sayProblem(locale, each));
    process.exitCode = 2;
  }
});
