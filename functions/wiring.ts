import { layersUrl } from '../shared/deployment/environment.ts';
import { keysAt, createVerifier } from './http/signIn.ts';
import type { HttpDeps } from './http/app.ts';
import { logLine } from './log/log.ts';
import { readEnvironment, type Environment } from './environment.ts';
import type { KeptItem } from './project/deps.ts';
import { openDynamodbStores, type TableStores } from './stores/dynamodb/stores.ts';
import type { EvidenceStore } from './stores/evidence/evidence.ts';
import { openEvidenceStore } from './stores/evidence/open.ts';
import type { InventoryStore } from './stores/inventory/inventory.ts';
import { objectInventory } from './stores/inventory/objectInventory.ts';
import type { LayerStore } from './stores/layers/layers.ts';
import { objectLayers } from './stores/layers/objectLayers.ts';
import type { NetworkModels } from './stores/network/networkModels.ts';
import { objectModels } from './stores/network/objectModels.ts';
import { openObjectStore } from './stores/objects/open.ts';
import { openPacketSigner } from './stores/signing/open.ts';
import type { PacketSigner } from './stores/signing/packetSigner.ts';
import type { AfterAppend, AppendDeps } from './submissions/append.ts';
import { OperatorFault } from './log/wordless.ts';

/**
 * What handlers stand on, made from the environment once a process and only as far as a handler asks, so that a
 * bundle carries no client its handler does not use.
 */
// What nobody asks for has no effect, so the bundler may leave it out with the clients it would open.
/* @__NO_SIDE_EFFECTS__ */ function once<T>(make: () => T): () => T {
  let made: { readonly value: T } | undefined;
  return () => (made ??= { value: make() }).value;
}

export const environment: () => Environment = once(() => readEnvironment(process.env));

export const tables: () => TableStores = once(() =>
  openDynamodbStores({ endpoint: environment().dynamodbEndpoint, tableNames: environment().tableNames }),
);

export const inventoryStore: () => Promise<InventoryStore> = once(async () =>
  objectInventory(await openObjectStore(environment().inventoryUrl)),
);

export const layerStore: () => Promise<LayerStore> = once(async () =>
  objectLayers(await openObjectStore(layersUrl(environment().inventoryUrl))),
);

export const networkModels: () => Promise<NetworkModels> = once(async () =>
  objectModels(await openObjectStore(environment().networkUrl)),
);

export const evidenceStore: () => Promise<EvidenceStore> = once(() =>
  openEvidenceStore(environment(), clock),
);

export const packetSigner: () => Promise<PacketSigner> = once(async () => {
  const { packetKey } = environment();
  if (packetKey === null) throw new OperatorFault('no key signs packets here');
  return openPacketSigner(packetKey);
});

const clock = (): Date => new Date();

/** What `createFamilyApp` needs. */
export const httpDeps: () => HttpDeps = once(() => {
  const { tokenIssuer: issuer, tokenAudience: audience, tokenKeysUrl, utility } = environment();
  return {
    verify: createVerifier({ issuer, audience, keys: keysAt(tokenKeysUrl) }),
    log: logLine,
    now: clock,
    locale: utility.locale,
  };
});

let following: AfterAppend = async () => undefined;
/** Says what follows a fact in this process. Never called on AWS, where the table's stream does what follows. */
export function onAppend(follow: AfterAppend): void {
  following = follow;
}

let waking: (items: readonly KeptItem[]) => void = () => undefined;
/** Says what follows a projection in this process. Never called on AWS, where that table's stream does it. */
export function onKept(wake: (items: readonly KeptItem[]) => void): void {
  waking = wake;
}
export const keptHere = (items: readonly KeptItem[]): void => waking(items);

/** What `append` needs. */
export const appendDeps: () => AppendDeps = once(() => ({
  ...tables(),
  afterAppend: (appended) => following(appended),
  now: clock,
  log: logLine,
}));
