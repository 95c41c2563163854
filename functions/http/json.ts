import type { Context } from 'hono';
import { problem, type Problem } from '../../shared/problems/problem.ts';
import { refuse } from './refused.ts';

/** The largest body a route reads. A submission with 60 photos declared and 200 parts is under 60 KB. */
export const MOST_BODY_BYTES = 256 * 1024;
/** The deepest form nests 7 levels; far more is an attack on the parser's stack, not a report. */
export const MOST_JSON_DEPTH = 32;

/** Reads a request's JSON body, within limits. Refuses with `too-large`, `not-json` or `invalid`. */
export async function readJson(call: Context): Promise<unknown> {
  const declared = Number(call.req.header('content-length') ?? 0);
  if (declared > MOST_BODY_BYTES)
    refuse('too-large', problem('body-too-large', '', { maximumKb: MOST_BODY_BYTES / 1024 }));
  const bytes = await call.req.arrayBuffer();
  if (bytes.byteLength > MOST_BODY_BYTES)
    refuse('too-large', problem('body-too-large', '', { maximumKb: MOST_BODY_BYTES / 1024 }));
  if (bytes.byteLength === 0) refuse('not-json', problem('body-missing'));
  return parseJson(bytes);
}

export function parseJson(bytes: ArrayBuffer): unknown {
  let value: unknown;
  try {
    // Fatal: bytes that are not UTF-8 would otherwise be stored as replacement characters nobody typed.
    value = JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes));
  } catch {
    return refuse('not-json', problem('not-json'));
  }
  const found = problemsInJson(value);
  return found.length > 0 ? refuse('invalid', found) : value;
}

/**
 * What JSON allows and no store or screen carries faithfully: nesting without end, half of a surrogate pair, numbers
 * too large or too small to be kept exactly. Walks without recursion, so depth itself cannot break it.
 */
export function problemsInJson(root: unknown): Problem[] {
  const problems: Problem[] = [];
  const waiting: { value: unknown; path: readonly string[] }[] = [{ value: root, path: [] }];
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    const { value, path } = next;
    if (typeof value === 'string' && !value.isWellFormed())
      problems.push(problem('text-not-unicode', path.join('.')));
    if (typeof value === 'number' && !isKeepable(value))
      problems.push(problem('number-out-of-reach', path.join('.')));
    if (typeof value !== 'object' || value === null) continue;
    if (path.length >= MOST_JSON_DEPTH)
      return [problem('nested-too-deep', path.slice(0, 6).join('.'), { maximum: MOST_JSON_DEPTH })];
    for (const [key, inner] of Object.entries(value)) {
      if (!key.isWellFormed() || key === '__proto__')
        problems.push(
          problem('unknown-field', [...path, key.toWellFormed()].join('.'), { field: key.toWellFormed() }),
        );
      else waiting.push({ value: inner, path: [...path, key] });
    }
  }
  return problems;
}

/** Zero, or of a size between 1e-100 and 1e100: nothing a utility measures is outside, and every store keeps it. */
const isKeepable = (value: number): boolean =>
  value === 0 || (Math.abs(value) > 1e-100 && Math.abs(value) < 1e100);
