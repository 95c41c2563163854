import type { PacketDocument } from '../../packet/blocks.ts';
import { finding, type Finding } from '../finding.ts';
import { plain } from './plain.ts';

/** What the outline beside the pages says: the headings that stand in it, and where each paper begins. */
const wantedTitles = ({ blocks }: PacketDocument): string[] =>
  blocks.flatMap((block) => {
    if (block.type === 'heading') return block.level === 1 || block.inOutline ? [block.text] : [];
    return block.type === 'paper-page' && block.begins !== null ? [block.begins] : [];
  });

/** The outline against the headings, by their order. A file without one says nothing wrong. */
export function outlineFindings(document: PacketDocument, titles: readonly string[]): Finding[] {
  if (titles.length === 0) return [];
  const wanted = wantedTitles(document);
  const at = [...wanted, ...titles].findIndex(
    (_, index) =>
      index < Math.max(wanted.length, titles.length) &&
      plain(wanted[index] ?? '') !== plain(titles[index] ?? ''),
  );
  return at === -1
    ? []
    : [
        finding('outline-differs', 'outline', {
          own: (wanted[at] ?? '-').slice(0, 160),
          printed: (titles[at] ?? '-').slice(0, 160),
        }),
      ];
}
