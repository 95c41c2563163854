import { describeError } from './log.ts';

/** An error for whoever runs the system. Its message may be logged: it names settings, addresses of ours and hashes only. */
export class OperatorFault extends Error {
  override readonly name: string = 'OperatorFault';
}

/**
 * A function as the platform starts it, whose failure is told without words. What a function throws, the platform itself
 * writes into the log, with its message and every field: there a parser quotes its input, and a database's client keeps
 * the item that it was refused. Of an `OperatorFault` it may; of everything else only the kind and the place are left.
 */
export function wordless<A extends readonly unknown[], R>(
  run: (...given: A) => Promise<R>,
): (...given: A) => Promise<R> {
  return async (...given) => {
    try {
      return await run(...given);
    } catch (error) {
      throw error instanceof OperatorFault ? error : withoutWords(error);
    }
  };
}

/** An error of the same name and code, thrown at the same place, that says nothing else. */
function withoutWords(error: unknown): Error {
  const { errorName, errorCode, causeName, errorAt } = describeError(error);
  const told = new Error(causeName === undefined ? 'failed' : `failed, caused by ${causeName}`);
  told.name = errorName;
  told.stack = [`${errorName}: ${told.message}`, ...(errorAt?.split(' | ') ?? [])].join('\n    ');
  return errorCode === undefined ? told : Object.assign(told, { code: errorCode });
}
