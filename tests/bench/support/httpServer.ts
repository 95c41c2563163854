import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { answerApi } from '../../../infra/local/api.ts';
import { openDataFolder } from '../../../infra/local/dataFolder.ts';
import { demoUtility } from '../../../infra/local/demo/index.ts';
import { demoPeople } from '../../../infra/local/demoState.ts';
import { startLocalServer } from '../../../infra/local/localServer.ts';
import { listen } from '../../../infra/local/server.ts';
import { families, type Family } from '../../../shared/deployment/routes.ts';
import type { HttpHandler } from '../../../functions/http/lambda.ts';

/**
 * Two servers for the HTTP bench, in a process of their own so that the caller's work is not counted: the real one on
 * an embedded store on disk, and the same gateway before handlers that do nothing.
 */
const folder = await mkdtemp(join(tmpdir(), 'hsl-bench-'));
const quiet = (): void => undefined;
const server = await startLocalServer({
  folder: await openDataFolder(join(folder, 'data')),
  port: 0,
  host: '127.0.0.1',
  settings: demoUtility,
  members: demoPeople,
  client: null,
  log: quiet,
  replaying: quiet,
});
const empty: HttpHandler = async () => ({
  statusCode: 201,
  headers: { 'content-type': 'application/json' },
  body: '{}',
});
const handlers = Object.fromEntries(families.map((family) => [family, empty])) as Record<Family, HttpHandler>;
const beside = await listen({ port: 0, host: '127.0.0.1', log: quiet, locale: 'en' });
beside.open((request) => answerApi(request, { handlers, log: quiet, now: () => new Date(), locale: 'en' }));

process.stdout.write(
  `${JSON.stringify({ real: server.origin, empty: `http://localhost:${beside.port}`, token: await server.issuer.tokenFor(demoPeople.crew) })}\n`,
);
process.stdin.resume();
process.stdin.on('end', () => {
  void (async () => {
    await Promise.all([server.close(), beside.close()]);
    await rm(folder, { recursive: true, force: true });
    process.exit(0);
  })();
});
