import type { MapCell } from './mapCells.ts';
import type { PublicSnapshot } from './snapshot.ts';

/** Folder of the map's files, below the site's own address. */
export const MAP_FOLDER = 'v1/map/';
export const MAP_INDEX_KEY = `${MAP_FOLDER}index.json`;
export const cellKey = (cell: string): string => `${MAP_FOLDER}${cell}.json`;

/** What the map's script reads first: which cells there are, and until when they may be relied on. */
export interface MapIndex {
  readonly version: 1;
  readonly note: string;
  readonly checkedAt: string;
  readonly relyUntil: string;
  /** What is in no cell yet; null: there is none. */
  readonly notYetShown: NonNullable<PublicSnapshot['notYetShown']> | null;
  /** In service, in all cells. */
  readonly hydrants: number;
  /** `stamp` is that of the cell's file as of this check: a file with another one is older or newer than this index. */
  readonly cells: readonly { readonly cell: string; readonly stamp: string }[];
}

/** A cell's file. It carries no time, so that it stays the same as long as nothing in it changes. */
export interface MapCellFile extends MapCell {
  readonly version: 1;
  readonly stamp: string;
}
