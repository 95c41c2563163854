import { Worker } from 'node:worker_threads';
import { MOST_HEIF_PIXELS, PICTURE_LIMIT_MS } from '../../../shared/evidence/limits.ts';
import type { HeifReply, HeifRequest } from './heifWorker.ts';

/**
 * The thread's program: beside this file in the repository, and beside the bundle where it is deployed
 * (`infra/aws/bundling.ts` puts it there), because a bundle of one file has no second one to start.
 */
const besideProgram = new URL(
  import.meta.url.endsWith('.ts') ? './heifWorker.ts' : './heifWorker.mjs',
  import.meta.url,
);

export interface PictureOptions {
  readonly limitMs?: number;
  readonly mostPixels?: number;
}

export type Unpacked =
  | Extract<HeifReply, { ok: true }>
  | { readonly ok: false; readonly reason: 'corrupt' | 'too-large' | 'too-slow' };

let last: Promise<unknown> = Promise.resolve();

/**
 * Unpacks a HEIF picture (HEIC among them), upright, in a thread that is killed when its time is up. One at a time in
 * this process: each may need some hundreds of megabytes.
 */
export function unpackHeif(bytes: Uint8Array, options: PictureOptions = {}): Promise<Unpacked> {
  const turn = last.then(() => inThread(bytes, options));
  last = turn.catch(() => undefined);
  return turn;
}

async function inThread(
  bytes: Uint8Array,
  { limitMs = PICTURE_LIMIT_MS, mostPixels = MOST_HEIF_PIXELS }: PictureOptions,
): Promise<Unpacked> {
  // What the library prints about a broken file helps nobody; what it is, is said in our words.
  const worker = new Worker(besideProgram, {
    stdout: true,
    stderr: true,
    resourceLimits: { maxOldGenerationSizeMb: 1024 },
  });
  let timer: NodeJS.Timeout | undefined;
  try {
    return await new Promise<Unpacked>((resolve, reject) => {
      timer = setTimeout(() => resolve({ ok: false, reason: 'too-slow' }), limitMs);
      worker.once('message', resolve);
      worker.once('error', (error: unknown) => {
        if (isTheFilesDoing(error)) resolve({ ok: false, reason: 'corrupt' });
        else reject(error instanceof Error ? error : new Error(String(error)));
      });
      worker.once('exit', (code) => {
        reject(new Error(`the thread that unpacks pictures ended with ${code} before it answered`));
      });
      worker.postMessage({ bytes, mostPixels } satisfies HeifRequest);
    });
  } finally {
    clearTimeout(timer);
    await worker.terminate();
  }
}

/** The library ran into its own wall (memory, an assertion, a table out of bounds): the file did it. */
const isTheFilesDoing = (error: unknown): boolean =>
  error instanceof Error &&
  (error.name === 'RuntimeError' || ('code' in error && error.code === 'ERR_WORKER_OUT_OF_MEMORY'));
