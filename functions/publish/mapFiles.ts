import type { PublicEdition } from '../../shared/public/edition.ts';
import {
  cellKey,
  MAP_FOLDER,
  MAP_INDEX_KEY,
  type MapCellFile,
  type MapIndex,
} from '../../shared/public/mapIndex.ts';
import { say } from '../../shared/words/index.ts';
import { contentTypeOf } from '../stores/published/published.ts';
import { PAGE_CACHE, type PublishedFile } from './pages.ts';
import { sha256 } from './write.ts';

const utf8 = new TextEncoder();
/** Enough of a hash to tell two states of one cell apart. */
const STAMP_LENGTH = 16;

/**
 * The map's files: a file for each cell, and the index, which is to be written after them. A cell that no longer holds
 * anything is overwritten by an empty one, because nothing published is ever taken away, and an old one would still
 * name hydrants.
 *
 * @param standing keys of everything that stands published
 */
export function mapFiles(
  { snapshot, cells }: PublicEdition,
  standing: readonly string[],
): { readonly cells: readonly PublishedFile[]; readonly index: PublishedFile } {
  const { checkedAt, relyUntil, notYetShown = null, utility } = snapshot;
  const file = (key: string, content: object): PublishedFile => ({
    key,
    bytes: utf8.encode(`${JSON.stringify(content)}\n`),
    contentType: contentTypeOf(key),
    cacheControl: PAGE_CACHE,
    checkedAt,
  });
  const made = cells.map((cell) => {
    const stamp = sha256(utf8.encode(JSON.stringify(cell))).slice(0, STAMP_LENGTH);
    const content: MapCellFile = { version: 1, stamp, ...cell };
    return { cell: cell.cell, stamp, file: file(cellKey(cell.cell), content) };
  });
  const index: MapIndex = {
    version: 1,
    note: say(utility.locale, 'public.data.note'),
    checkedAt,
    relyUntil,
    notYetShown,
    hydrants: cells.reduce((sum, { inService }) => sum + inService.hydrantId.length, 0),
    cells: made.map(({ cell, stamp }) => ({ cell, stamp })),
  };
  const keys = new Set([MAP_INDEX_KEY, ...made.map(({ file: { key } }) => key)]);
  const gone = standing.filter((key) => key.startsWith(MAP_FOLDER) && !keys.has(key));
  return {
    cells: [...made.map((one) => one.file), ...gone.map((key) => file(key, { version: 1, gone: true }))],
    index: file(MAP_INDEX_KEY, index),
  };
}
