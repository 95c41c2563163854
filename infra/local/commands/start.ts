import { createWriteStream } from 'node:fs';
import { join } from 'node:path';
import { logLine, logTo } from '../../../functions/log/log.ts';
import { roles } from '../../../shared/roles.ts';
import { say } from '../../../shared/words/index.ts';
import { builtSite, buildSite, siteIsCurrent } from '../buildSite.ts';
import { openDataFolder } from '../dataFolder.ts';
import { demoUtility } from '../demo/index.ts';
import { demoPeople, ensureDemo } from '../demoState.ts';
import { sendLettersDaily, type Letters } from '../letters.ts';
import { signInPath } from '../localRoutes.ts';
import { startLocalServer } from '../localServer.ts';
import { dataDir, ownSettings, portOf } from '../options.ts';
import { membersFor } from '../people.ts';
import { RefusedStart } from '../refusedStart.ts';
import { assertPortFree } from '../server.ts';
import { command, tell, terminalLocale } from '../terminal.ts';

/** `npm start`: the whole house on one port. */
await command(async () => {
  if (help(process.argv.slice(2))) return;
  const began = performance.now();
  const own = ownSettings(process.env);
  const port = portOf(process.env);
  const host = process.env['HOST'] ?? '127.0.0.1';
  // Before anything is built: a wrong port or folder is answered at once.
  await assertPortFree(port, host);
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
    host,
    settings: own ?? demoUtility,
    members: own ? membersFor(own, {}) : demoPeople,
    client: builtSite.client,
    log: logLine,
    replaying: () => tell('command.replaying'),
  });
  let letters: Letters | null = null;
  closeOnSignal(async () => {
    await letters?.stop();
    await server.close();
  });
  try {
    const packet = own ? null : await ensureDemo(server, folder.path, () => tell('command.loading-demo'));
    const published = await server.following.publishNow();
    server.following.startPublishing((own ?? demoUtility).publishing.everyMinutes);
    tellWhere(server.origin, packet);
    if (!published) tell('command.not-published', { log: join(folder.path, 'server.log') });
    letters = sendLettersDaily({
      settings: own ?? demoUtility,
      log: logLine,
      told: (sent) => tell('command.letters', { sent, folder: join(folder.path, 'mail') }),
    });
    tell('command.ready', { seconds: ((performance.now() - began) / 1000).toFixed(1), folder: folder.path });
  } catch (error) {
    await server.close();
    throw error;
  }
});

/** True when that was all. Anything else on the command line is refused: ignored, it would pass for done. */
function help(words: readonly string[]): boolean {
  const other = words.find((word) => word !== '--help' && word !== '-h');
  if (other !== undefined) throw new RefusedStart('command.no-such-option', { option: other });
  if (words.length === 0) return false;
  tell('command.start-help');
  for (const name of ['PORT', 'HOST', 'DATA_DIR', 'UTILITY_SETTINGS'] as const)
    console.log(`  ${name.padEnd(16)}  ${say(terminalLocale(), `command.start-help.${name}`)}`);
  console.log(`${say(terminalLocale(), 'command.start-help.example')}: PORT=4790 DATA_DIR=trial npm start`);
  return true;
}

function tellWhere(origin: string, packet: string | null): void {
  const locale = terminalLocale();
  const lines: [string, string][] = [
    [say(locale, 'command.line-public'), `${origin}/`],
    [say(locale, 'command.line-crew'), `${origin}/crew/`],
    [say(locale, 'command.line-desk'), `${origin}/desk/`],
    ...roles.map((role): [string, string] => [
      say(locale, 'command.line-sign-in', { role }),
      origin + signInPath(role),
    ]),
    ...(packet === null ? [] : [[say(locale, 'command.line-packet'), packet] satisfies [string, string]]),
  ];
  const width = Math.max(...lines.map(([label]) => label.length));
  for (const [label, where] of lines) console.log(`${label.padEnd(width)}  ${where}`);
}

/** npm passes on the Ctrl-C that the terminal has already sent to everyone, so one press arrives twice. */
const SAME_PRESS_MS = 1000;

/** Ctrl-C closes cleanly; a second press does not wait. */
function closeOnSignal(close: () => Promise<void>): void {
  let askedAt: number | null = null;
  for (const signal of ['SIGINT', 'SIGTERM'] as const)
    process.on(signal, () => {
      if (askedAt !== null) {
        if (performance.now() - askedAt > SAME_PRESS_MS) process.exit(130);
        return;
      }
      askedAt = performance.now();
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
