/**
 * A 53-bit hash of the texts (the cyrb53 mixing of two 32-bit halves). It only proposes that two records are the same;
 * the check also compares id and place before it calls a row a duplicate.
 */
export function hashTexts(texts: readonly (string | undefined)[], skip: ReadonlySet<number>): number {
  let high = 0xdeadbeef;
  let low = 0x41c6ce57;
  for (let place = 0; place < texts.length; place += 1) {
    const text = texts[place];
    if (text === undefined || text === '' || skip.has(place)) continue;
    // The place keeps a value in one column from equalling the same value in another.
    high = Math.imul(high ^ (place + 1), 2654435761);
    low = Math.imul(low ^ (place + 1), 1597334677);
    for (let at = 0; at < text.length; at += 1) {
      const char = text.charCodeAt(at);
      high = Math.imul(high ^ char, 2654435761);
      low = Math.imul(low ^ char, 1597334677);
    }
  }
  high = Math.imul(high ^ (high >>> 16), 2246822507) ^ Math.imul(low ^ (low >>> 13), 3266489909);
  low = Math.imul(low ^ (low >>> 16), 2246822507) ^ Math.imul(high ^ (high >>> 13), 3266489909);
  return 4294967296 * (2097151 & low) + (high >>> 0);
}
