import { factKinds, forms, type FactKind } from '../../shared/submissions/kinds.ts';
import { sampleBodies } from './sampleBodies.ts';

/** Ids of hydrants are public by their nature; everything else that a person can type freely is not. */
const publicPaths = /(^|\.)(hydrantId|residualHydrantId)$/;

type Json = string | number | boolean | null | readonly Json[] | { readonly [key: string]: Json };

function* strings(value: Json, path: readonly string[] = []): Generator<readonly string[]> {
  if (typeof value === 'string') yield path;
  else if (typeof value === 'object' && value !== null)
    for (const [key, inner] of Object.entries(value)) yield* strings(inner, [...path, key]);
}

function withAt(value: Json, [key, ...rest]: readonly string[], leaf: string): Json {
  if (key === undefined) return leaf;
  if (Array.isArray(value))
    return value.map((inner: Json, index) => (String(index) === key ? withAt(inner, rest, leaf) : inner));
  const object = value as Readonly<Record<string, Json>>;
  return { ...object, [key]: withAt(object[key] ?? null, rest, leaf) };
}

/**
 * The sample body of a form with `canary` in every field that takes free text: names, notes, plates, ids of people and
 * of machines. Found by trying, so that a field added to a form is covered the day it is added.
 */
export function bodyWithCanary<K extends FactKind>(kind: K, canary: string): (typeof sampleBodies)[K] {
  const { body: schema } = forms[kind];
  let body = sampleBodies[kind] as Json;
  for (const path of strings(body)) {
    if (publicPaths.test(path.join('.'))) continue;
    const tried = withAt(body, path, canary);
    if (schema.safeParse(tried).success) body = tried;
  }
  return body as (typeof sampleBodies)[K];
}

export const allKinds: readonly FactKind[] = factKinds;
