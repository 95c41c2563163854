import { createHash, randomBytes } from 'node:crypto';
import { createEvidenceApp } from '../../../functions/evidence/app.ts';
import { v7 } from 'uuid';
import type { App } from '../../../functions/http/app.ts';
import type { ProblemDocument } from '../../../functions/http/problemDocument.ts';
import type { LogEntry } from '../../../functions/log/log.ts';
import { memoryStores, type TableStores } from '../../../functions/stores/dynamodb/stores.ts';
import { createEvidenceStore } from '../../../functions/stores/evidence/byHash.ts';
import { createExhibitIndex } from '../../../functions/stores/evidence/exhibitIndex.ts';
import { tokenLinks } from '../../../functions/stores/evidence/tokenLinks.ts';
import { memoryObjects } from '../../../functions/stores/objects/memory.ts';
import type { ObjectStore } from '../../../functions/stores/objects/objects.ts';
import { projectStream } from '../../../functions/project/project.ts';
import { createCalendarApp } from '../../../functions/calendar/app.ts';
import { createDispatchApp } from '../../../functions/dispatch/app.ts';
import { createHealthApp } from '../../../functions/health/app.ts';
import { memoryPublished } from '../../../functions/stores/published/memoryPublished.ts';
import { createNetworkApp } from '../../../functions/network/app.ts';
import { solveNetwork } from '../../../functions/network/solve.ts';
import type { NetworkQuestion } from '../../../shared/network/question.ts';
import { objectModels } from '../../../functions/stores/network/objectModels.ts';
import { createPacketsApp } from '../../../functions/packets/app.ts';
import type { PacketsDeps } from '../../../functions/packets/deps.ts';
import { runJob } from '../../../functions/packets/jobs.ts';
import { jwkSigner } from '../../../functions/stores/signing/localSigner.ts';
import { testPacketKey } from '../../support/packetKey.ts';
import { createRecordsApp } from '../../../functions/records/app.ts';
import { currentState } from '../../../functions/records/currentState.ts';
import { objectInventory } from '../../../functions/stores/inventory/objectInventory.ts';
import type { AfterAppend } from '../../../functions/submissions/append.ts';
import { createSubmissionsApp } from '../../../functions/submissions/app.ts';
import { demoUtility } from '../../../infra/local/demo/index.ts';
import { routes, type Family } from '../../../shared/deployment/routes.ts';
import type { Role } from '../../../shared/roles.ts';
import { testIssuer, type TestIssuer } from './issuer.ts';

export const secret = 'test-secret-'.repeat(4);

export interface Answer {
  readonly status: number;
  readonly headers: Headers;
  readonly body: ProblemDocument & Record<string, unknown>;
}

const patterns = routes.map(({ path, family }) => ({
  family,
  pattern: new RegExp(`^${path.replaceAll(/\{\w+\}/g, '[^/]+')}$`),
}));
const familyOf = (path: string): Family | undefined =>
  patterns.find(({ pattern }) => pattern.test(path.split('?')[0] ?? ''))?.family;

/** The real apps over the stores' twins in memory, called as a browser would call them. */
export async function testWorld(
  over: {
    stores?: TableStores;
    objects?: () => ObjectStore;
    afterAppend?: AfterAppend;
    now?: () => Date;
  } = {},
) {
  const issuer: TestIssuer = await testIssuer();
  const stores = over.stores ?? memoryStores();
  const openObjects = over.objects ?? (() => memoryObjects());
  const objects = openObjects();
  const logged: LogEntry[] = [];
  const now = over.now ?? (() => new Date('2026-03-04T12:00:00Z'));
  const exhibits = createExhibitIndex(stores.projections);
  const inventory = objectInventory(openObjects());
  const hydrantType = async (hydrantId: string) => (await inventory.hydrant(hydrantId))?.type ?? 'unknown';
  const deps = {
    ...stores,
    verify: issuer.verify,
    log: (entry: LogEntry) => void logged.push(entry),
    now,
    locale: 'en' as const,
    settings: demoUtility,
    evidence: createEvidenceStore(
      objects,
      tokenLinks({ base: '/local/evidence', secret, now: () => new Date() }),
    ),
    exhibits,
    inventory,
    models: objectModels(openObjects()),
    published: memoryPublished(),
    solve: (inp: string, question: NetworkQuestion) => solveNetwork(inp, question),
    current: currentState(stores),
    afterAppend: over.afterAppend ?? (({ stream }) => projectStream({ ...stores, hydrantType }, stream)),
  };
  const packetsDeps: PacketsDeps = {
    ...deps,
    newId: () => v7(),
    signer: await jwkSigner(testPacketKey),
    startJob: async (order) => void runJob(packetsDeps, order),
  };
  const apps: Record<Family, App> = {
    submissions: createSubmissionsApp(deps),
    evidence: createEvidenceApp(deps),
    records: createRecordsApp(deps),
    network: createNetworkApp(deps),
    packets: createPacketsApp(packetsDeps),
    health: createHealthApp(deps),
    dispatch: createDispatchApp(deps),
    calendar: createCalendarApp({ ...deps, newToken: () => randomBytes(32).toString('base64url') }),
  };
  const ask = async (
    path: string,
    role: Role | null,
    init: { method?: string; body?: unknown; token?: string; headers?: Record<string, string> } = {},
  ): Promise<Answer> => {
    const token = init.token ?? (role === null ? undefined : await issuer.tokenFor(role));
    const app = apps[familyOf(path) ?? 'records'];
    if (!app) throw new Error(`no app for ${path}`);
    const response = await app.request(path, {
      method: init.method ?? (init.body === undefined ? 'GET' : 'POST'),
      headers: { ...(token === undefined ? {} : { authorization: `Bearer ${token}` }), ...init.headers },
      ...(init.body === undefined
        ? {}
        : { body: typeof init.body === 'string' ? init.body : JSON.stringify(init.body) }),
    });
    const text = await response.text();
    const isJson = /json/.test(response.headers.get('content-type') ?? '');
    return {
      status: response.status,
      headers: response.headers,
      body: text === '' ? {} : isJson ? JSON.parse(text) : { text },
    };
  };
  const submit = (role: Role, submission: unknown, headers?: Record<string, string>) =>
    ask('/api/submissions', role, { body: submission, ...(headers ? { headers } : {}) });
  return { issuer, stores, objects, inventory, logged, deps, apps, ask, submit };
}
export type World = Awaited<ReturnType<typeof testWorld>>;

export const sha256 = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');
