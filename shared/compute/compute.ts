import { problem, type Problem } from '../problems/problem.ts';
import { problemsFromZod } from '../problems/fromZod.ts';
import { computations } from './registry.ts';

export type Computed =
  | { readonly ok: true; readonly output: unknown }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** True for an error by which a formula refuses its arguments: it carries what is wrong with them. */
function carriesProblems(error: unknown): error is Error & { readonly problems: readonly Problem[] } {
  return error instanceof Error && 'problems' in error && Array.isArray(error.problems);
}

/**
 * Runs the computation of that name on input from outside. Every problem at once, with the path of its field; an error
 * that is not about the input (a fault of ours) is thrown on.
 */
export function compute(name: string, input: unknown): Computed {
  const found = computations.get(name);
  if (!found)
    return {
      ok: false,
      problems: [problem('unknown-computation', '', { name, names: [...computations.keys()].join(', ') })],
    };
  const parsed = found.input.safeParse(input, { reportInput: true });
  if (!parsed.success) return { ok: false, problems: problemsFromZod(parsed.error.issues) };
  try {
    return { ok: true, output: found.run(parsed.data) };
  } catch (error) {
    if (carriesProblems(error)) return { ok: false, problems: error.problems };
    throw error;
  }
}
