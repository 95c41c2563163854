/** JSON with keys sorted at every depth (RFC 8785's order, numbers as JSON.stringify writes them): one text per value. */
export function canonicalJson(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map((item) => canonicalJson(item ?? null)).join(',')}]`;
  if (typeof value === 'object' && value !== null) {
    const entries = Object.entries(value)
      .filter(([, item]) => item !== undefined)
      .sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0));
    return `{${entries.map(([key, item]) => `${JSON.stringify(key)}:${canonicalJson(item)}`).join(',')}}`;
  }
  return JSON.stringify(value);
}

/**
 * The first path at which two values differ, dotted, or null when they are the same JSON. It answers "which field?"
 * when an id is reused with other content.
 */
export function firstDifference(a: unknown, b: unknown, path = ''): string | null {
  const isObject = (value: unknown): value is Record<string, unknown> =>
    typeof value === 'object' && value !== null;
  if (!isObject(a) || !isObject(b) || Array.isArray(a) !== Array.isArray(b))
    return canonicalJson(a ?? null) === canonicalJson(b ?? null) ? null : path;
  const keys = [...new Set([...Object.keys(a), ...Object.keys(b)])].sort();
  for (const key of keys) {
    const at = path === '' ? key : `${path}.${key}`;
    // An optional field left out and the same field sent as undefined are the same JSON.
    if (a[key] === undefined && b[key] === undefined) continue;
    if (a[key] === undefined || b[key] === undefined) return at;
    const found = firstDifference(a[key], b[key], at);
    if (found !== null) return found;
  }
  return null;
}
