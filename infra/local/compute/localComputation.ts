import type * as z from 'zod';
import type { Computation } from '../../../shared/compute/computation.ts';
import type { Reader } from '../../../shared/units/format.ts';

/** A computation that needs this machine (a file, a thread) and so cannot stand in `shared/`. */
export interface LocalComputation<Input extends z.ZodType = z.ZodType> extends Omit<
  Computation<Input>,
  'run'
> {
  readonly run: (input: z.output<Input>, reader: Reader) => Promise<unknown>;
}

/** Gives the literal its types. */
export function localComputation<Input extends z.ZodType>(
  definition: LocalComputation<Input>,
): LocalComputation<Input> {
  return definition;
}
