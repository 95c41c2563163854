import { randomUUID } from 'node:crypto';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { environmentNames as names } from '../../shared/deployment/environment.ts';
import { families, type Family } from '../../shared/deployment/routes.ts';
import { tables, type TableName } from '../../shared/deployment/tables.ts';
import type { Member, Role } from '../../shared/roles.ts';
import type { UtilitySettings } from '../../shared/utility/settings.ts';
import { tileOrigin } from '../../shared/public/mapTiles.ts';
import type { HttpHandler } from '../../functions/http/lambda.ts';
import type { Log } from '../../functions/log/log.ts';
import { openObjectStore } from '../../functions/stores/objects/open.ts';
import { breakLock } from '../../functions/stores/published/filePublished.ts';
import { openPublishedStore } from '../../functions/stores/published/openPublished.ts';
import { recordPendingLoads } from '../../functions/submissions/inventoryLoads.ts';
import { appendDeps, inventoryStore } from '../../functions/wiring.ts';
import { answerApi } from './api.ts';
import { arrivalsHere, type Arrivals } from './arrivals.ts';
import type { DataFolder } from './dataFolder.ts';
import { FolderInUse, localTableNames, startDynamodb, type EmbeddedDynamodb } from './dynamodb.ts';
import { EVIDENCE_PATH } from './evidenceFiles.ts';
import { dispatchHere, type Dispatching } from './dispatching.ts';
import { followHere, type Following } from './following.ts';
import { createIssuer, developmentAudience, developmentIssuer, type Issuer } from './issuer.ts';
import { answerInstance, answerLocal, INSTANCE_PATH, isThisMachine, KEYS_PATH } from './localRoutes.ts';
import { answerPage } from './pages.ts';
import { publishedFiles } from './publishedFiles.ts';
import { RefusedStart } from './refusedStart.ts';
import { listen, starting, type Listening } from './server.ts';

export interface LocalOptions {
  readonly folder: DataFolder;
  readonly port: number;
  readonly host: string;
  readonly settings: UtilitySettings;
  /** Who signs in for each role. */
  readonly members: Readonly<Record<Role, Member>>;
  /** Folder of the built site's browser files; null to serve no pages. */
  readonly client: string | null;
  readonly log: Log;
  /** Told when a start has to make good what a killed server left undone. */
  readonly replaying: () => void;
}

export interface LocalServer {
  readonly origin: string;
  readonly issuer: Issuer;
  readonly following: Following;
  readonly dispatching: Dispatching;
  readonly arrivals: Arrivals;
  /** Finishes what is being done, closes the stores and leaves the folder to the next. */
  close(): Promise<void>;
}

/**
 * Starts everything in one process on one port: embedded stores, the real handlers, the web server and the development
 * issuer. Sets `process.env` as a deployment would, because that is where handlers look; so one server a process.
 */
export async function startLocalServer(options: LocalOptions): Promise<LocalServer> {
  const { folder, port, host, settings, members, client, log } = options;
  const now = (): Date => new Date();
  const server = await listen({ port, host, log, locale: settings.locale });
  let store: EmbeddedDynamodb | undefined;
  try {
    store = await openStore(folder);
    // The folder is locked now, and says by whom before anything slow begins.
    const instance = randomUUID();
    const reached = `http://${reachable(host)}:${server.port}`;
    const origin = reachable(host) === '127.0.0.1' ? `http://localhost:${server.port}` : reached;
    server.open(async (_request, url) =>
      url.pathname === INSTANCE_PATH ? answerInstance(instance) : starting(settings.locale),
    );
    await folder.markRunning({ origin: reached, instance });
    await breakLock(folder.objects.published);
    Object.assign(process.env, environmentOf(folder, settings, store.endpoint, reached));

    const issuer = await createIssuer(folder.keys.issuerKey);
    const arrivals = arrivalsHere(log);
    const evidence = {
      objects: await openObjectStore(fileUrl(folder.objects.evidence)),
      secret: folder.keys.evidenceSecret,
      now,
      arrived: (key: string) => arrivals.arrived(key),
    };
    const gateway = { handlers: await importHandlers(), log, now, locale: settings.locale };
    const openToOthers = !isThisMachine(host);
    const local = { issuer, members, evidence, instance, openToOthers, locale: settings.locale };
    const { mapTiles } = settings.publishing;
    const pages = {
      client,
      published: publishedFiles(openPublishedStore(fileUrl(folder.objects.published))),
      streets: mapTiles ? tileOrigin(mapTiles) : null,
    };

    const following = followHere(log);
    const dispatching = dispatchHere(log);
    if (!folder.closedCleanly) {
      options.replaying();
      await following.replay();
      await dispatching.lookAtAll();
    }
    await recordPendingLoads(appendDeps(), await inventoryStore());

    server.open((request, url) => {
      // The path as it was sent decides, as it does at the gateway; a cleaned one could pass for another.
      const path = (request.url ?? '/').split('?')[0] ?? '/';
      if (path === '/api' || path.startsWith('/api/')) return answerApi(request, gateway);
      if (path.startsWith('/local/')) return answerLocal(request, url, local);
      return answerPage(request, url.pathname, pages);
    });
    const close = closing(server, { following, dispatching, arrivals }, store, folder);
    return { origin, issuer, following, dispatching, arrivals, close };
  } catch (error) {
    await server.close();
    await store?.stop();
    throw error;
  }
}

