import { spawn } from 'node:child_process';
import { createWriteStream } from 'node:fs';
import { readFile, rm } from 'node:fs/promises';
import { delimiter, join } from 'node:path';
import { finished } from 'node:stream/promises';
import { setTimeout as delay } from 'node:timers/promises';
import { countVitest, failedFiles, heldOnSecondTry, withSecondTry } from './count.ts';
import { COULD_NOT_ASK, type Step, type StepResult } from './step.ts';

const LAST_WORDS_MS = 2000;

const running = new Set<number>();

/** Stops every step that still runs, with whatever it started: nothing outlives an interrupted run. */
export function stopAll(): void {
  for (const pid of running) stop(pid);
}

function stop(pid: number): void {
  try {
    process.kill(-pid, 'SIGKILL');
  } catch {
    // It ended by itself in the meantime.
  }
}

/**
 * Runs one step in a process group of its own, its output in `<folder>/<name>.log`. Never throws: whatever goes wrong
 * is a failure of the step, and the others still run.
 */
export async function runStep(step: Step, folder: string, root: string): Promise<StepResult> {
  const started = performance.now();
  const base = join(folder, step.name.replaceAll(' ', '-'));
  const logFile = `${base}.log`;
  const reportFile = `${base}.json`;
  await rm(reportFile, { force: true });
  const report = step.vitest ? reporters(reportFile) : [];
  const exit = await spawnLogged([...step.command, ...report], step.limitS, logFile, root);
  const seconds = (): number => (performance.now() - started) / 1000;

  if (step.vitest) {
    const first = await readReport(reportFile);
    const counted = countVitest(first, exit);
    const files = step.secondTry ? failedFiles(first) : [];
    if (files.length === 0 || !exit.startsWith('exit'))
      return { step, seconds: seconds(), logFile, ...counted };
    const [program, ...args] = step.command;
    const again = `${base}-again`;
    await rm(`${again}.json`, { force: true });
    const secondExit = await spawnLogged(
      // The folder gives way to the files in it that failed.
      [
        program,
        ...args.filter((part) => !part.startsWith('tests/')),
        ...files,
        ...reporters(`${again}.json`),
      ],
      step.limitS,
      `${again}.log`,
      root,
    );
    const second = withSecondTry(first, await readReport(`${again}.json`));
    const merged = countVitest(second, secondExit);
    return {
      step,
      seconds: seconds(),
      logFile: merged.counts.failed > 0 ? `${again}.log` : logFile,
      ...merged,
      onSecondTry: heldOnSecondTry(first, second),
    };
  }
  const ok = exit === 'exit 0';
  const skipped = step.maySkip === true && exit === `exit ${COULD_NOT_ASK}`;
  return {
    step,
    seconds: seconds(),
    logFile,
    counts: { passed: ok ? 1 : 0, failed: ok || skipped ? 0 : 1, skipped: skipped ? 1 : 0 },
    failures: ok || skipped ? [] : [exit],
  };
}

const reporters = (file: string): string[] => [
  '--reporter=default',
  '--reporter=json',
  `--outputFile.json=${file}`,
  '--allowOnly=false',
];

const readReport = async (file: string): Promise<unknown> =>
  parseOrNull(await readFile(file, 'utf8').catch(() => ''));

function parseOrNull(text: string): unknown {
  try {
    return JSON.parse(text) as unknown;
  } catch {
    return null;
  }
}

/** How the process ended: `exit 0`, `signal SIGKILL`, `stopped after 300 s`, or why it did not start. */
async function spawnLogged(
  command: readonly string[],
  limitS: number,
  logFile: string,
  root: string,
): Promise<string> {
  const bin = join(root, 'node_modules', '.bin');
  const [program = '', ...args] = command;
  const log = createWriteStream(logFile);
  const child = spawn(program === 'node' ? process.execPath : join(bin, program), args, {
    cwd: root,
    detached: true,
    stdio: ['ignore', 'pipe', 'pipe'],
    env: {
      ...process.env,
      PATH: `${bin}${delimiter}${process.env['PATH'] ?? ''}`,
      NO_COLOR: '1',
      ASTRO_TELEMETRY_DISABLED: '1',
      CDK_DISABLE_VERSION_CHECK: '1',
      CDK_DISABLE_CLI_TELEMETRY: 'true',
    },
  });
  const { pid } = child;
  if (pid !== undefined) running.add(pid);
  child.stdout.pipe(log, { end: false });
  child.stderr.pipe(log, { end: false });

  const closed = new Promise<void>((resolve) => child.once('close', () => resolve()));
  const exit = await new Promise<string>((resolve) => {
    const timer = setTimeout(() => resolve(`stopped after ${limitS} s`), limitS * 1000);
    const end = (how: string): void => {
      clearTimeout(timer);
      resolve(how);
    };
    child.once('error', ({ message }) => end(message));
    child.once('exit', (code, signal) =>
      end(signal === null ? `exit ${code ?? 'unknown'}` : `signal ${signal}`),
    );
  });
  if (pid !== undefined) {
    // Also after a good end: a server that a step left behind would hold a port, and this process.
    stop(pid);
    running.delete(pid);
  }
  // The last words are still in the pipe; a stray that left the group must not keep it open for ever.
  await Promise.race([closed, delay(LAST_WORDS_MS, undefined, { ref: false })]);
  child.stdout.unpipe(log);
  child.stderr.unpipe(log);
  child.stdout.destroy();
  child.stderr.destroy();
  log.end();
  await finished(log).catch(() => undefined);
  return exit;
}
