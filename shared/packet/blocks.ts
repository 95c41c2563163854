import type { Ring } from '../tightening/ring.ts';
import type { NearMap } from '../public/nearMap.ts';
import type { SupplyCurve } from '../hydraulics/supplyCurve.ts';

/** A packet as a reader meets it: words are chosen, nothing is laid out. A renderer draws blocks and decides nothing. */
export interface PacketDocument {
  readonly language: 'en' | 'es';
  readonly title: string;
  readonly subject: string;
  readonly issuedAt: string;
  /** Stands at the top of every page; for what must not be taken for an issued packet. */
  readonly banner: string | null;
  readonly runningHead: string;
  readonly runningFoot: string;
  /** Says "page n of m". */
  readonly pageOf: (page: number, pages: number) => string;
  readonly blocks: readonly Block[];
  readonly attachments: readonly Attachment[];
}

export interface Attachment {
  readonly name: string;
  readonly mediaType: string;
  readonly description: string;
  readonly text: string;
}

export type TextLook = 'body' | 'small' | 'strong' | 'caution';

export interface Piece {
  readonly text: string;
  readonly look?: TextLook;
}

/** A cell is lines one under another; the first is the main one. */
export type Cell = string | readonly Piece[];

export interface Column {
  readonly label: string;
  readonly align: 'left' | 'right';
  /** Share of the width. */
  readonly share: number;
}

export interface Row {
  readonly cells: readonly Cell[];
  /** `group` opens a section of the table, `subtotal` closes it, `total` ends the table. */
  readonly role?: 'group' | 'subtotal' | 'total';
}

export type Block =
  | { readonly type: 'letterhead'; readonly name: string; readonly lines: readonly string[] }
  | {
      readonly type: 'address';
      readonly lines: readonly string[];
      /** For a signature: stands above the lines, with room between to sign. */
      readonly closing?: string;
    }
  | {
      readonly type: 'heading';
      readonly level: 1 | 2;
      readonly text: string;
      readonly newPage?: boolean;
      /** A level 2 that the outline names under its level 1. */
      readonly inOutline?: boolean;
    }
  | { readonly type: 'paragraph'; readonly text: string; readonly look?: TextLook }
  | { readonly type: 'list'; readonly items: readonly string[] }
  | { readonly type: 'pairs'; readonly pairs: readonly { readonly label: string; readonly value: string }[] }
  | {
      readonly type: 'table';
      readonly summary: string;
      readonly columns: readonly Column[];
      readonly rows: readonly Row[];
      /** Many short rows: smaller letters, less air. */
      readonly dense?: boolean;
    }
  | {
      readonly type: 'supply-curve';
      readonly curve: SupplyCurve;
      readonly alt: string;
      readonly words: CurveWords;
    }
  | {
      /** Rings of bolts side by side, each with what it is under it. */
      readonly type: 'rings';
      readonly rings: readonly { readonly ring: Ring; readonly caption: string; readonly alt: string }[];
    }
  | {
      readonly type: 'photo';
      /** Of the original: by it the renderer asks for the copy to draw, which is upright and of this size. */
      readonly sha256: string;
      readonly widthPx: number;
      readonly heightPx: number;
      /** A paper that was photographed: as large as the page lets it be, to be read. */
      readonly large?: boolean;
      readonly alt: string;
      readonly title: string;
      readonly lines: readonly string[];
    }
  | {
      /** A sketch of a place: rings of distance, and what stands around it. */
      readonly type: 'map';
      readonly map: NearMap;
      /** Words on it, in the map's units: distances of the rings, numbers of the hydrants, and north. */
      readonly labels: readonly {
        readonly text: string;
        readonly x: number;
        readonly y: number;
        readonly strong: boolean;
      }[];
      readonly alt: string;
    }
  | {
      /** A page of a paper, by its original's hash, on a page of its own under a line that names it. */
      readonly type: 'paper-page';
      readonly sha256: string;
      /** From 0. */
      readonly page: number;
      readonly line: string;
      /** On a paper's first page: how the outline names the paper. */
      readonly begins: string | null;
      readonly alt: string;
    };

/** Words on the drawn curve, already in the reader's language and units. */
export interface CurveWords {
  readonly flowAxis: string;
  readonly pressureAxis: string;
  readonly staticMark: string;
  readonly testMark: string;
  readonly targetMark: string | null;
  readonly target: string;
  /** Tick labels, by the tick's value. */
  readonly number: (value: number) => string;
}
