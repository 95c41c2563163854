/** The store did not answer, or not in time. Nothing is known to be lost; the same request may be sent again. */
export class StoreUnavailable extends Error {
  override readonly name = 'StoreUnavailable';
}

/**
 * One item is larger than a DynamoDB item may be, compressed as it would be stored. Found before anything is
 * written; sending it again cannot help, sending less in it can.
 */
export class TooLarge extends Error {
  override readonly name = 'TooLarge';
  readonly bytes: number;
  readonly limitBytes: number;

  constructor(bytes: number, limitBytes: number) {
    super(`an item of ${bytes} bytes is over the limit of ${limitBytes} bytes`);
    this.bytes = bytes;
    this.limitBytes = limitBytes;
  }
}

/**
 * A fact that this version of the software cannot read: a newer one wrote it, before another took its place, or its row
 * is damaged. Whoever needs its stream fails; nothing is shown that leaves it out.
 */
export class UnreadableFact extends Error {
  override readonly name = 'UnreadableFact';

  constructor(stream: string, entry: string, options: { readonly cause?: unknown } = {}) {
    super(`${stream} holds a fact that cannot be read here: ${entry}`, options);
  }
}
