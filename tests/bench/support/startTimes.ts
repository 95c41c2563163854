import { execFile } from 'node:child_process';
import { promisify } from 'node:util';

const ROUNDS = 7;

/** Milliseconds from the start of a fresh Node to a loaded handler, as a cold start does once the machine is up. */
async function startMs(file: string): Promise<number> {
  const code = `await import(${JSON.stringify(file)}); console.log(performance.now());`;
  const { stdout } = await promisify(execFile)(process.execPath, ['--input-type=module', '-e', code]);
  return Number(stdout);
}

/** Medians, all in turn in every round: whatever else the machine does then slows them alike. */
export async function medianStartMs(files: readonly string[]): Promise<Map<string, number>> {
  const times = new Map<string, number[]>(files.map((file) => [file, []]));
  for (let round = 0; round < ROUNDS; round++)
    for (const file of files) times.get(file)?.push(await startMs(file));
  return new Map(
    [...times].map(([file, of]) => [file, of.sort((a, b) => a - b)[Math.floor(ROUNDS / 2)] ?? Number.NaN]),
  );
}
