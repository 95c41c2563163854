import { userInfo } from 'node:os';
import { resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { objectInventory } from '../../../functions/stores/inventory/objectInventory.ts';
import { objectModels } from '../../../functions/stores/network/objectModels.ts';
import { openObjectStore } from '../../../functions/stores/objects/open.ts';
import { environmentNames } from '../../../shared/deployment/environment.ts';
import { ImportRefused } from '../../../shared/inventory/refused.ts';
import { sayQuantityProblem } from '../../../shared/water/say.ts';
import { isLocale, say } from '../../../shared/words/index.ts';
import { claimDataFolder, inventoryFolder, networkFolder } from '../dataFolder.ts';
import { readNetworkOptions } from '../network/options.ts';
import { runNetworkLoad } from '../network/run.ts';
import { dataDir, ownSettings } from '../options.ts';
import { demoUtility } from '../demo/index.ts';
import { command, terminalLocale } from '../terminal.ts';

/** Paths on the command line are meant from where the person stands; npm runs the script in the project's folder. */
const fromCaller = (path: string): string => resolve(process.env['INIT_CWD'] ?? '.', path);

/** An object store named by the environment (a deployment's bucket), else a folder of this machine's data. */
async function open(name: string, folder: (root: string) => string) {
  const named = process.env[name] ?? '';
  return openObjectStore(
    named === '' ? pathToFileURL(folder(await claimDataFolder(dataDir(process.env)))).href : named,
  );
}

/** `npm run network -- FILE.inp --dated DAY`: reads a network model, reports on it and puts it in force. Exit 2: the file or the command line has to change. */
await command(async () => {
  const argv = process.argv.slice(2);
  const asked = argv[argv.indexOf('--lang') + 1];
  const locale = argv.includes('--lang') && isLocale(asked) ? asked : terminalLocale();
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
        account: () => userInfo().username,
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
