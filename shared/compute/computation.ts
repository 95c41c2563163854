import type * as z from 'zod';
import type { WordKey } from '../words/index.ts';

/**
 * Something that `shared/` computes, offered by name on the command line. To add one: write a file here that exports a
 * computation, and give it a line in `registry.ts`. Its example is run as a test and is shown by the command.
 */
export interface Computation<Input extends z.ZodType = z.ZodType> {
  readonly name: string;
  /** One sentence: what it answers. */
  readonly summary: WordKey;
  /** The fields of its answer, with null and units explained. */
  readonly output: WordKey;
  readonly input: Input;
  /** Input that works, as a person would type it. */
  readonly example: z.input<Input>;
  /**
   * Pure. May throw an error that carries `problems` (as `OutOfRange` does) for what the schema could not see; anything
   * else thrown is a fault of ours.
   */
  readonly run: (input: z.output<Input>) => unknown;
}

/** Gives the literal its types. */
export function computation<Input extends z.ZodType>(definition: Computation<Input>): Computation<Input> {
  return definition;
}
