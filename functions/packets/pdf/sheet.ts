import PDFDocument from 'pdfkit';
import type { PacketDocument, TextLook } from '../../../shared/packet/blocks.ts';
import { typesetter, type Line, type Style, type Typesetter } from './typeset.ts';

export type Doc = InstanceType<typeof PDFDocument>;
export type Structure = ReturnType<Doc['struct']>;

/** US Letter, in points. */
export const PAGE = { width: 612, height: 792 } as const;
export const MARGIN = { left: 64, right: 64, top: 76, bottom: 72 } as const;
export const WIDTH = PAGE.width - MARGIN.left - MARGIN.right;
export const BOTTOM = PAGE.height - MARGIN.bottom;

const INK = '#111111';
/** Dark enough to read on paper that was copied twice. */
const SOFT = '#4a4a4a';
export const HAIR = '#b4b4b4';

export const styles = {
  body: { bold: false, size: 10, leading: 14, color: INK },
  strong: { bold: true, size: 10, leading: 14, color: INK },
  caution: { bold: true, size: 10, leading: 14, color: INK },
  small: { bold: false, size: 8, leading: 11, color: SOFT },
  label: { bold: false, size: 9, leading: 14, color: SOFT },
  dense: { bold: false, size: 8.5, leading: 12, color: INK },
  denseNumber: { bold: false, size: 8.5, leading: 12, color: INK, tabular: true },
  column: { bold: true, size: 8.5, leading: 12, color: INK },
  number: { bold: false, size: 10, leading: 14, color: INK, tabular: true },
  numberStrong: { bold: true, size: 10, leading: 14, color: INK, tabular: true },
  heading1: { bold: true, size: 16, leading: 21, color: INK },
  heading2: { bold: true, size: 11.5, leading: 16, color: INK },
  name: { bold: true, size: 15, leading: 20, color: INK },
  running: { bold: false, size: 8, leading: 11, color: SOFT },
  banner: { bold: true, size: 9, leading: 12, color: INK },
} as const satisfies Record<string, Style>;

export const styleOf = (look: TextLook = 'body'): Style => styles[look];

/**
 * Pages with a cursor, and the structure tree that a screen reader follows. Everything drawn is either inside
 * `content`, which tags it, or inside `artifact`, which says that it is only for the eye.
 */
export interface Sheet extends Typesetter {
  readonly doc: Doc;
  readonly root: Structure;
  /** The outline's entry of the part that is being drawn. */
  part: ReturnType<Doc['outline']['addItem']> | null;
  /** Distance from the top of the page at which the next thing is drawn. */
  y: number;
  newPage(): void;
  /** Starts a new page unless `height` is left on this one. */
  need(height: number): void;
  /** A structure element of this kind under `parent` (the document when left out). */
  element(kind: string, parent?: Structure, options?: ElementOptions): Structure;
  content(element: Structure, kind: string, draw: () => void): void;
  artifact(draw: () => void, type?: 'Pagination' | 'Layout'): void;
  rule(x0: number, x1: number, y: number, weight?: number, color?: string): void;
  /** Lines under one another from `y`, aligned in a column; answers the height used. */
  column(
    lines: readonly Line[],
    style: Style,
    x: number,
    y: number,
    width: number,
    align?: 'left' | 'right',
  ): number;
}

interface ElementOptions {
  readonly alt?: string;
  readonly bbox?: readonly [number, number, number, number];
  /** Attributes of a table cell. */
  readonly scope?: 'Column' | 'Row';
  readonly columns?: number;
}

export function openSheet(packet: PacketDocument): Sheet {
  const at = new Date(packet.issuedAt);
  const doc = new PDFDocument({
    size: [PAGE.width, PAGE.height],
    margins: { top: 0, bottom: 0, left: 0, right: 0 },
    autoFirstPage: false,
    bufferPages: true,
    pdfVersion: '1.7',
    tagged: true,
    lang: packet.language === 'es' ? 'es-US' : 'en-US',
    displayTitle: true,
    // None to begin with: every text names an embedded face, and the library's own lies outside a bundle.
    font: '',
    // Dates and, through them, the file's id come from the packet: the same packet gives the same bytes.
    info: {
      Title: packet.title,
      Subject: packet.subject,
      Creator: 'Hydrant Strike Ledger',
      CreationDate: at,
      ModDate: at,
    },
  });
  const type = typesetter(doc);
  const root = doc.struct('Document');
  doc.addStructure(root);

  const sheet: Sheet = {
    ...type,
    doc,
    root,
    part: null,
    y: MARGIN.top,
    newPage() {
      doc.addPage();
      // Tab order follows the structure tree.
      (doc.page as unknown as { dictionary: { data: Record<string, unknown> } }).dictionary.data['Tabs'] =
        'S';
      sheet.y = MARGIN.top;
    },
    need(height) {
      if (sheet.y + height > BOTTOM) sheet.newPage();
    },
    element(kind, parent = root, { alt, bbox, scope, columns } = {}) {
      const element = doc.struct(kind, {
        ...(alt === undefined ? {} : { alt }),
        ...(bbox === undefined ? {} : { bbox: [...bbox], placement: 'Block' }),
        ...(scope === undefined ? {} : { scope }),
      });
      if (columns !== undefined) {
        const { data } = (element as unknown as { dictionary: { data: { A?: object } } }).dictionary;
        data.A = { ...data.A, O: 'Table', ColSpan: columns };
      }
      parent.add(element);
      return element;
    },
    content(element, kind, draw) {
      element.add(doc.markStructureContent(kind));
      draw();
      doc.endMarkedContent();
    },
    artifact(draw, artifactType = 'Layout') {
      doc.markContent('Artifact', { type: artifactType });
      draw();
      doc.endMarkedContent();
    },
    rule(x0, x1, y, weight = 0.5, color = HAIR) {
      sheet.artifact(() => doc.moveTo(x0, y).lineTo(x1, y).lineWidth(weight).strokeColor(color).stroke());
    },
    column(lines, style, x, y, width, align = 'left') {
      lines.forEach((line, index) => {
        const left = align === 'right' ? x + width - line.width : x;
        type.draw(line, left, baseline(y + index * style.leading, style), style);
      });
      return lines.length * style.leading;
    },
  };
  sheet.newPage();
  return sheet;
}

/** Baseline of a line whose top is at `top`: the letters sit in the middle of their leading. */
export const baseline = (top: number, { leading, size }: Style): number => top + (leading + size * 0.7) / 2;

/** The finished file, once everything is drawn. */
export async function closeSheet({ doc }: Sheet): Promise<Uint8Array> {
  const chunks: Uint8Array[] = [];
  doc.end();
  for await (const chunk of doc as AsyncIterable<Uint8Array>) chunks.push(chunk);
  return Buffer.concat(chunks);
}