function closing(
  server: Listening,
  { following, dispatching, arrivals }: Pick<LocalServer, 'following' | 'dispatching' | 'arrivals'>,
  store: EmbeddedDynamodb,
  folder: DataFolder,
): () => Promise<void> {
  let closed: Promise<void> | undefined;
  return () =>
    (closed ??= (async () => {
      await server.close();
      const followed = await following.stop();
      const complete = (await dispatching.stop()) && followed;
      await arrivals.stop();
      await store.stop();
      // What could not be followed is made good by the next start, as after a kill.
      if (complete) await folder.markClosed();
    })());
}

async function openStore(folder: DataFolder): Promise<EmbeddedDynamodb> {
  try {
    return await startDynamodb({ folder: folder.dynamodb, port: 0 });
  } catch (error) {
    if (error instanceof FolderInUse)
      throw new RefusedStart('command.folder-locked', { folder: folder.path });
    throw error;
  }
}

/** An address under which a server that listens on `host` answers on this machine. */
function reachable(host: string): string {
  if (host === '0.0.0.0' || host === '::') return '127.0.0.1';
  return host.includes(':') ? `[${host}]` : host;
}

const fileUrl = (path: string): string => pathToFileURL(path).href;

/** What a deployment would set. */
function environmentOf(
  folder: DataFolder,
  settings: UtilitySettings,
  endpoint: string,
  origin: string,
): Record<string, string> {
  const tableNames = (Object.keys(tables) as TableName[]).map((table) => [
    tables[table].environment,
    localTableNames[table],
  ]);
  return {
    ...(Object.fromEntries(tableNames) as Record<string, string>),
    [names.utility]: JSON.stringify(settings),
    [names.dynamodbEndpoint]: endpoint,
    [names.evidenceUrl]: fileUrl(folder.objects.evidence),
    [names.publishedUrl]: fileUrl(folder.objects.published),
    [names.inventoryUrl]: fileUrl(folder.objects.inventory),
    [names.networkUrl]: fileUrl(folder.objects.network),
    [names.tokenIssuer]: developmentIssuer,
    [names.tokenAudience]: developmentAudience,
    [names.tokenKeysUrl]: origin + KEYS_PATH,
    [names.evidenceLinkBase]: EVIDENCE_PATH,
    [names.evidenceLinkSecret]: folder.keys.evidenceSecret,
    [names.packetKey]: fileUrl(folder.packetKey),
    [names.mail]: fileUrl(join(folder.path, 'mail')),
    // Beside the letters: one folder shows all that would go out.
    [names.texts]: fileUrl(join(folder.path, 'mail')),
  };
}

/** The very modules that are deployed, found by the same names. */
async function importHandlers(): Promise<Record<Family, HttpHandler>> {
  const imported = await Promise.all(
    families.map(async (family) => {
      const module = (await import(`../../functions/${family}/handler.ts`)) as { handler: HttpHandler };
      return [family, module.handler] as const;
    }),
  );
  return Object.fromEntries(imported) as Record<Family, HttpHandler>;
}
