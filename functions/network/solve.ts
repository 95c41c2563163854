import { Worker } from 'node:worker_threads';
import type { NetworkQuestion } from '../../shared/network/question.ts';
import { problem } from '../../shared/problems/problem.ts';
import type { ModelOutline } from '../../shared/network/outline.ts';
import type { NetworkAnswer } from '../../shared/network/answer.ts';
import { besideProgram } from './program.ts';
import type { NetworkReply, NetworkRequest, Reply } from './worker.ts';

/** Time for one question. The large public networks take a tenth of a second; what takes longer than this is broken. */
export const LIMIT_MS = 10_000;
/** The text of a network of a hundred thousand pipes. */
export const MOST_BYTES = 20_000_000;

export interface SolveOptions {
  readonly limitMs?: number;
  /** The thread's program; another one where a bundle holds it elsewhere. */
  readonly program?: URL;
}

/**
 * Answers a question about a network in a thread that is killed when its time is up. A broken or slow file is a problem
 * that names what is wrong with it; it never blocks the rest and never leaves a thread behind.
 *
 * @throws only for a fault of ours (the thread's program is not there)
 */
export const solveNetwork = (
  inp: string,
  question: NetworkQuestion,
  options: SolveOptions = {},
): Promise<NetworkReply> => inThread<NetworkAnswer>({ inp, question }, options);

/** What a network file holds, and how it looks at an hour of its clock; in a thread as `solveNetwork`. */
export const readOutline = (
  inp: string,
  hour: number,
  options: SolveOptions = {},
): Promise<Reply<ModelOutline>> =>
  inThread<ModelOutline>({ inp, question: { ask: 'outline', hour } }, options);

async function inThread<Answer>(
  request: NetworkRequest,
  { limitMs = LIMIT_MS, program = besideProgram }: SolveOptions,
): Promise<Reply<Answer>> {
  const { inp } = request;
  if (Buffer.byteLength(inp) > MOST_BYTES)
    return {
      ok: false,
      problems: [problem('network-too-large', 'inp', { megabytes: MOST_BYTES / 1_000_000 })],
    };
  // The package prints what it doubts; that goes nowhere, the reply carries it.
  const worker = new Worker(program, {
    stdout: true,
    stderr: true,
    resourceLimits: { maxOldGenerationSizeMb: 512 },
  });
  let timer: NodeJS.Timeout | undefined;
  try {
    return await new Promise<Reply<Answer>>((resolve, reject) => {
      timer = setTimeout(() => {
        resolve({ ok: false, problems: [problem('network-too-slow', 'inp', { seconds: limitMs / 1000 })] });
      }, limitMs);
      worker.once('message', resolve);
      worker.once('error', (error: unknown) => {
        if (isEngineCrash(error))
          resolve({ ok: false, problems: [problem('network-broken', 'inp', { detail: error.message })] });
        else reject(error instanceof Error ? error : new Error(String(error)));
      });
      worker.once('exit', (code) => {
        reject(new Error(`the network's thread ended with ${code} before it answered`));
      });
      worker.postMessage(request);
    });
  } finally {
    clearTimeout(timer);
    await worker.terminate();
  }
}

/** The engine ran into its own wall (memory, a table out of bounds): the file did it, not this program. */
const isEngineCrash = (error: unknown): error is Error =>
  error instanceof Error &&
  (error.name === 'RuntimeError' || ('code' in error && error.code === 'ERR_WORKER_OUT_OF_MEMORY'));
