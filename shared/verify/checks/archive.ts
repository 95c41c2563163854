import type { PacketContent } from '../../packet/schema.ts';
import type { ArchivedFile } from '../file/readArchive.ts';
import { finding, type Finding } from '../finding.ts';

/**
 * The companion archive against the packet's list of exhibits: every original there, each with the hash that was
 * recorded when it was handed in, and nothing that the packet does not know. A list of its own in the archive must
 * tell of the same hashes; the packet's file itself may lie beside the originals.
 */
export function archiveFindings(
  { photos, papers }: PacketContent,
  files: readonly ArchivedFile[],
  pdfSha256: string,
): Finding[] {
  const exhibits = [...photos, ...papers];
  const byHash = new Map(exhibits.map((exhibit) => [exhibit.sha256, exhibit]));
  const there = new Set(files.map(({ sha256 }) => sha256));
  const strange = files.filter(
    ({ sha256, name }) => !byHash.has(sha256) && sha256 !== pdfSha256 && !isList(name),
  );
  const missing = exhibits.filter(({ sha256, state }) => !there.has(sha256) && wasThere(state));
  const changed = new Map<string, ArchivedFile>();
  for (const { exhibitId, sha256 } of missing) {
    const under = strange.find(({ name }) => baseName(name).startsWith(exhibitId) || name.includes(sha256));
    if (under) changed.set(exhibitId, under);
  }
  const changedFiles = new Set(changed.values());
  return [
    ...missing.map(({ exhibitId, sha256 }) => {
      const file = changed.get(exhibitId);
      return file
        ? finding('archive-changed', `archive/${file.name}`, {
            exhibitId,
            name: file.name,
            file: file.sha256,
            own: sha256,
          })
        : finding('archive-missing', 'archive', { exhibitId, own: sha256 });
    }),
    ...strange
      .filter((file) => !changedFiles.has(file))
      .map(({ name, sha256 }) => finding('archive-added', `archive/${name}`, { name, file: sha256 })),
    ...files.flatMap((file) => (isList(file.name) ? listFindings(file, files) : [])),
  ];
}

/** An exhibit that never arrived, or whose bytes were refused on arrival, need not be in the archive. */
const wasThere = (
  state: PacketContent['photos'][number]['state'] | PacketContent['papers'][number]['state'],
): boolean => state.code === 'included' || state.code === 'pages';

const baseName = (name: string): string => name.slice(name.lastIndexOf('/') + 1);
const isList = (name: string): boolean =>
  /^manifest\.(json|txt|sha256)$|^sha256sums?(\.txt)?$/i.test(baseName(name));

/** Hashes that a list in the archive gives and that no file of the archive has. */
function listFindings({ name, content }: ArchivedFile, files: readonly ArchivedFile[]): Finding[] {
  const text = new TextDecoder().decode(content);
  const there = new Set(files.map(({ sha256 }) => sha256));
  return [...new Set(text.match(/\b[0-9a-f]{64}\b/g) ?? [])]
    .filter((sha256) => !there.has(sha256))
    .map((sha256) => finding('archive-list', `archive/${name}`, { name, own: sha256 }));
}
