import { observable } from '../core/observable.ts';

/**
 * Whether the browser promised to keep this device's entries when it runs short of room (Storage Standard, persistent
 * buckets). `unknown`: it was not asked yet, or has no such promise to give.
 */
export type Durability = 'unknown' | 'kept' | 'refused';
export const durability = observable<Durability>('unknown');

/** As typed always there; without HTTPS, and in older browsers, it is not. */
const manager = (): Partial<StorageManager> | undefined =>
  (navigator as { readonly storage?: Partial<StorageManager> }).storage;

/** What was promised before; asks nothing. */
export async function lookAtDurability(): Promise<void> {
  const promised = await manager()
    ?.persisted?.()
    .catch(() => false);
  if (promised === true) durability.set('kept');
}

/** Asks the browser to keep what is here. From a touch, because some browsers ask the person in turn. */
export async function askToKeep(): Promise<void> {
  if (durability.get() === 'kept') return;
  const promised = await manager()
    ?.persist?.()
    .catch(() => false);
  if (promised !== undefined) durability.set(promised ? 'kept' : 'refused');
}

/** Bytes that this address may still put on the device, as the browser estimates; null where it does not say. */
export async function roomLeft(): Promise<number | null> {
  const estimate = await manager()
    ?.estimate?.()
    .catch(() => null);
  return estimate?.quota === undefined || estimate.usage === undefined
    ? null
    : Math.max(0, estimate.quota - estimate.usage);
}
