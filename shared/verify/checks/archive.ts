import type { PacketContent } from '../../packet/schema.ts';
import type { EmbeddedFile } from '../file/attachments.ts';
import type { ArchivedFile } from '../file/readArchive.ts';
import { finding, type Finding } from '../finding.ts';
import { DATA_NAME } from './attachments.ts';

/** What an archive holds besides originals. */
const LIST_NAME = 'manifest.txt';
export const SIGNATURE_NAME = 'packet.pdf.jws';

type Exhibit = PacketContent['photos'][number] | PacketContent['papers'][number];

/**
 * The companion archive against the packet's list of exhibits: every original that the packet shows is there under its
 * number, each with the hash that was recorded when it was handed in; the data are those of the PDF; the archive's own
 * list is of what lies in it; and nothing else is there.
 */
export function archiveFindings(
  { photos, papers }: PacketContent,
  files: readonly ArchivedFile[],
  data: EmbeddedFile,
): Finding[] {
  const exhibits: readonly Exhibit[] = [...photos, ...papers];
  const there = new Set(files.map(({ sha256 }) => sha256));
  const known = new Set(exhibits.map(({ sha256 }) => sha256));
  const strange = files.filter(({ sha256, name }) => !known.has(sha256) && !isOwn(name));
  const missing = exhibits.filter(({ sha256, state }) => !there.has(sha256) && wasThere(state));
  const changed = new Map(
    missing.map((exhibit) => [
      exhibit,
      strange.find(({ name }) => baseName(name).startsWith(`${exhibit.exhibitId}.`)),
    ]),
  );
  const taken = new Set(changed.values());
  return [
    ...missing.map((exhibit) => {
      const { exhibitId, sha256: own } = exhibit;
      const file = changed.get(exhibit);
      return file
        ? finding('archive-changed', `archive/${file.name}`, {
            exhibitId,
            name: file.name,
            file: file.sha256,
            own,
          })
        : finding('archive-missing', 'archive', { exhibitId, own });
    }),
    ...strange
      .filter((file) => !taken.has(file))
      .map(({ name, sha256 }) => finding('archive-added', `archive/${name}`, { name, file: sha256 })),
    ...misnamed(files, exhibits),
    ...dataFindings(files, data),
    ...listFindings(files),
  ];
}

/** Originals under another's number, or in a place that a packet's archive has not. */
function misnamed(files: readonly ArchivedFile[], exhibits: readonly Exhibit[]): Finding[] {
  return files.flatMap(({ name, sha256 }) => {
    const mine = exhibits.filter((exhibit) => exhibit.sha256 === sha256);
    const fits = mine.some(({ exhibitId }) => {
      const folder = exhibitId.startsWith('paper') ? 'papers' : 'photos';
      const ending = name.slice(`${folder}/${exhibitId}`.length);
      return name.startsWith(`${folder}/${exhibitId}.`) && /^\.[a-z0-9]+$/.test(ending);
    });
    return mine.length === 0 || fits
      ? []
      : [finding('archive-misnamed', `archive/${name}`, { name, exhibitId: mine[0]?.exhibitId ?? '' })];
  });
}

/** An exhibit that never arrived, or whose bytes were refused on arrival, need not be in the archive. */
const wasThere = ({ code }: Exhibit['state']): boolean => code === 'included' || code === 'pages';
const baseName = (name: string): string => name.slice(name.lastIndexOf('/') + 1);
const isOwn = (name: string): boolean => [DATA_NAME, SIGNATURE_NAME, LIST_NAME].includes(name);
const textOf = ({ content }: ArchivedFile): string => new TextDecoder().decode(content);

/** The archive's copy of the data is the one in the PDF, byte by byte. */
function dataFindings(files: readonly ArchivedFile[], data: EmbeddedFile): Finding[] {
  const copy = files.find(({ name }) => name === DATA_NAME);
  if (!copy) return [finding('archive-no-data', 'archive', { name: DATA_NAME })];
  return textOf(copy) !== new TextDecoder().decode(data.bytes)
    ? [finding('archive-data', `archive/${DATA_NAME}`, { name: DATA_NAME })]
    : [];
}

/** The list of hashes against the files beside it; a line that begins with `#` is a remark. */
function listFindings(files: readonly ArchivedFile[]): Finding[] {
  const list = files.find(({ name }) => name === LIST_NAME);
  if (!list) return [finding('archive-no-list', 'archive', { name: LIST_NAME })];
  const lines = [...textOf(list).matchAll(/^([0-9a-f]{64}) {2}(.+)$/gm)];
  const hashes = new Map(lines.map(([, sha256 = '', name = '']) => [name, sha256]));
  const found = new Map(files.map(({ name, sha256 }) => [name, sha256]));
  const path = `archive/${LIST_NAME}`;
  return [
    ...[...hashes].flatMap(([name, own]) => {
      const file = found.get(name);
      if (file === own) return [];
      return [
        finding(file === undefined ? 'archive-list-missing' : 'archive-list', path, {
          name,
          own,
          file: file ?? '',
        }),
      ];
    }),
    ...files
      .filter(({ name }) => name !== LIST_NAME && !hashes.has(name))
      .map(({ name }) => finding('archive-not-listed', path, { name })),
  ];
}
