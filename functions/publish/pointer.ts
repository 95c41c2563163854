import * as z from 'zod';
import { contentTypeOf, type PublishedStore } from '../stores/published/published.ts';

/** What stands published, and since which check: moved last, and only forward. */
const pointer = z.strictObject({
  version: z.literal(1),
  /** Null while the very first publication is under way. */
  checkedAt: z.iso.datetime().nullable(),
  relyUntil: z.iso.datetime().nullable(),
  /** Every published file with its content's hash and the store's etag, so that only what changed is written. */
  files: z.record(
    z.string(),
    z.strictObject({
      sha256: z.string(),
      etag: z.string(),
      /** A page that can be kept: the hash of what it shows, its times apart, and the check that it shows. */
      shows: z.string().optional(),
      checkedAt: z.iso.datetime().optional(),
    }),
  ),
  /** Hydrants that have a page in this publication. */
  hydrants: z.array(z.string()),
  /**
   * Hydrants whose address may hold a page although this publication has none for them: withdrawn ones, and those of a
   * publication that announced them and was overtaken or cut off. The next one writes over each.
   */
  others: z.array(z.string()),
  /**
   * Checks of publications that began and are not known to have ended as they should: what they wrote is in no list, so
   * the next one trusts no page that stands and writes every one.
   */
  underWay: z.array(z.iso.datetime()).default([]),
});
export type Pointer = z.infer<typeof pointer>;

export const POINTER_KEY = 'v1/published.json';

export interface StandingPointer {
  readonly pointer: Pointer;
  /** Null: there is none yet. */
  readonly etag: string | null;
}

const nothing: Pointer = {
  version: 1,
  checkedAt: null,
  relyUntil: null,
  files: {},
  hydrants: [],
  others: [],
  underWay: [],
};
/** How often the pointer is fought over before a publication gives up; its files stand all the same. */
const MOST_TRIES = 8;

export async function readPointer(store: PublishedStore): Promise<StandingPointer> {
  const object = await store.get(POINTER_KEY);
  if (!object) return { pointer: nothing, etag: null };
  return { pointer: pointer.parse(JSON.parse(new TextDecoder().decode(object.bytes))), etag: object.etag };
}

export const isAsNew = ({ checkedAt }: Pointer, as: string): boolean =>
  checkedAt !== null && Date.parse(checkedAt) >= Date.parse(as);

const write = (store: PublishedStore, next: Pointer, from: string | null): Promise<string | null> =>
  store.put(
    POINTER_KEY,
    {
      bytes: new TextEncoder().encode(JSON.stringify(next)),
      contentType: contentTypeOf(POINTER_KEY),
      cacheControl: 'no-store',
      checkedAt: next.checkedAt,
    },
    from,
  );

/** Hydrants of `all` that `known` has not. */
const beyond = (all: readonly string[], known: readonly string[]): string[] => {
  const has = new Set(known);
  return [...new Set(all)].filter((hydrantId) => !has.has(hydrantId)).toSorted();
};
const allOf = ({ hydrants, others }: Pointer): readonly string[] => [...hydrants, ...others];

/** What stood when a publication announced itself, and whether the list of what stands can be trusted. */
export interface Announced {
  readonly standing: StandingPointer;
  /** False: another publication was under way, or was cut off; what it wrote since is not in the list. */
  readonly sure: boolean;
}

/**
 * Says that a publication begins, and names the hydrants whose pages it is about to write, so that none is forgotten if
 * it is not finished.
 */
export async function announce(
  store: PublishedStore,
  { checkedAt, hydrants }: { readonly checkedAt: string; readonly hydrants: readonly string[] },
  seen: StandingPointer,
): Promise<Announced> {
  let standing = seen;
  for (let tries = 0; tries < MOST_TRIES; tries++) {
    const { pointer: before } = standing;
    const fresh = beyond(hydrants, allOf(before));
    const next = {
      ...before,
      others: [...before.others, ...fresh].toSorted(),
      underWay: [...before.underWay, checkedAt],
    };
    const etag = await write(store, next, standing.etag);
    if (etag !== null) return { standing: { pointer: next, etag }, sure: before.underWay.length === 0 };
    standing = await readPointer(store);
    // Overtaken: the caller sees it by the time that stands there, and writes nothing.
    if (isAsNew(standing.pointer, checkedAt)) return { standing, sure: false };
  }
  throw new Error(`the pointer was moved by others ${MOST_TRIES} times`);
}

/**
 * Moves the pointer unless it has come as far or further: true when it was moved. Keeps what others announced. Whoever
 * finds it moved by somebody else meanwhile leaves its own mark, because what that one wrote is not in its list.
 */
export async function moveForward(
  store: PublishedStore,
  next: Omit<Pointer, 'others' | 'underWay'> & { readonly checkedAt: string },
  { standing: seen }: Announced,
): Promise<boolean> {
  let { pointer: standing, etag } = seen;
  // Those that were under way at the beginning are made good: every page was written.
  const settled = new Set(standing.underWay);
  for (let tries = 0; tries < MOST_TRIES; tries++) {
    if (isAsNew(standing, next.checkedAt)) return false;
    const underWay = [
      ...standing.underWay.filter((check) => !settled.has(check)),
      ...(etag === seen.etag ? [] : [next.checkedAt]),
    ];
    const others = beyond(allOf(standing), next.hydrants);
    const moved = await write(store, { ...next, others, underWay }, etag);
    if (moved !== null) return true;
    ({ pointer: standing, etag } = await readPointer(store));
  }
  throw new Error(`the pointer was moved by others ${MOST_TRIES} times`);
}
