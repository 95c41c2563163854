import { createWriteStream } from 'node:fs';
import { join } from 'node:path';
import { logLine, logTo } from '../../../functions/log/log.ts';
import { roles } from '../../../shared/roles.ts';
import { builtSite, buildSite, siteIsCurrent } from '../buildSite.ts';
import { openDataFolder } from '../dataFolder.ts';
import { demoUtility } from '../demo/index.ts';
import { demoPeople, ensureDemo } from '../demoState.ts';
import { signInPath } from '../localRoutes.ts';
import { startLocalServer } from '../localServer.ts';
import { dataDir, ownSettings, portOf } from '../options.ts';
import { membersFor } from '../people.ts';
import { command, tell } from '../terminal.ts';

/** `npm start`: the whole house on one port. */
await command(async () => {
  const began = performance.now();
  const own = ownSettings(process.env);
  const port = portOf(process.env);
  const folder = await openDataFolder(dataDir(process.env));

  const logFile = createWriteStream(join(folder.path, 'server.log'), { flags: 'a' });
  logTo((line, level) => {
    logFile.write(`${line}\n`);
    if (level === 'error') console.error(line);
  });

  if (!(await siteIsCurrent())) {
    tell('command.building-site');
    await buildSite();
  }
  const server = await startLocalServer({
    folder,
    port,
    host: process.env['HOST'] ?? '127.0.0.1',
    settings: own ?? demoUtility,
    members: own ? membersFor(own, {}) : demoPeople,
    client: builtSite.client,
    log: logLine,
    replaying: () => tell('command.replaying'),
  });
  closeOnSignal(server.close);
  try {
    const packet = own ? null : await ensureDemo(server, folder.path, () => tell('command.loading-demo'));
    await server.following.publishNow();
    server.following.startPublishing((own ?? demoUtility).publishing.everyMinutes);
    tellWhere(server.origin, packet);
    tell('command.ready', { seconds: ((performance.now() - began) / 1000).toFixed(1), folder: folder.path });
  } catch (error) {
    await server.close();
    throw error;
  }
});

function tellWhere(origin: string, packet: string | null): void {
  tell('command.line-public', { url: `${origin}/` });
  tell('command.line-crew', { url: `${origin}/crew/` });
  tell('command.line-desk', { url: `${origin}/desk/` });
  for (const role of roles) tell('command.line-sign-in', { role, url: origin + signInPath(role) });
  if (packet !== null) tell('command.line-packet', { path: packet });
}

/** Ctrl-C closes cleanly; a second one does not wait. */
function closeOnSignal(close: () => Promise<void>): void {
  let asked = false;
  for (const signal of ['SIGINT', 'SIGTERM'] as const)
    process.on(signal, () => {
      if (asked) process.exit(130);
      asked = true;
      tell('command.stopping');
      close().then(
        () => process.exit(0),
        (error: unknown) => {
          console.error(error);
          process.exit(1);
        },
      );
    });
}
