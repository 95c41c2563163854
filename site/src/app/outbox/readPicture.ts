import { mediaTypeOf, whatItSays, type Said } from '../../../../shared/evidence/pictureFile.ts';
import type { Exhibit } from '../../../../shared/submissions/fields.ts';

/** What a chosen file is and says, by its own bytes. */
export interface PictureRead extends Said {
  /** By its first bytes; null for what is none of the kinds that are taken. */
  readonly isA: Exhibit['mediaType'] | null;
  /** A PDF that its author protected: with a password, nobody can show its pages. */
  readonly locked: boolean;
}

/** A trailer that names how the file is encrypted (ISO 32000-1, 7.6.1). It stands in the clear, whatever is encrypted. */
const isLocked = (bytes: Uint8Array): boolean =>
  /\/Encrypt\s*(?:\d+\s+\d+\s+R|<<)/.test(new TextDecoder('latin1').decode(bytes));

export function readPicture(bytes: Uint8Array): PictureRead {
  const isA = mediaTypeOf(bytes);
  return { ...whatItSays(bytes), isA, locked: isA === 'application/pdf' && isLocked(bytes) };
}
