import { unzipSync, type Unzipped } from 'fflate';
import { finding, type Finding } from '../finding.ts';
import { sha256Of } from './hash.ts';

export interface ArchivedFile {
  readonly name: string;
  readonly sha256: string;
  readonly content: Uint8Array;
}

export type ArchiveReading =
  | { readonly ok: true; readonly files: readonly ArchivedFile[] }
  | { readonly ok: false; readonly problem: Finding };

/** An archive is made of 700 MB at the most, and some lists. */
export const MOST_ARCHIVE_BYTES = 760_000_000;
const MOST_FILES = 5_000;

/** Every file of a companion archive (ZIP) with its hash. */
export async function readArchive(bytes: Uint8Array): Promise<ArchiveReading> {
  const refuse = (code: string, params: Finding['params'] = {}): ArchiveReading => ({
    ok: false,
    problem: finding(code, 'archive', params),
  });
  const most = MOST_ARCHIVE_BYTES / 1e6;
  if (bytes.length > MOST_ARCHIVE_BYTES)
    return refuse('archive-too-large', { megabytes: Math.ceil(bytes.length / 1e6), most });
  let total = 0;
  const names: string[] = [];
  let unpacked: Unzipped;
  try {
    unpacked = unzipSync(bytes, {
      // Asked of every entry before it is unpacked, so a small file that claims to be huge is not opened.
      filter: ({ name, originalSize }) => {
        total += originalSize;
        names.push(name);
        return total <= MOST_ARCHIVE_BYTES && names.length <= MOST_FILES && !name.endsWith('/');
      },
    });
  } catch (error) {
    return refuse('archive-broken', { reason: (error as Error).message.slice(0, 200) });
  }
  if (total > MOST_ARCHIVE_BYTES || names.length > MOST_FILES)
    return refuse('archive-too-large', { megabytes: Math.ceil(total / 1e6), most });
  const double = names.find((name, index) => names.indexOf(name) !== index);
  if (double !== undefined) return refuse('archive-name-twice', { name: double });
  const files = await Promise.all(
    Object.entries(unpacked).map(async ([name, content]) => ({
      name,
      content,
      sha256: await sha256Of(content),
    })),
  );
  return { ok: true, files };
}
