import { TooLarge } from '../faults.ts';

export type Attribute = string | number | Uint8Array;
export type Attributes = Readonly<Record<string, Attribute>>;

export interface Key {
  readonly partition: string;
  readonly sort: string;
}

export interface Row extends Key {
  readonly attributes: Attributes;
}

/** What must hold of the row that is there now. A row that is absent has no attribute equal to anything. */
export type Condition = { readonly absent: true } | { readonly attribute: string; readonly equals: number };

/**
 * The few things the stores ask of a table with a partition key and a sort key: the DynamoDB table and its twin in
 * memory both do them, and every store is written once, on top. All reads are strongly consistent. A fault throws
 * `StoreUnavailable`; an answer is always whole, every page of it.
 */
export interface Table {
  get(key: Key): Promise<Attributes | null>;
  /** The rows that exist among `keys`, in no order. */
  getMany(keys: readonly Key[]): Promise<readonly Row[]>;
  /** Writes a whole row if `condition` holds; false when it does not. Throws `TooLarge` and writes nothing. */
  put(row: Row, condition: Condition): Promise<boolean>;
  /** Idempotent. */
  remove(key: Key): Promise<void>;
  /** Every row of a partition whose sort key begins with `prefix`, in the order of the sort keys' UTF-8 bytes. */
  query(partition: string, prefix?: string): Promise<readonly Row[]>;
  /** Every row there is, page by page, in no order. */
  scan(): AsyncIterable<readonly Row[]>;
}

/**
 * The largest row: names and values of all attributes, as DynamoDB counts them, may have 400 KB.
 * Source: Amazon DynamoDB Developer Guide, "Service, account, and table quotas": maximum item size.
 */
export const rowLimitBytes = 400 * 1024;

/** Longest the key attributes' own names may be in a table of ours, so that every table has the same limit. */
const keyNamesBytes = 32;
/** A number takes at most 21 bytes ("DynamoDB item sizes and formats", same guide). */
const numberBytes = 21;

/** Throws `TooLarge` when a row cannot be stored. Called before the first write of several. */
export function assertFits(row: Row): void {
  const text = (value: string): number => Buffer.byteLength(value, 'utf8');
  let bytes = keyNamesBytes + text(row.partition) + text(row.sort);
  for (const [name, value] of Object.entries(row.attributes))
    bytes +=
      text(name) +
      (typeof value === 'string' ? text(value) : typeof value === 'number' ? numberBytes : value.byteLength);
  if (bytes > rowLimitBytes) throw new TooLarge(bytes, rowLimitBytes);
}
