import { gunzipSync, gzipSync } from 'node:zlib';
import type { Attribute } from './table.ts';

/** JSON up to this many bytes stays text that a person can read in the table; above, it is gzipped. */
const readableBytes = 64 * 1024;
/** A row has 400 KB; JSON of ours packs to a tenth of its length, and what packs to a hundredth is none of it. */
const mostBytes = 64 * 1024 * 1024;

/**
 * A JSON value as one attribute. Text, not DynamoDB's map: every number, empty string, empty list and odd code unit
 * comes back as it was sent, because JSON.parse undoes JSON.stringify and nothing stands between
 * (docs/decisions/0010).
 */
export function toJsonAttribute(value: unknown): Attribute {
  const text = JSON.stringify(value);
  return Buffer.byteLength(text, 'utf8') <= readableBytes ? text : new Uint8Array(gzipSync(text));
}

export function fromJsonAttribute(attribute: Attribute | undefined): unknown {
  if (typeof attribute === 'string') return JSON.parse(attribute);
  if (attribute instanceof Uint8Array)
    return JSON.parse(gunzipSync(attribute, { maxOutputLength: mostBytes }).toString('utf8'));
  throw new Error('a stored row has no JSON where it must have some');
}
