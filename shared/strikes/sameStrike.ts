/**
 * Which strike ids are one strike, from the links between them. The joined strike goes by its smallest id (UUIDv7: the
 * one made first). Returns every id named in a link, each with the id its strike goes by.
 */
export function joinedStrikes(
  links: readonly { readonly a: string; readonly b: string }[],
): ReadonlyMap<string, string> {
  const parent = new Map<string, string>();
  const root = (id: string): string => {
    let at = id;
    while ((parent.get(at) ?? at) !== at) at = parent.get(at) ?? at;
    return at;
  };
  for (const { a, b } of links) {
    const [low, high] = [root(a), root(b)].sort() as [string, string];
    parent.set(low, low);
    parent.set(high, low);
  }
  const named = new Set(links.flatMap(({ a, b }) => [a, b]));
  return new Map([...named].map((id) => [id, root(id)]));
}
