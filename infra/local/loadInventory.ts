import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { v7 } from 'uuid';
import { recordLoad } from '../../functions/submissions/inventoryLoads.ts';
import { appendDeps, inventoryStore } from '../../functions/wiring.ts';
import { runImport } from './import/run.ts';
import { readOptions } from './import/options.ts';

/** Puts a CSV in force by the import command's own code, without its report on the terminal. */
export async function loadInventoryCsv(csv: string, fileName: string, by: string): Promise<void> {
  const folder = await mkdtemp(join(tmpdir(), 'hsl-import-'));
  try {
    const file = join(folder, basename(fileName));
    await writeFile(file, csv);
    const options = readOptions([file, '--by', by], new Date().toISOString().slice(0, 10), 'en');
    if (options === 'help') throw new Error('the import asked for its own help');
    await runImport(options, {
      openInventory: inventoryStore,
      lookAtInventory: async () => null,
      now: () => new Date().toISOString(),
      newId: () => v7(),
      account: () => by,
      recordLoad: (edition, meta) => recordLoad(appendDeps(), edition, meta),
      print: () => undefined,
    });
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}
