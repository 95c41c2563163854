import { removeDataFolder } from '../dataFolder.ts';
import { dataDir } from '../options.ts';
import { RefusedStart } from '../refusedStart.ts';
import { command, tell } from '../terminal.ts';

/**
 * `npm run reset`: deletes the data folder, if it is ours and no server uses it. Refuses every argument: who asks for
 * `--help`, or names a folder, means something else than to lose this one.
 */
await command(async () => {
  const option = process.argv[2];
  if (option !== undefined) throw new RefusedStart('command.reset-option', { option });
  const folder = dataDir(process.env);
  tell((await removeDataFolder(folder)) ? 'command.reset-done' : 'command.reset-nothing', { folder });
});
