import { removeDataFolder } from '../dataFolder.ts';
import { dataDir } from '../options.ts';
import { command, tell } from '../terminal.ts';

/** `npm run reset`: deletes the data folder, if it is ours and no server uses it. */
await command(async () => {
  const folder = dataDir(process.env);
  tell((await removeDataFolder(folder)) ? 'command.reset-done' : 'command.reset-nothing', { folder });
});
