/** One measure of a bench. */
export interface BenchRow {
  readonly name: string;
  readonly value: number;
  readonly unit: string;
  /** The plain alternative measured in the same run, in the same unit. */
  readonly beside?: { readonly name: string; readonly value: number };
  /** More than this and the bench fails: what was promised, in the same unit. Left out where nothing was. */
  readonly atMost?: number;
}

/** Said in place of rows by a bench that needs something which this machine does not have: in words, what. */
export interface LeftOut {
  readonly leftOut: string;
}

/** What a file of this folder exports as `bench`. */
export type Bench = () => Promise<readonly BenchRow[] | LeftOut> | readonly BenchRow[] | LeftOut;
