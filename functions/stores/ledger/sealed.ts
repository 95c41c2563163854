import { createHash, randomBytes } from 'node:crypto';
import { canonicalJson } from '../../../shared/submissions/canonical.ts';
import type { PersonalFields } from '../../../shared/submissions/personal.ts';
import { fromJsonAttribute, toJsonAttribute } from '../dynamodb/jsonAttribute.ts';
import type { Attributes, Key, Row } from '../dynamodb/table.ts';

/** Personal fields as their erasable row holds them, and the hash that is all the fact keeps of them. */
export interface Sealed {
  readonly hash: string;
  readonly row: Row;
}

/** SHA-256 (hex) over 32 random bytes and the canonical JSON. Without the salt, which is erased too, no guess can be tried. */
function saltedHash(salt: Buffer, personal: PersonalFields): string {
  return createHash('sha256').update(salt).update(canonicalJson(personal), 'utf8').digest('hex');
}

/** Every erasable row of a submission begins with this; the ids have one length, so no other's does. */
export const sealedPrefix = (submissionId: string): string => `${submissionId}:`;

/**
 * The row's key ends in the hash, so every attempt to hand in a submission has a row of its own: the fact that was
 * accepted names the one that is its, and no later or parallel attempt can overwrite it.
 */
export const sealedKey = (stream: string, submissionId: string, hash: string): Key => ({
  partition: stream,
  sort: `${sealedPrefix(submissionId)}${hash}`,
});

/** Null when there is nothing personal in it. */
export function seal(stream: string, submissionId: string, personal: PersonalFields): Sealed | null {
  if (Object.keys(personal).length === 0) return null;
  const salt = randomBytes(32);
  const hash = saltedHash(salt, personal);
  const attributes: Attributes = { salt: salt.toString('hex'), fields: toJsonAttribute(personal) };
  return { hash, row: { ...sealedKey(stream, submissionId, hash), attributes } };
}

/** The personal fields of an erasable row. Throws when they are not the ones whose hash the fact keeps. */
export function unseal({ sort, attributes }: Row): PersonalFields {
  const personal = fromJsonAttribute(attributes['fields']) as PersonalFields;
  const hash = saltedHash(Buffer.from(String(attributes['salt']), 'hex'), personal);
  if (!sort.endsWith(`:${hash}`))
    throw new Error('personal fields do not match the hash that their fact keeps');
  return personal;
}
