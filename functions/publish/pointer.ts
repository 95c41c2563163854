import * as z from 'zod';
import { contentTypeOf, type PublishedStore } from '../stores/published/published.ts';

/** What stands published, and since which check: moved last, and only forward. */
const pointer = z.strictObject({
  version: z.literal(1),
  checkedAt: z.iso.datetime(),
  relyUntil: z.iso.datetime(),
  /** Every published file with its content's hash and the store's etag, so that only what changed is written. */
  files: z.record(z.string(), z.strictObject({ sha256: z.string(), etag: z.string() })),
  /** Hydrants that have a page now, and those whose page was withdrawn. */
  hydrants: z.array(z.string()),
  withdrawn: z.array(z.string()),
});
export type Pointer = z.infer<typeof pointer>;

export const POINTER_KEY = 'v1/published.json';

export interface StandingPointer {
  readonly pointer: Pointer | null;
  readonly etag: string | null;
}

export async function readPointer(store: PublishedStore): Promise<StandingPointer> {
  const object = await store.get(POINTER_KEY);
  if (!object) return { pointer: null, etag: null };
  return { pointer: pointer.parse(JSON.parse(new TextDecoder().decode(object.bytes))), etag: object.etag };
}

/** Moves the pointer from where it was seen. Null when somebody else has moved it since. */
export function movePointer(
  store: PublishedStore,
  next: Pointer,
  from: string | null,
): Promise<string | null> {
  return store.put(
    POINTER_KEY,
    {
      bytes: new TextEncoder().encode(JSON.stringify(next)),
      contentType: contentTypeOf(POINTER_KEY),
      cacheControl: 'no-store',
      checkedAt: next.checkedAt,
    },
    from,
  );
}
