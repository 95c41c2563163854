import * as z from 'zod';

/** Thrown inside a rule when it reads what is missing or of the wrong type; never leaves this file. */
class NotReadable extends Error {}

type Issues = readonly {
  readonly code?: string | undefined;
  readonly path?: readonly PropertyKey[] | undefined;
  readonly continue?: boolean | undefined;
}[];

const key = (path: readonly PropertyKey[]): string => JSON.stringify(path.map(String));

/**
 * Places at which there is nothing of the right type; a number out of its range is still a number and is not here. Null
 * when the whole is not of the right type, and no rule can be asked.
 */
function unreadable(issues: Issues): ReadonlySet<string> | null {
  const bad = issues.filter((issue) => issue.continue !== true && issue.code !== 'unrecognized_keys');
  if (bad.some(({ path = [] }) => path.length === 0)) return null;
  return new Set(bad.map(({ path = [] }) => key(path)));
}

/** The value as it is, but for those places: reading one of them ends the rule. */
function guarded<T>(value: T, bad: ReadonlySet<string>, path: readonly PropertyKey[] = []): T {
  if (typeof value !== 'object' || value === null) return value;
  return new Proxy(value, {
    get(target, name, receiver) {
      if (typeof name === 'symbol') return Reflect.get(target, name, receiver) as unknown;
      const inner = [...path, name];
      if (bad.has(key(inner))) throw new NotReadable();
      return guarded(Reflect.get(target, name, receiver) as unknown, bad, inner);
    },
  });
}

type Rule<T> = (value: T, ctx: z.core.$RefinementCtx<T>) => void;

/**
 * Rules between the fields of an object, for `.check(relations(...))`. Unlike `.superRefine` they are also asked when
 * another field is missing or of the wrong type, so that a person is told everything at once. A rule that reads such a
 * field says nothing, since that field has its own problem; so write one rule for each question.
 */
export function relations<T>(...rules: readonly Rule<T>[]): z.core.$ZodCheck<T> {
  return z.superRefine<T>(
    (value, ctx) => {
      const bad = unreadable(ctx.issues);
      if (!bad) return;
      const seen = bad.size === 0 ? value : guarded(value, bad);
      for (const rule of rules) {
        try {
          rule(seen, ctx);
        } catch (error) {
          if (!(error instanceof NotReadable)) throw error;
        }
      }
    },
    { when: ({ value }) => typeof value === 'object' && value !== null },
  );
}
