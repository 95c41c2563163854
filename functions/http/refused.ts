import { problem, type Problem } from '../../shared/problems/problem.ts';

/**
 * Why a request is not done, in the words of the work. `problemDocument.ts` is the one place that knows which HTTP
 * status each of them is.
 */
export const reasons = [
  'not-json',
  'not-signed-in',
  'not-allowed',
  'not-found',
  'clash',
  'already-corrected',
  'taken',
  'too-large',
  'too-many',
  'invalid',
  'unavailable',
  'fault',
] as const;
export type Reason = (typeof reasons)[number];

export interface RefusedOptions {
  /** Members beside `problems` in the answer, such as the `field` of a clash. */
  readonly extra?: Readonly<Record<string, string>>;
  readonly cause?: unknown;
  /** After so many seconds it is worth trying again. */
  readonly retryAfterS?: number;
}

/** Thrown by a handler, or by what it calls, to answer with a problem document. It always says at least one problem. */
export class Refused extends Error {
  override readonly name = 'Refused';
  readonly reason: Reason;
  readonly problems: readonly Problem[];
  readonly extra: Readonly<Record<string, string>>;
  readonly retryAfterS: number | undefined;

  constructor(reason: Reason, problems: readonly Problem[], options: RefusedOptions = {}) {
    super(reason, { cause: options.cause });
    this.reason = reason;
    this.problems = problems;
    this.extra = options.extra ?? {};
    this.retryAfterS = options.retryAfterS;
  }
}

export const refuse = (
  reason: Reason,
  problems: Problem | readonly Problem[],
  options: RefusedOptions = {},
): never => {
  throw new Refused(reason, 'code' in problems ? [problems] : problems, options);
};

/** The thing that the address names is not there. `code` is a catalogue code such as `no-such-strike`. */
export const notFound = (code: string, params: Problem['params'] = {}): never =>
  refuse('not-found', problem(code, '', params));
