import { builtSite } from '../../infra/local/buildSite.ts';
import { openDataFolder } from '../../infra/local/dataFolder.ts';
import { demoMembers, demoUtility, loadDemo } from '../../infra/local/demo/index.ts';
import { loadInventoryCsv } from '../../infra/local/loadInventory.ts';
import { startLocalServer } from '../../infra/local/localServer.ts';
import { membersFor } from '../../infra/local/people.ts';

/**
 * A child process: the real local server with the built site, for browser tests. `DATA_DIR`, `PORT`, `CLIENT_DIR`;
 * `LOAD=town` (demo utility and its strikes), `INVENTORY_CSV` (a small inventory), or nothing. Prints `ready <origin>`.
 */
const { DATA_DIR = '', PORT = '', CLIENT_DIR, LOAD, INVENTORY_CSV } = process.env;
const members = membersFor(demoUtility, demoMembers);
const server = await startLocalServer({
  folder: await openDataFolder(DATA_DIR),
  port: Number(PORT),
  host: '127.0.0.1',
  settings: demoUtility,
  members,
  client: CLIENT_DIR ?? builtSite.client,
  log: ({ level, ...rest }) => {
    if (level === 'error') process.stderr.write(`${JSON.stringify(rest)}\n`);
  },
  replaying: () => undefined,
});
if (LOAD === 'town')
  await loadDemo(
    {
      origin: server.origin,
      tokenFor: (role) => server.issuer.tokenFor(members[role]),
      loadInventory: (csv, name) => loadInventoryCsv(csv, name, demoMembers.manager),
    },
    new Date(),
  ).catch((error: unknown) => process.stderr.write(`demo: ${String(error)}\n`));
if (INVENTORY_CSV) await loadInventoryCsv(INVENTORY_CSV, 'small.csv', demoMembers.manager);
await server.following.settled();
process.stdout.write(`ready ${server.origin}\n`);
process.on('SIGTERM', () => {
  void server.close().then(() => process.exit(0));
});
