import type { PacketDocument } from '../../packet/blocks.ts';
import type { PacketContent } from '../../packet/schema.ts';
import type { PageMarks, Picture } from '../file/pictures.ts';
import { finding, type Finding } from '../finding.ts';

interface Shown {
  /** Of what was handed in. */
  readonly original: string;
  readonly exhibitId: string;
  /** Of the copy that the page shows. */
  readonly sha256: string;
}

/** The copies that the pages show, in the order in which they show them. */
export function shownCopies(document: PacketDocument, { photos, papers }: PacketContent): Shown[] {
  const copies = new Map<string, Shown>();
  for (const { exhibitId, sha256, state } of [...photos, ...papers])
    if (state.code === 'included')
      copies.set(sha256, { exhibitId, original: sha256, sha256: state.display.sha256 });
  return document.blocks.flatMap((block) => (block.type === 'photo' ? (copies.get(block.sha256) ?? []) : []));
}

/**
 * Whether the pages show the very copies whose hashes the data list, each once and in their order, so that no picture
 * stands over another's caption.
 */
export function pictureFindings(
  document: PacketDocument,
  content: PacketContent,
  pictures: readonly Picture[],
): Finding[] {
  const wanted = shownCopies(document, content);
  const altered = pictures
    .filter(({ altered: otherwise }) => otherwise)
    .map(({ page }) => finding('picture-altered', `page.${page}`, { page }));
  if (altered.length > 0) return altered;
  const found = pictures.map(({ sha256 }) => sha256);
  if (wanted.length === found.length && wanted.every(({ sha256 }, index) => sha256 === found[index]))
    return [];
  const known = new Map(wanted.map((copy) => [copy.sha256, copy]));
  const missing = wanted.filter(({ sha256 }) => !found.includes(sha256));
  const strange = pictures.filter(({ sha256 }) => !known.has(sha256));
  // As many strange ones as are missing, in the same order: each stands where the other should.
  const paired = missing.length === strange.length;
  const findings = paired
    ? missing.map(({ exhibitId, sha256 }, index) => {
        const page = strange[index]?.page ?? 0;
        return finding('picture-changed', `page.${page}`, {
          exhibitId,
          page,
          file: strange[index]?.sha256 ?? '',
          own: sha256,
        });
      })
    : [
        ...missing.map(({ exhibitId, sha256 }) =>
          finding('picture-missing', 'pages', { exhibitId, own: sha256 }),
        ),
        ...strange.map(({ page, sha256 }) =>
          finding('picture-added', `page.${page}`, { page, file: sha256 }),
        ),
      ];
  if (findings.length > 0) return findings;
  const moved = pictures.find(({ sha256 }, index) => sha256 !== wanted[index]?.sha256);
  return [
    finding('picture-moved', `page.${moved?.page ?? 0}`, {
      page: moved?.page ?? 0,
      exhibitId: known.get(moved?.sha256 ?? '')?.exhibitId ?? '',
    }),
  ];
}

/** Things that can lie over a page and change what it seems to say. A packet bears none. */
export function markFindings(marks: readonly PageMarks[]): Finding[] {
  return marks.flatMap(({ page, annotations, hiddenText, coveredText, strange }) => [
    ...(annotations > 0 ? [finding('annotation', `page.${page}`, { page, count: annotations })] : []),
    ...(hiddenText ? [finding('hidden-text', `page.${page}`, { page })] : []),
    ...(coveredText ? [finding('covered-text', `page.${page}`, { page })] : []),
    ...(strange.length > 0
      ? [finding('strange-drawing', `page.${page}`, { page, what: strange.join(', ').slice(0, 80) })]
      : []),
  ]);
}
