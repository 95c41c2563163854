import type { PublicEdition } from '../../../shared/public/edition.ts';

const kept = new WeakMap<PublicEdition, Map<string, unknown>>();

/** Something that an edition's pages share and that takes time, made once an edition and not once a page. */
export function keptFor<T>(edition: PublicEdition, name: string, make: () => T): T {
  const known = kept.get(edition) ?? new Map<string, unknown>();
  kept.set(edition, known);
  if (!known.has(name)) known.set(name, make());
  return known.get(name) as T;
}
