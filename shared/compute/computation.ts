import type * as z from 'zod';
import type { Reader } from '../units/format.ts';
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
   * True where every quantity's name ends in its unit, so that the question may be typed and the answer be had in either
   * system (`staticPsi` or `staticKpa`). Inside it is US all the same.
   */
  readonly eitherSystem?: true;
  /**
   * Pure. May throw an error that carries `problems` (as `OutOfRange` does) for what the schema could not see; anything
   * else thrown is a fault of ours. The reader is who will read the sentences in the answer.
   */
  readonly run: (input: z.output<Input>, reader: Reader) => unknown;
}

/** Gives the literal its types. */
export function computation<Input extends z.ZodType>(definition: Computation<Input>): Computation<Input> {
  return definition;
}
