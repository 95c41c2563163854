import { existsSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import { objectInventory } from '../../../functions/stores/inventory/objectInventory.ts';
import { objectLayers } from '../../../functions/stores/layers/objectLayers.ts';
import { openObjectStore } from '../../../functions/stores/objects/open.ts';
import { environmentNames, layersUrl } from '../../../shared/deployment/environment.ts';
import { ImportRefused } from '../../../shared/inventory/refused.ts';
import { say, sayProblem } from '../../../shared/words/index.ts';
import { accountName } from '../account.ts';
import { claimDataFolder, inventoryFolder } from '../dataFolder.ts';
import { readLayerOptions } from '../import/layers/options.ts';
import { runLayerLoad } from '../import/layers/run.ts';
import { namedStore } from '../import/stores.ts';
import { dataDir, fromCaller } from '../options.ts';
import { askedLocale, command } from '../terminal.ts';

/** The inventory's store, beside which the layers are kept: named by the environment (a deployment's bucket), else this machine's. */
const inventoryUrl = (): string =>
  namedStore(process.env, environmentNames.inventoryUrl) ??
  pathToFileURL(inventoryFolder(dataDir(process.env))).href;

/** `npm run layers -- FILE --as streets`: reads a layer, reports on it and puts it in force. Exit 2: the file or the command line has to change. */
await command(async () => {
  const argv = process.argv.slice(2);
  const locale = askedLocale(argv);
  try {
    const options = readLayerOptions(argv, locale);
    if (options === 'help') {
      console.log(say(locale, 'layers.help'));
      return;
    }
    await runLayerLoad(
      {
        ...options,
        file: options.file === null ? null : fromCaller(options.file),
        report: options.report === null ? null : fromCaller(options.report),
      },
      {
        lookAtInventory: async () => {
          const url = inventoryUrl();
          return url.startsWith('file:') && !existsSync(new URL(url))
            ? null
            : objectInventory(await openObjectStore(url));
        },
        openLayers: async () => {
          if (inventoryUrl().startsWith('file:')) await claimDataFolder(dataDir(process.env));
          return objectLayers(await openObjectStore(layersUrl(inventoryUrl())));
        },
        now: () => new Date().toISOString(),
        account: accountName,
        print: (line) => console.log(line),
      },
    );
  } catch (error) {
    if (!(error instanceof ImportRefused)) throw error;
    for (const each of error.problems) console.error(sayProblem(locale, each));
    process.exitCode = 2;
  }
});
