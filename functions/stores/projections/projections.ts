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
  /** All values of a partition whose key begins with `prefix`, by key order (UTF-8 bytes). */
  list<T>(
    partition: string,
    prefix?: string,
  ): Promise<readonly { readonly key: string; readonly value: T; readonly version: number }[]>;
  /**
   * How often the key has been written or removed; 0: never. A removal counts on and leaves the count behind, or a
   * reader from before it could not be told from one after.
   */
  versionOf(partition: string, key: string): Promise<number>;
  /** Writes if the version is still `expected` (0: never written). False when it is not. */
  put<T>(partition: string, key: string, value: T, expected: number): Promise<boolean>;
  /** Removes, or keeps removed, if the version is still `expected`. False when it is not. */
  remove(partition: string, key: string, expected: number): Promise<boolean>;
}
