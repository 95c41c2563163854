import { existsSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { logTo } from '../../functions/log/log.ts';
import { openDataFolder } from '../../infra/local/dataFolder.ts';
import { demoModels } from '../../infra/local/demo/models.ts';
import { demoRateBooks } from '../../infra/local/demo/rates.ts';
import { demoMembers, demoUtility, loadDemo } from '../../infra/local/demo/index.ts';
import { send } from '../../infra/local/demo/send.ts';
import { Teller } from '../../infra/local/demo/teller.ts';
import { townNetworkInp, townNetworkMeta } from '../../infra/local/demo/network.ts';
import { loadInventoryCsv } from '../../infra/local/loadInventory.ts';
import { loadTownLayers } from '../../infra/local/loadLayer.ts';
import { loadNetworkInp } from '../../infra/local/loadNetwork.ts';
import { startLocalServer } from '../../infra/local/localServer.ts';
import { membersFor } from '../../infra/local/people.ts';

/**
 * A child process of the browser tests: the real local server with the built site. `DATA_DIR`, `PORT`, `CLIENT_DIR`;
 * on an empty folder `LOAD=small` puts six hydrants, models and rates in force, `LOAD=town` the whole demo. Prints
 * `ready <origin>`.
 */
const { DATA_DIR = '', PORT = '', CLIENT_DIR = '', LOAD } = process.env;
// Standard output says when it is ready, and nothing before.
logTo((line, level) => {
  if (level === 'error') process.stderr.write(`${line}\n`);
});
const members = membersFor(demoUtility, demoMembers);
const server = await startLocalServer({
  folder: await openDataFolder(DATA_DIR),
  port: Number(PORT),
  host: '127.0.0.1',
  settings: demoUtility,
  members,
  client: CLIENT_DIR,
  log: ({ level, ...rest }) => {
    if (level === 'error') process.stderr.write(`${JSON.stringify(rest)}\n`);
  },
  replaying: () => undefined,
});
const api = {
  origin: server.origin,
  tokenFor: (role: keyof typeof members) => server.issuer.tokenFor(members[role]),
  loadInventory: (csv: string, name: string) => loadInventoryCsv(csv, name, demoMembers.manager),
  loadNetwork: () => loadNetworkInp(townNetworkInp(), townNetworkMeta),
  loadLayers: () => loadTownLayers(demoMembers.manager),
};

/** Six invented hydrants on one street, 0.001° of latitude (364 ft) apart, the last a wet barrel. */
const inventory = [
  'HYD_NO,LATITUDE,LONGITUDE,LOCATION,TYPE,MODEL,INSTALL_DATE,HOSE_OUTLETS,HOSE_SIZE_IN,VALVE_NO,STATUS',
  ...[1, 2, 3, 4, 5, 6].map((number) =>
    [
      `T-10${number}`,
      (40.6 + number / 1000).toFixed(6),
      '-60.400000',
      `${number} Test St`,
      number === 6 ? 'Wet barrel' : 'Dry barrel',
      number === 6 ? 'LM-W3' : 'BW-D51',
      '2001-05-06',
      '2',
      '2.5',
      `V-10${number}`,
      'In service',
    ].join(','),
  ),
].join('\r\n');

const loaded = join(DATA_DIR, 'loaded');
if (LOAD && !existsSync(loaded)) {
  if (LOAD === 'town') await loadDemo(api, new Date());
  else {
    await api.loadInventory(inventory, 'small.csv');
    const teller = new Teller(new Date());
    for (const edition of demoRateBooks)
      teller.tell('rate-book', { type: 'utility' }, 10, edition, { role: 'manager' });
    for (const model of demoModels)
      teller.tell('hydrant-model', { type: 'utility' }, 9, model, { role: 'manager' });
    for (const told of teller.told) await send(api, told);
  }
  writeFileSync(loaded, LOAD);
}
await server.following.settled();
process.stdout.write(`ready ${server.origin}\n`);
process.on('SIGTERM', () => {
  void server.close().then(() => process.exit(0));
});
