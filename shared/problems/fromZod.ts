import type * as z from 'zod';
import { problem, type Problem } from './problem.ts';

/** A custom check names its catalogue code in `params`: `ctx.addIssue(problemIssue('jet-needs-height', ['jetHeightIn']))`. */
export function problemIssue(
  code: string,
  path: readonly PropertyKey[] = [],
  params: Problem['params'] = {},
) {
  return { code: 'custom' as const, path: [...path], message: code, params: { problem: code, ...params } };
}

/** A check with a name of its own carries its catalogue code as the message; zod's own messages are sentences. */
const named = ({ message }: z.core.$ZodIssue): string | null =>
  /^[a-z0-9]+(-[a-z0-9]+)+$/.test(message) ? message : null;

/** A union told apart by one field says which values that field may have. */
function noBranch(issue: z.core.$ZodIssueInvalidUnion, at: string): Problem {
  const options = 'options' in issue && Array.isArray(issue.options) ? issue.options : [];
  const values = options.filter((option): option is string => typeof option === 'string');
  return values.length > 0
    ? problem('not-one-of', at, { values: values.join(', ') })
    : problem('no-such-choice', at);
}

type Branch = readonly z.core.$ZodIssue[];

/** Closer is a branch of the right kind of value with things wrong in it; of two such, the one with fewer of them. */
function nearer(a: Branch, b: Branch): boolean {
  const ofAnotherKind = (branch: Branch): boolean =>
    branch.some(({ code, path }) => code === 'invalid_type' && path.length === 0);
  if (ofAnotherKind(a) !== ofAnotherKind(b)) return ofAnotherKind(b);
  return a.length < b.length;
}

const dotted = (path: readonly PropertyKey[]): string => path.map(String).join('.');

/**
 * Every issue that zod found, as problems with a catalogue code each. A union that fails is reported by the
 * branch that came closest, because "invalid input" tells nobody what would be right.
 */
export function problemsFromZod(
  issues: readonly z.core.$ZodIssue[],
  prefix: readonly PropertyKey[] = [],
): Problem[] {
  return issues.flatMap((issue): Problem[] => {
    const path = [...prefix, ...issue.path];
    const at = dotted(path);
    switch (issue.code) {
      case 'invalid_type':
        return [
          issue.input === undefined
            ? problem('required', at, { expected: issue.expected })
            : problem('wrong-type', at, { expected: issue.expected }),
        ];
      case 'too_small':
        return [
          issue.origin === 'string'
            ? problem(Number(issue.minimum) <= 1 ? 'required' : 'too-short', at, {
                minimum: Number(issue.minimum),
                expected: 'string',
              })
            : issue.origin === 'array'
              ? problem('too-few', at, { minimum: Number(issue.minimum) })
              : problem(issue.inclusive === false ? 'not-above' : 'below-minimum', at, {
                  minimum: Number(issue.minimum),
                }),
        ];
      case 'too_big':
        return [
          issue.origin === 'string'
            ? problem('too-long', at, { maximum: Number(issue.maximum) })
            : issue.origin === 'array'
              ? problem('too-many', at, { maximum: Number(issue.maximum) })
              : problem('above-maximum', at, { maximum: Number(issue.maximum) }),
        ];
      case 'invalid_format':
        return [problem(named(issue) ?? `format-${issue.format}`, at)];
      case 'invalid_value':
        return [problem('not-one-of', at, { values: issue.values.map(String).join(', ') })];
      case 'unrecognized_keys':
        return issue.keys.map((key) => problem('unknown-field', dotted([...path, key]), { field: key }));
      case 'not_multiple_of':
        return [problem('not-multiple', at, { divisor: issue.divisor })];
      case 'invalid_union': {
        const branches = issue.errors.filter((branch) => branch.length > 0);
        if (branches.length === 0) return [noBranch(issue, at)];
        const closest = branches.reduce((best, branch) => (nearer(branch, best) ? branch : best));
        return problemsFromZod(closest, path);
      }
      case 'custom': {
        const { problem: code, ...params } = (issue.params ?? {}) as Record<string, string | number>;
        return [problem(typeof code === 'string' ? code : (named(issue) ?? 'not-valid'), at, params)];
      }
      default:
        return [problem('not-valid', at)];
    }
  });
}
