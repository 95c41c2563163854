import { openDataFolder } from '../../../infra/local/dataFolder.ts';
import { demoUtility } from '../../../infra/local/demo/index.ts';
import { demoPeople } from '../../../infra/local/demoState.ts';
import { startLocalServer } from '../../../infra/local/localServer.ts';

/**
 * The local server as a process of its own, without demo and pages: `node serve.ts FOLDER PORT`. Prints one line of
 * JSON when it is ready; closes when its standard input does, so that it never outlives the test.
 */
const [path = '', port = '0'] = process.argv.slice(2);
let replayed = false;
const server = await startLocalServer({
  folder: await openDataFolder(path),
  port: Number(port),
  host: '127.0.0.1',
  settings: demoUtility,
  members: demoPeople,
  client: null,
  log: () => undefined,
  replaying: () => (replayed = true),
});
const tokens = {
  crew: await server.issuer.tokenFor(demoPeople.crew),
  clerk: await server.issuer.tokenFor(demoPeople.clerk),
  manager: await server.issuer.tokenFor(demoPeople.manager),
};
process.stdout.write(`${JSON.stringify({ origin: server.origin, tokens, replayed })}\n`);

process.stdin.resume();
process.stdin.on('end', () => void server.close().then(() => process.exit(0)));
