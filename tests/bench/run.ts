import { readdir } from 'node:fs/promises';
import { availableParallelism, totalmem } from 'node:os';
import { join } from 'node:path';
import { isMainThread, parentPort, Worker, workerData } from 'node:worker_threads';
import type { Bench, BenchRow, LeftOut } from './row.ts';
import { formatTable, overLimit } from './table.ts';

/**
 * `npm run bench [-- NAME…]`: runs every `tests/bench/*.ts` that exports `bench()` and prints one table, each measure
 * beside a plain alternative measured in the same run. One that fails or takes too long is reported and the others go
 * on; exit 1 if any did, or if a measure is over the limit that its row names. One that needs what this machine does not have says so, and is no failure. Each runs in a thread of its own, so that it can be stopped and leaves nothing behind.
 */
const LIMIT_S = 240;
const helpers = new Set(['run.ts', 'row.ts', 'table.ts']);

type Answer =
  { readonly rows: readonly BenchRow[] } | { readonly problem: string } | LeftOut | { readonly none: true };
/** Said first by a bench that takes longer by its nature. */
type Longer = { readonly limitS: number };

async function inThread(file: string): Promise<Answer> {
  const module = (await import(file)) as { bench?: unknown; limitS?: unknown };
  if (typeof module.limitS === 'number') parentPort?.postMessage({ limitS: module.limitS } satisfies Longer);
  if (typeof module.bench !== 'function') return { none: true };
  const measured = await (module.bench as Bench)();
  return 'leftOut' in measured ? measured : { rows: measured };
}

function measure(file: string): Promise<Answer> {
  const worker = new Worker(import.meta.filename, { workerData: { file } });
  return new Promise((resolve) => {
    const limited = (limitS: number): NodeJS.Timeout =>
      setTimeout(() => end({ problem: `stopped after ${limitS} s` }), limitS * 1000);
    let timer = limited(LIMIT_S);
    const end = (answer: Answer): void => {
      clearTimeout(timer);
      void worker.terminate();
      resolve(answer);
    };
    worker.on('message', (answer: Answer | Longer) => {
      if (!('limitS' in answer)) end(answer);
      else {
        clearTimeout(timer);
        timer = limited(answer.limitS);
      }
    });
    worker.once('error', (error: unknown) =>
      end({ problem: error instanceof Error ? error.message : String(error) }),
    );
    worker.once('exit', (code) => end({ problem: `ended with exit ${code} before it answered` }));
  });
}

async function main(wanted: readonly string[]): Promise<number> {
  const files = (await readdir(import.meta.dirname))
    .filter((name) => name.endsWith('.ts') && !name.endsWith('.test.ts') && !helpers.has(name))
    .filter((name) => wanted.length === 0 || wanted.includes(name.replace(/\.ts$/, '')))
    .sort();
  if (files.length === 0) {
    console.error(wanted.length > 0 ? `There is no bench named ${wanted.join(', ')}.` : 'There is no bench.');
    return 1;
  }
  console.log(
    `Node ${process.version}, ${process.arch}, ${availableParallelism()} cores, ${Math.round(totalmem() / 2 ** 30)} GB\n`,
  );
  const rows: BenchRow[] = [];
  const problems: string[] = [];
  const leftOut: string[] = [];
  for (const name of files) {
    process.stderr.write(`measuring ${name.replace(/\.ts$/, '')} …\n`);
    const answer = await measure(join(import.meta.dirname, name));
    if ('rows' in answer) {
      rows.push(...answer.rows);
      problems.push(...overLimit(answer.rows));
    } else if ('problem' in answer) problems.push(`${name}: ${answer.problem}`);
    else if ('leftOut' in answer) leftOut.push(`${name}: ${answer.leftOut}`);
  }
  if (rows.length > 0) console.log(formatTable(rows));
  for (const reason of leftOut) console.log(`LEFT OUT  ${reason}`);
  for (const problem of problems) console.log(`FAILED  ${problem}`);
  return problems.length > 0 || rows.length + leftOut.length === 0 ? 1 : 0;
}

if (isMainThread) process.exitCode = await main(process.argv.slice(2));
else {
  const { file } = workerData as { file: string };
  parentPort?.postMessage(await inThread(file));
}
