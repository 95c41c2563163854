/** How an object is kept. */
export interface PutOptions {
  readonly contentType: string;
  /** For browsers and caches between; the file and memory adapters have none and drop it. */
  readonly cacheControl?: string;
  /** Write only when no object has this key yet. Of several that try at once, exactly one is told `written: true`. */
  readonly ifAbsent?: boolean;
}

/**
 * Bytes by key. Keys are any text without an empty end; `/` makes folders. A key may not be a folder of another key
 * (`a` beside `a/b`): a file system cannot hold both.
 *
 * An object appears whole or not at all. A read after a write sees it. Where the store cannot answer, every method
 * throws `StoreUnavailable`; a missing object is null, and never stands for a fault.
 */
export interface ObjectStore {
  put(key: string, bytes: Uint8Array, options: PutOptions): Promise<{ readonly written: boolean }>;
  get(key: string): Promise<{ readonly bytes: Uint8Array } | null>;
  /**
   * Without its bytes: how many, and since when they lie there by the store's own clock, to the whole second (a file's
   * time of writing, S3's `LastModified`). The twin in memory says so only when it was given a clock.
   */
  head(key: string): Promise<{ readonly sizeBytes: number; readonly writtenAt?: string } | null>;
  /** Keys that begin with `prefix` (any text, not only whole folders), in the order of their UTF-8 bytes. */
  list(prefix: string): Promise<readonly string[]>;
  /** Idempotent: deleting what is not there is no error. */
  delete(key: string): Promise<void>;
}

/** S3's limit, kept everywhere so that what works here works there. */
const longestKeyBytes = 1024;

/** @throws RangeError for a key no store can keep; keys come from our own code, so this is a fault of ours */
export function assertKey(key: string): void {
  if (key === '' || key.endsWith('/') || !key.isWellFormed() || Buffer.byteLength(key) > longestKeyBytes) {
    throw new RangeError(`not an object key: ${JSON.stringify(key)}`);
  }
}

/** To the second, which is all that S3 tells and all that copies of a folder keep. */
export const wholeSecond = (at: Date): string =>
  new Date(Math.floor(at.getTime() / 1000) * 1000).toISOString();

export const inByteOrder = (keys: Iterable<string>): string[] =>
  [...keys].sort((one, other) => Buffer.compare(Buffer.from(one), Buffer.from(other)));
