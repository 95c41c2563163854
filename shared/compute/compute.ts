import { problem, type Problem } from '../problems/problem.ts';
import { problemsFromZod } from '../problems/fromZod.ts';
import type { Reader } from '../units/format.ts';
import { problemsAsTyped, quantitiesInMetric, quantitiesInUs } from '../units/named.ts';
import type { Computation } from './computation.ts';
import { computations } from './registry.ts';

export type Computed =
  | { readonly ok: true; readonly output: unknown }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** True for an error by which a formula refuses its arguments: it carries what is wrong with them. */
export function carriesProblems(error: unknown): error is Error & { readonly problems: readonly Problem[] } {
  return error instanceof Error && 'problems' in error && Array.isArray(error.problems);
}

const usualReader: Reader = { system: 'us', locale: 'en' };

/** A question that passed its schema, or every problem with it, under the names that were typed. */
export type Prepared =
  | {
      readonly ok: true;
      readonly input: unknown;
      readonly asTyped: (problems: readonly Problem[]) => Problem[];
    }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** Reads input from outside by the schema of a computation, in either system where it takes both. */
export function prepare(
  { input: schema, eitherSystem }: Pick<Computation, 'input' | 'eitherSystem'>,
  given: unknown,
): Prepared {
  const inUs = eitherSystem
    ? quantitiesInUs(given)
    : { value: given, typed: new Map<string, never>(), problems: [] };
  const asTyped = (problems: readonly Problem[]): Problem[] => problemsAsTyped(problems, inUs.typed);
  const parsed = schema.safeParse(inUs.value, { reportInput: true });
  const problems = [
    ...inUs.problems,
    ...(parsed.success ? [] : asTyped(problemsFromZod(parsed.error.issues))),
  ];
  return parsed.success && problems.length === 0
    ? { ok: true, input: parsed.data, asTyped }
    : { ok: false, problems };
}

/** An answer in the reader's units, where its computation knows both systems. */
export const answerFor = (
  { eitherSystem }: Pick<Computation, 'eitherSystem'>,
  output: unknown,
  { system }: Reader,
): unknown => (eitherSystem && system === 'metric' ? quantitiesInMetric(output) : output);

/**
 * Runs the computation of that name on input from outside. Every problem at once, with the path of its field as it was
 * typed; an error that is not about the input (a fault of ours) is thrown on. The answer is in the reader's units.
 */
export function compute(name: string, input: unknown, reader: Reader = usualReader): Computed {
  const found = computations.get(name);
  if (!found)
    return {
      ok: false,
      problems: [problem('unknown-computation', '', { name, names: [...computations.keys()].join(', ') })],
    };
  const prepared = prepare(found, input);
  if (!prepared.ok) return prepared;
  try {
    return { ok: true, output: answerFor(found, found.run(prepared.input, reader), reader) };
  } catch (error) {
    if (carriesProblems(error)) return { ok: false, problems: prepared.asTyped(error.problems) };
    throw error;
  }
}
