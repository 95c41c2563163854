import {
  answerFor,
  carriesProblems,
  compute,
  prepare,
  type Computed,
} from '../../../shared/compute/compute.ts';
import { computations } from '../../../shared/compute/registry.ts';
import type { Reader } from '../../../shared/units/format.ts';
import type { LocalComputation } from './localComputation.ts';
import { networkComputations } from './network.ts';
import { scheduleComputations } from './schedule.ts';

// The schema and `run` of one entry fit each other; the list as a whole forgets how.
const local: ReadonlyMap<string, LocalComputation> = new Map(
  [...networkComputations, ...scheduleComputations].map((entry) => [
    entry.name,
    entry as unknown as LocalComputation,
  ]),
);

type Listed = Pick<LocalComputation, 'name' | 'summary' | 'output' | 'example'>;

/** Everything that the command computes, the pure ones first. */
export const allComputations: readonly Listed[] = [...computations.values(), ...local.values()];

export const isComputation = (name: string): boolean => computations.has(name) || local.has(name);

/** As `compute`, for those that need this machine as well. */
export async function computeHere(name: string, input: unknown, reader: Reader): Promise<Computed> {
  const found = local.get(name);
  if (!found) return compute(name, input, reader);
  const prepared = prepare(found, input);
  if (!prepared.ok) return prepared;
  try {
    return { ok: true, output: answerFor(found, await found.run(prepared.input, reader), reader) };
  } catch (error) {
    if (carriesProblems(error)) return { ok: false, problems: prepared.asTyped(error.problems) };
    throw error;
  }
}
