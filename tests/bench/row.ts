/** One measure of a bench. */
export interface BenchRow {
  readonly name: string;
  readonly value: number;
  readonly unit: string;
  /** The plain alternative measured in the same run, in the same unit. */
  readonly beside?: { readonly name: string; readonly value: number };
}

/** What a file of this folder exports as `bench`. */
export type Bench = () => Promise<readonly BenchRow[]> | readonly BenchRow[];
