import { v7 } from 'uuid';
import { acceptable } from '../../../shared/inventory/choices.ts';
import { importFields } from '../../../shared/inventory/mapping/fields.ts';
import { ImportRefused } from '../../../shared/inventory/refused.ts';
import { say, sayProblem } from '../../../shared/words/index.ts';
import { accountName } from '../account.ts';
import { readOptions } from '../import/options.ts';
import { runImport } from '../import/run.ts';
import { importStores } from '../import/stores.ts';
import { fromCaller } from '../options.ts';
import { askedLocale, command } from '../terminal.ts';

/** `npm run import -- FILE`: reads an inventory, reports on it and puts it in force. Exit 2: the file or the command line has to change. */
await command(async () => {
  const argv = process.argv.slice(2);
  const locale = askedLocale(argv);
  try {
    const now = new Date().toISOString();
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
        account: accountName,
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
