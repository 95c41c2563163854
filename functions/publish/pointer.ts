import * as z from 'zod';
import { contentTypeOf, type PublishedStore } from '../stores/published/published.ts';

/** What stands published, and since which check: moved last, and only forward. */
const pointer = z.strictObject({
  version: z.literal(1),
  /** Null while the very first publication is under way. */
  checkedAt: z.iso.datetime().nullable(),
  relyUntil: z.iso.datetime().nullable(),
  /** Every published file with its content's hash and the store's etag, so that only what changed is written. */
  files: z.record(z.string(), z.strictObject({ sha256: z.string(), etag: z.string() })),
  /** Hydrants that have a page in this publication. */
  hydrants: z.array(z.string()),
  /**
   * Hydrants whose address may hold a page although this publication has none for them: withdrawn ones, and those of a
   * publication that announced them and was overtaken or cut off. The next one writes over each.
   */
  others: z.array(z.string()),
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

/** Names the hydrants whose pages are about to be written, so that none is forgotten if that is not finished. */
export async function announce(
  store: PublishedStore,
  hydrants: readonly string[],
  seen: StandingPointer,
): Promise<StandingPointer> {
  let standing = seen;
  for (let tries = 0; tries < MOST_TRIES; tries++) {
    const fresh = beyond(hydrants, allOf(standing.pointer));
    if (fresh.length === 0) return standing;
    const next = { ...standing.pointer, others: [...standing.pointer.others, ...fresh].toSorted() };
    const etag = await write(store, next, standing.etag);
    if (etag !== null) return { pointer: next, etag };
    standing = await readPointer(store);
  }
  throw new Error(`the pointer was moved by others ${MOST_TRIES} times`);
}

/** Moves the pointer unless it has come as far or further: true when it was moved. Keeps what others announced. */
export async function moveForward(
  store: PublishedStore,
  next: Omit<Pointer, 'others'> & { readonly checkedAt: string },
  seen: StandingPointer,
): Promise<boolean> {
  let { pointer: standing, etag } = seen;
  for (let tries = 0; tries < MOST_TRIES; tries++) {
    if (isAsNew(standing, next.checkedAt)) return false;
    const moved = await write(store, { ...next, others: beyond(allOf(standing), next.hydrants) }, etag);
    if (moved !== null) return true;
    ({ pointer: standing, etag } = await readPointer(store));
  }
  throw new Error(`the pointer was moved by others ${MOST_TRIES} times`);
}
