const pair = /\s*"((?:[^"\\]|\\.)*)"\s*=>\s*(?:"((?:[^"\\]|\\.)*)"|NULL)\s*(?:,|$)/y;
const unescape = (text: string): string => text.replace(/\\(.)/g, '$1');

/**
 * Tags that an export packed into one string, `"key"=>"value","key2"=>"value2"` (the notation of PostgreSQL's hstore,
 * which the GDAL export of OSM data uses for `other_tags`). Null when the text is anything else.
 */
export function unpackTags(text: string): [key: string, value: string][] | null {
  if (!text.trimStart().startsWith('"') || !text.includes('=>')) return null;
  const pairs: [string, string][] = [];
  pair.lastIndex = 0;
  while (pair.lastIndex < text.length) {
    const match = pair.exec(text);
    if (!match) return null;
    pairs.push([unescape(match[1] ?? ''), unescape(match[2] ?? '')]);
  }
  return pairs;
}
