import { createHash } from 'node:crypto';
import { COPY_PREFIX, displayRecord, type DisplayRecord } from '../../../shared/evidence/displayCopy.ts';
import { readJpeg } from '../../evidence/pictures/jpeg.ts';
import type { EvidenceObjects } from './evidenceObjects.ts';

/** A display copy with what is known of its original; no bytes where none could be made. */
export interface KeptCopy {
  readonly record: DisplayRecord;
  readonly jpeg: Uint8Array | null;
}

/** Display copies beside their originals. Written once, as everything here. */
export interface CopyStore {
  /** Null while none was made. */
  read(sha256: string): Promise<KeptCopy | null>;
  /** What is known of the original, without the bytes of the copy. */
  readRecord(sha256: string): Promise<DisplayRecord | null>;
  /** Keeps a copy, and answers with the one that is kept: another's, where that was first. */
  keep(made: KeptCopy): Promise<KeptCopy>;
}

/** The number goes up when copies are to be made anew; those of before stay where they are. */
const place = (sha256: string): string => `${COPY_PREFIX}1/${sha256.slice(0, 2)}/${sha256}`;
export const copyKey = (sha256: string): string => `${place(sha256)}.jpg`;
const recordKey = (sha256: string): string => `${place(sha256)}.json`;

export function createCopyStore(objects: EvidenceObjects): CopyStore {
  const readRecord = async (sha256: string): Promise<DisplayRecord | null> => {
    const found = await objects.get(recordKey(sha256));
    return found && displayRecord.parse(JSON.parse(Buffer.from(found.bytes).toString('utf8')));
  };
  const read = async (sha256: string): Promise<KeptCopy | null> => {
    const record = await readRecord(sha256);
    if (record === null) return null;
    const { picture } = record;
    if (picture.code === 'none') return { record, jpeg: null };
    const jpeg = (await objects.get(copyKey(sha256)))?.bytes;
    if (jpeg === undefined || hashOf(jpeg) !== picture.display.sha256)
      throw new Error(`the display copy of ${sha256} is not the one that its record names`);
    return { record, jpeg };
  };
  return {
    read,
    readRecord,
    async keep(made) {
      const { record, jpeg } = made;
      const { original, picture } = record;
      let kept = record;
      if (jpeg !== null && picture.code === 'made') {
        const { written } = await objects.put(copyKey(original), jpeg, {
          contentType: 'image/jpeg',
          ifAbsent: true,
        });
        // Another maker was first, or stopped before its record: its picture stands, and the record must be of it.
        if (!written) kept = await ofKept(objects, record, picture.display);
      }
      await objects.put(recordKey(original), Buffer.from(JSON.stringify(kept)), {
        contentType: 'application/json',
        ifAbsent: true,
      });
      const stands = await read(original);
      if (stands === null) throw new Error(`the record of the display copy of ${original} was not kept`);
      return stands;
    },
  };
}

/** The record of the copy that stands, where it is not the one that was just made (another version of a library). */
async function ofKept(
  objects: EvidenceObjects,
  record: DisplayRecord,
  display: Extract<DisplayRecord['picture'], { code: 'made' }>['display'],
): Promise<DisplayRecord> {
  const found = (await objects.get(copyKey(record.original)))?.bytes;
  if (found === undefined || record.picture.code !== 'made') return record;
  const size = readJpeg(found) ?? display;
  return {
    ...record,
    picture: {
      ...record.picture,
      display: {
        sha256: hashOf(found),
        bytes: found.byteLength,
        widthPx: size.widthPx,
        heightPx: size.heightPx,
      },
    },
  };
}

const hashOf = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');
