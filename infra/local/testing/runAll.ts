import { mkdir, readFile } from 'node:fs/promises';
import { relative } from 'node:path';
import { closingLine, sum } from './count.ts';
import { runStep } from './runStep.ts';
import type { Phase, Step, StepResult } from './step.ts';

const MOST_FAILURES_SHOWN = 15;
const LOG_LINES_SHOWN = 40;

export interface Run {
  readonly phases: readonly Phase[];
  /** Where logs and reports go. */
  readonly folder: string;
  /** The repository's root. */
  readonly root: string;
  readonly print: (line: string) => void;
}

/** Runs everything, whatever fails on the way, and prints a summary that ends with the closing line. */
export async function runAll({ phases, folder, root, print }: Run): Promise<readonly StepResult[]> {
  await mkdir(folder, { recursive: true });
  const results: StepResult[] = [];
  const lane = async (steps: readonly Step[]): Promise<void> => {
    for (const step of steps) {
      const result = await runStep(step, folder, root);
      results.push(result);
      print(line(result));
      if (wasSkipped(result)) print(`  ${(await readFile(result.logFile, 'utf8')).trim()}`);
      for (const failure of result.onSecondTry ?? []) print(`  held only on a second try: ${failure}`);
    }
  };
  for (const phase of phases) await Promise.all(phase.map(lane));

  const failed = results.filter(({ counts }) => counts.failed > 0);
  for (const result of failed) await printFailure(result, root, print);
  const counts = sum(results.map((result) => result.counts));
  print('');
  if (failed.length > 0) for (const result of results) print(line(result));
  if (results.length === 0) print('There was nothing to run.');
  print(closingLine(results.length === 0 ? { passed: 0, failed: 1, skipped: 0 } : counts));
  return results;
}

/** The whole step, and not a test of it. */
const wasSkipped = ({ step, counts }: StepResult): boolean => step.maySkip === true && counts.skipped > 0;

function line(result: StepResult): string {
  const { step, counts, seconds } = result;
  const mark = counts.failed > 0 ? 'FAILED' : wasSkipped(result) ? 'skipped' : 'ok';
  const what = step.vitest ? closingLine(counts) : '';
  return `${mark.padEnd(7)} ${step.name.padEnd(12)} ${seconds.toFixed(1).padStart(6)} s   ${what}`.trimEnd();
}

async function printFailure(result: StepResult, root: string, print: Run['print']): Promise<void> {
  const log = await readFile(result.logFile, 'utf8').catch(() => '');
  print(`\n── ${result.step.name}: ${relative(root, result.logFile)} ──`);
  for (const text of log.trimEnd().split('\n').slice(-LOG_LINES_SHOWN)) print(text);
  for (const failure of result.failures.slice(0, MOST_FAILURES_SHOWN)) print(`  ✗ ${failure}`);
  const more = result.failures.length - MOST_FAILURES_SHOWN;
  if (more > 0) print(`  … and ${more} more`);
}
