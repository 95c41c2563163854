import { appendFileSync } from 'node:fs';
import { runDigest } from '../../functions/digest/run.ts';
import { dynamodbClient } from '../../functions/stores/dynamodb/client.ts';
import { dynamodbStores } from '../../functions/stores/dynamodb/stores.ts';
import { localTableNames, setCredentials } from '../../infra/local/dynamodb.ts';
import { digestDeps } from './digestWorld.ts';

/**
 * One run of the daily letters in a process of its own: `node digestChild.ts ENDPOINT POST INSTANT [kill]`. Each letter
 * handed over is a line of the file POST; with `kill` the process is killed right after the first.
 */
const [endpoint = '', post = '', instant = '', kill] = process.argv.slice(2);
setCredentials();
const stores = dynamodbStores(dynamodbClient(endpoint), localTableNames);
const deps = digestDeps(
  stores,
  {
    send: async ({ to }) => {
      appendFileSync(post, `${to}\n`);
      if (kill) process.kill(process.pid, 'SIGKILL');
      return null;
    },
  },
  () => new Date(instant),
);
process.stdout.write(JSON.stringify(await runDigest(deps)));
