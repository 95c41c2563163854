import type { Block, Cell } from './blocks.ts';

/** A sign of private use on either side of a hash: no keyboard has it, and a mark that somebody pasted says a page at most. */
const MARK = /\u{F0000}([0-9a-f]{64})\u{F0001}/gu;

/** Stands for the pages that show an exhibit, until it is known which they are. */
export const pageMark = (sha256: string): string => `\u{F0000}${sha256}\u{F0001}`;

/** First and last page that show an exhibit, from 1. */
export type PagesOf = ReadonlyMap<string, readonly [first: number, last: number]>;

const fill = (text: string, pages: PagesOf): string =>
  text.replaceAll(MARK, (_, sha256: string) => {
    const [first, last] = pages.get(sha256) ?? [];
    return first === undefined || last === undefined ? '–' : first === last ? `${first}` : `${first}–${last}`;
  });

const fillCell = (cell: Cell, pages: PagesOf): Cell =>
  typeof cell === 'string'
    ? fill(cell, pages)
    : cell.map((piece) => ({ ...piece, text: fill(piece.text, pages) }));

/** A block with page numbers in place of the marks in its table, the one kind of block that bears any. */
export const withPages = <T extends Block>(block: T, pages: PagesOf): T =>
  block.type === 'table'
    ? {
        ...block,
        rows: block.rows.map((row) => ({ ...row, cells: row.cells.map((cell) => fillCell(cell, pages)) })),
      }
    : block;

/** Counts a page for an exhibit: pages are shown one after another, so first and last say it all. */
export function countPage(
  pages: Map<string, readonly [first: number, last: number]>,
  sha256: string,
  page: number,
): void {
  const [first = page] = pages.get(sha256) ?? [];
  pages.set(sha256, [first, page]);
}
