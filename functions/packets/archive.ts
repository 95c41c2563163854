import { createHash } from 'node:crypto';
import { Zip, ZipPassThrough } from 'fflate';
import { fileEndings } from '../../shared/evidence/declared.ts';
import type { PacketContent } from '../../shared/packet/schema.ts';
import { say } from '../../shared/words/index.ts';
import type { PhotoSource } from './photos/gather.ts';

/** As much as a function of this size can hold beside its work. */
export const MOST_ARCHIVE_BYTES = 700_000_000;
/** Zip's own first day, by local parts: the format holds no zone. */
const DATE = new Date(1980, 0, 1);
/** A zip's head, entry and description of one file, with room. */
const FRAME_BYTES = 400;

export interface ArchiveQuestion {
  readonly content: PacketContent;
  readonly source: PhotoSource;
  /** The detached signature of the PDF. */
  readonly signature: string;
  readonly mostBytes?: number;
  readonly onDone?: (done: number, total: number) => void;
}

interface Listed {
  readonly name: string;
  readonly sha256: string;
}

/**
 * The originals of every photo and paper under their exhibits' numbers, the packet's data, the signature of its PDF and
 * a manifest of hashes. Stored, not deflated: photos do not shrink. One fixed order and date: the same packet and
 * signature give the same bytes. What is not in it is named in the manifest with the reason.
 */
export async function packetArchive({
  content,
  source,
  signature,
  mostBytes = MOST_ARCHIVE_BYTES,
  onDone,
}: ArchiveQuestion): Promise<Uint8Array> {
  const exhibits = [...content.papers, ...content.photos].map(
    ({ exhibitId, sha256, bytes, mediaType, state }) => ({
      name: `${exhibitId.startsWith('paper') ? 'papers' : 'photos'}/${exhibitId}.${fileEndings[mediaType]}`,
      sha256,
      bytes,
      state,
    }),
  );
  const within = exhibits.reduce((sum, { bytes }) => sum + bytes, 0);
  const writer = new Writer(Math.min(within, mostBytes) + exhibits.length * FRAME_BYTES + 20_000_000);
  const here: Listed[] = [];
  const notHere: (Listed & { readonly why: string })[] = [];
  let room = mostBytes;
  for (const [index, { name, sha256, bytes, state }] of exhibits.entries()) {
    const read = state.code === 'awaited' ? null : bytes > room ? undefined : await source.get(sha256);
    if (read === undefined) notHere.push({ name, sha256, why: 'too-large' });
    else if (read === null) notHere.push({ name, sha256, why: 'awaited' });
    else if (hashOf(read) !== sha256) notHere.push({ name, sha256, why: 'hash-differs' });
    else {
      writer.add(name, read);
      here.push({ name, sha256 });
      room -= read.byteLength;
    }
    onDone?.(index + 1, exhibits.length);
  }
  const data = Buffer.from(packetJson(content));
  const jws = Buffer.from(`${signature}\n`);
  here.push({ name: 'packet.json', sha256: hashOf(data) }, { name: 'packet.pdf.jws', sha256: hashOf(jws) });
  writer.add('packet.json', data);
  writer.add('packet.pdf.jws', jws);
  // Last, because only then is it known what could be read.
  writer.add('manifest.txt', Buffer.from(manifest(content, here, notHere)));
  return writer.finish();
}

/** The packet's data as it is attached to the PDF and lies in the archive: the same bytes. */
export const packetJson = (content: PacketContent): string => `${JSON.stringify(content, null, 1)}\n`;

const hashOf = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

function manifest(
  content: PacketContent,
  here: readonly Listed[],
  notHere: readonly (Listed & { readonly why: string })[],
): string {
  const { locale, claim, issue } = content;
  const exhibits = [...content.papers, ...content.photos];
  const line = ({ sha256, name }: Listed): string => `${sha256}  ${name}`;
  const revision = issue.state === 'frozen' ? String(issue.revision) : '-';
  return [
    `# ${say(locale, 'packet.archive.read-me', { claimNumber: claim.claimNumber, revision })}`,
    ...here.map(line),
    ...(notHere.length === 0 ? [] : ['', `# ${say(locale, 'packet.archive.not-here')}`]),
    ...notHere.map((item) => `# ${line(item)}: ${say(locale, `packet.archive.${item.why}`)}`),
    ...(exhibits.length === 0 ? [] : ['', `# ${say(locale, 'packet.archive.times')}`]),
    ...exhibits.map(
      ({ exhibitId, hashRecordedAt: recorded, bytesArrivedAt: arrived }) =>
        `# ${exhibitId}: ${say(locale, 'packet.archive.time', { recorded, arrived: arrived ?? '-' })}`,
    ),
    '',
  ].join('\n');
}

/** Writes a zip into memory that is taken once, so that an archive is never held twice over. */
class Writer {
  private readonly bytes: Buffer;
  private length = 0;
  private readonly zip: Zip;

  constructor(capacity: number) {
    this.bytes = Buffer.allocUnsafe(capacity);
    this.zip = new Zip((error, chunk) => {
      if (error) throw error;
      this.length += Buffer.from(chunk.buffer, chunk.byteOffset, chunk.byteLength).copy(
        this.bytes,
        this.length,
      );
    });
  }

  add(name: string, bytes: Uint8Array): void {
    const file = new ZipPassThrough(name);
    file.mtime = DATE;
    this.zip.add(file);
    file.push(bytes, true);
  }

  finish(): Uint8Array {
    this.zip.end();
    return this.bytes.subarray(0, this.length);
  }
}
