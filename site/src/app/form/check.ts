import { problemsFromZod } from '../../../../shared/problems/fromZod.ts';
import type { Problem } from '../../../../shared/problems/problem.ts';
import type { Reader } from '../../../../shared/units/format.ts';
import { forms } from '../../../../shared/submissions/kinds.ts';
import { futureTimes } from '../../../../shared/submissions/futures.ts';
import { encode, typedPath, type Encoded } from './encode.ts';
import type { FormSpec } from './spec.ts';
import type { Values } from './nodes.ts';

export type Checked =
  | { readonly ok: true; readonly body: Record<string, unknown> }
  | { readonly ok: false; readonly problems: readonly Problem[]; readonly body: Record<string, unknown> };

/** True when `path` is `at` or lies within it. */
const within = (path: string, at: string): boolean => path === at || path.startsWith(`${at}.`);

/**
 * Reads and checks a whole form: what cannot be read, and what the form's own schema refuses, all at once. Paths are
 * those of what was typed. Sentences that the form itself writes into the body are for the reader given.
 */
export function checkForm(
  spec: FormSpec,
  values: Values,
  zone: string,
  reader: Reader = { locale: 'en', system: 'us' },
  now: Date = new Date(),
): Checked {
  const { body: typed, problems, rows } = encode(spec.nodes, values, { zone, nullable: spec.nullable });
  const body = spec.complete?.(typed, reader) ?? typed;
  const parsed = forms[spec.kind].body.safeParse(body, { reportInput: true });
  const refused = [
    ...(parsed.success ? [] : problemsFromZod(parsed.error.issues)),
    ...futureTimes(spec.kind, body, now.toISOString(), zone),
  ];
  const all = [
    ...problems,
    ...refused.filter(({ path }) => !problems.some((known) => within(path, known.path))),
  ];
  if (all.length === 0 && parsed.success) return { ok: true, body: parsed.data };
  return { ok: false, body, problems: onTyped(all, rows) };
}

const onTyped = (problems: readonly Problem[], rows: Encoded['rows']): Problem[] =>
  problems.map((found) => ({ ...found, path: typedPath(found.path, rows) }));
