/** One thing that `npm test` runs in a process of its own. */
export interface Step {
  readonly name: string;
  /** A program of node_modules/.bin and its arguments. */
  readonly command: readonly [string, ...string[]];
  /** After this many seconds it is stopped and counts as failed. */
  readonly limitS: number;
  /** A vitest run is counted test by test, from the report it writes; any other step counts as one. */
  readonly vitest?: true;
  /**
   * A real browser on a busy machine misses a beat now and then: files with a failure are run once more, by themselves
   * and on fresh servers, and what they say then counts. What needed it is printed. Only for a vitest run.
   */
  readonly secondTry?: true;
  /** It may end with `COULD_NOT_ASK`, and then counts as skipped: neither passed nor failed. */
  readonly maySkip?: true;
}

/** The exit code of a step that needs another machine and did not reach it (EX_TEMPFAIL of BSD's sysexits.h). */
export const COULD_NOT_ASK = 75;

export interface Counts {
  readonly passed: number;
  readonly failed: number;
  readonly skipped: number;
}

export interface StepResult {
  readonly step: Step;
  readonly counts: Counts;
  readonly seconds: number;
  /** What failed, a line each; empty when all is well. */
  readonly failures: readonly string[];
  /** What failed first and held when its file was run again. */
  readonly onSecondTry?: readonly string[];
  readonly logFile: string;
}

/** Lanes of a phase run side by side, the steps of a lane one after another. */
export type Phase = readonly (readonly Step[])[];
