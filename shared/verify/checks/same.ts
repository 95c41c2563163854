/** Whether two values of JSON say the same; a field that is left out is one that is null or undefined. */
export function same(one: unknown, other: unknown): boolean {
  if (one === other || (empty(one) && empty(other))) return true;
  if (Array.isArray(one) || Array.isArray(other))
    return (
      Array.isArray(one) &&
      Array.isArray(other) &&
      one.length === other.length &&
      one.every((item, index) => same(item, other[index]))
    );
  if (typeof one !== 'object' || typeof other !== 'object' || empty(one) || empty(other)) return false;
  const [a, b] = [one as Record<string, unknown>, other as Record<string, unknown>];
  return [...new Set([...Object.keys(a), ...Object.keys(b)])].every((key) => same(a[key], b[key]));
}

export interface Difference {
  /** Names and numbers from the outside in, with dots between: `lines.3.amountCents`. */
  readonly path: string;
  readonly file: unknown;
  readonly own: unknown;
}

/** The first place at which two values of JSON do not say the same, as deep as it goes; null when they do. */
export function firstDifference(file: unknown, own: unknown, path = ''): Difference | null {
  if (same(file, own)) return null;
  const inside = (value: unknown): value is object => typeof value === 'object' && value !== null;
  if (!inside(file) || !inside(own) || Array.isArray(file) !== Array.isArray(own)) return { path, file, own };
  const [a, b] = [file as Record<string, unknown>, own as Record<string, unknown>];
  for (const key of new Set([...Object.keys(a), ...Object.keys(b)])) {
    const found = firstDifference(a[key], b[key], path === '' ? key : `${path}.${key}`);
    if (found) return found;
  }
  return { path, file, own };
}

const empty = (value: unknown): value is null | undefined => value === null || value === undefined;

const MOST_SHOWN = 200;

/** A value as a sentence can quote it. */
export function shown(value: unknown): string {
  const text = typeof value === 'string' ? value : empty(value) ? '-' : JSON.stringify(value);
  return text.length <= MOST_SHOWN ? text : `${text.slice(0, MOST_SHOWN)} …`;
}
