import { execFile } from 'node:child_process';
import { promisify } from 'node:util';

const ROUNDS = 7;

/** From the start of a fresh Node to a loaded handler, as a cold start does once the machine is up. */
export interface StartTimes {
  readonly wallMs: number;
  /** Of all threads: beside other work the one says little, this still does. */
  readonly cpuMs: number;
}

async function startOf(file: string): Promise<StartTimes> {
  const code = `await import(${JSON.stringify(file)});
const { user, system } = process.cpuUsage();
console.log(JSON.stringify({ wallMs: performance.now(), cpuMs: (user + system) / 1000 }));`;
  const { stdout } = await promisify(execFile)(process.execPath, ['--input-type=module', '-e', code]);
  return JSON.parse(stdout) as StartTimes;
}

const median = (of: readonly number[]): number =>
  of.toSorted((a, b) => a - b)[Math.floor(of.length / 2)] ?? Number.NaN;

/** Medians, all in turn in every round: whatever else the machine does then slows them alike. */
export async function medianStarts(files: readonly string[]): Promise<ReadonlyMap<string, StartTimes>> {
  const times = new Map<string, StartTimes[]>(files.map((file) => [file, []]));
  for (let round = 0; round < ROUNDS; round++)
    for (const file of files) times.get(file)?.push(await startOf(file));
  return new Map(
    [...times].map(([file, of]) => [
      file,
      { wallMs: median(of.map(({ wallMs }) => wallMs)), cpuMs: median(of.map(({ cpuMs }) => cpuMs)) },
    ]),
  );
}
