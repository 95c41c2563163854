import { correctionKind } from './kinds.ts';
import { formOf, type Submission } from './submission.ts';

type Json = unknown;
export type PersonalFields = Readonly<Record<string, Json>>;

/** The body paths that hold personal fields, with array wildcards, for this submission. */
function patterns(submission: Submission): readonly string[] {
  const { personal } = formOf(submission);
  return submission.kind === correctionKind ? personal.map((path) => `replacement.${path}`) : personal;
}

/** Concrete dotted paths (`vehicles.0.plate`) that match the patterns and hold something. */
function matches(value: Json, pattern: readonly string[], at: readonly string[] = []): string[] {
  const [head, ...rest] = pattern;
  if (head === undefined) return value === null || value === undefined ? [] : [at.join('.')];
  if (typeof value !== 'object' || value === null) return [];
  if (head === '*')
    return Object.keys(value).flatMap((key) =>
      matches((value as Record<string, Json>)[key], rest, [...at, key]),
    );
  return matches((value as Record<string, Json>)[head], rest, [...at, head]);
}

function at(value: Json, path: string): Json {
  return path.split('.').reduce<Json>((inner, key) => (inner as Record<string, Json>)[key], value);
}

function withAt(value: Json, path: readonly string[], put: Json): Json {
  const [head, ...rest] = path;
  if (head === undefined) return put;
  if (Array.isArray(value))
    return value.map((item: Json, index) => (String(index) === head ? withAt(item, rest, put) : item));
  const inner = (typeof value === 'object' && value !== null ? value : {}) as Record<string, Json>;
  return { ...inner, [head]: withAt(inner[head], rest, put) };
}

/**
 * Takes the personal fields out of a submission. They go to an erasable item of their own; the fact that stays has
 * null in their place. `joinPersonal` undoes it exactly.
 */
export function splitPersonal(submission: Submission): { fact: Submission; personal: PersonalFields } {
  const paths = patterns(submission).flatMap((pattern) => matches(submission.body, pattern.split('.')));
  const personal = Object.fromEntries(paths.map((path) => [path, at(submission.body, path)]));
  const body = paths.reduce<Json>((inner, path) => withAt(inner, path.split('.'), null), submission.body);
  return { fact: { ...submission, body } as Submission, personal };
}

/** Puts personal fields back where they were taken from. */
export function joinPersonal(fact: Submission, personal: PersonalFields): Submission {
  const body = Object.entries(personal).reduce<Json>(
    (inner, [path, value]) => withAt(inner, path.split('.'), value),
    fact.body,
  );
  return { ...fact, body } as Submission;
}
