import { pathToFileURL } from 'node:url';
import { objectInventory } from '../../../functions/stores/inventory/objectInventory.ts';
import { objectModels } from '../../../functions/stores/network/objectModels.ts';
import { openObjectStore } from '../../../functions/stores/objects/open.ts';
import { environmentNames } from '../../../shared/deployment/environment.ts';
import { ImportRefused } from '../../../shared/inventory/refused.ts';
import { sayQuantityProblem } from '../../../shared/water/say.ts';
import { say } from '../../../shared/words/index.ts';
import { accountName } from '../account.ts';
import { claimDataFolder, inventoryFolder, networkFolder } from '../dataFolder.ts';
import { namedStore } from '../import/stores.ts';
import { readNetworkOptions } from '../network/options.ts';
import { runNetworkLoad } from '../network/run.ts';
import { dataDir, fromCaller, ownSettings } from '../options.ts';
import { demoUtility } from '../demo/index.ts';
import { askedLocale, command } from '../terminal.ts';

/** An object store named by the environment (a deployment's bucket), else a folder of this machine's data. */
async function open(name: string, folder: (root: string) => string) {
  return openObjectStore(
    namedStore(process.env, name) ?? pathToFileURL(folder(await claimDataFolder(dataDir(process.env)))).href,
  );
}

/** `npm run network -- FILE.inp --dated DAY`: reads a network model, reports on it and puts it in force. Exit 2: the file or the command line has to change. */
await command(async () => {
  const argv = process.argv.slice(2);
  const locale = askedLocale(argv);
  const reader = { locale, system: (ownSettings(process.env) ?? demoUtility).units };
  try {
    const options = readNetworkOptions(argv, locale);
    if (options === 'help') {
      console.log(say(locale, 'network.command.help'));
      return;
    }
    await runNetworkLoad(
      {
        ...options,
        file: fromCaller(options.file),
        nodes: options.nodes === null ? null : fromCaller(options.nodes),
      },
      {
        inventory: objectInventory(await open(environmentNames.inventoryUrl, inventoryFolder)),
        openModels: async () => objectModels(await open(environmentNames.networkUrl, networkFolder)),
        now: () => new Date().toISOString(),
        account: accountName,
        reader,
        print: (line) => console.log(line),
      },
    );
  } catch (error) {
    if (!(error instanceof ImportRefused)) throw error;
    for (const each of error.problems) console.error(sayQuantityProblem(each, reader));
    process.exitCode = 2;
  }
});
