import { startDynamodb } from '../../infra/local/dynamodb.ts';

/** A process of its own for the embedded store, so that a test can kill it: `node dynaliteChild.ts FOLDER PORT`. */
const [folder = '', port = '0'] = process.argv.slice(2);
const { endpoint } = await startDynamodb({ folder, port: Number(port) });
process.stdout.write(`${endpoint}\n`);
