/** A computed item kept for reading. `version` counts its writes, so that an older reading never replaces a newer. */
export interface Versioned<T> {
  readonly value: T;
  readonly version: number;
}

/**
 * What is computed from the ledger and kept for reading: partitions of keyed JSON values. Everything here can be
 * thrown away and made anew by `npm run rebuild`.
 */
export interface ProjectionStore {
  get<T>(partition: string, key: string): Promise<Versioned<T> | null>;
  /** All values of a partition, by key order. */
  list<T>(
    partition: string,
  ): Promise<readonly { readonly key: string; readonly value: T; readonly version: number }[]>;
  /** Writes if the stored version is still `expected` (0: absent). False when it is not. */
  put<T>(partition: string, key: string, value: T, expected: number): Promise<boolean>;
  remove(partition: string, key: string, expected: number): Promise<boolean>;
}
