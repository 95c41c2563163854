import { inflateSync } from 'node:zlib';
import {
  decodePDFRawStream,
  PDFArray,
  PDFContext,
  PDFDict,
  PDFDocument,
  PDFName,
  PDFNumber,
  PDFRawStream,
  PDFRef,
  PDFStream,
} from '@cantoo/pdf-lib';
import { Carrier } from './carry.ts';
import type { PageSize, ReadPaper } from './read.ts';

/** A page of another's paper, and the place that a page of the packet keeps for it. */
export interface Placement {
  /** Page of the packet, from 0. */
  readonly onPage: number;
  /** The name under which that page calls it. */
  readonly name: string;
  readonly paper: ReadPaper;
  readonly page: number;
}

const MOST_CONTENT_BYTES = 64_000_000;
const name = (text: string): PDFName => PDFName.of(text);

/**
 * Puts the pages of papers where the packet keeps places for them, each as a picture of the page in PDF's sense: its
 * letters can be selected, and nothing of its document comes with it. Give papers that `canBePlaced`. The same files give
 * the same bytes.
 */
export async function placePapers(packet: Uint8Array, placements: readonly Placement[]): Promise<Uint8Array> {
  if (placements.length === 0) return packet;
  const target = await PDFDocument.load(packet, { updateMetadata: false });
  const carriers = new Map<ReadPaper, Carrier>();
  const pages = target.getPages();
  for (const placement of placements) {
    const { paper, page, onPage } = placement;
    const carrier = carriers.get(paper) ?? new Carrier(paper.document.context, target.context);
    carriers.set(paper, carrier);
    const place = pages[onPage]?.node.Resources()?.lookup(name('XObject'), PDFDict).get(name(placement.name));
    if (!(place instanceof PDFRef)) throw new Error(`the packet keeps no place for ${placement.name}`);
    target.context.assign(place, picture(paper, page, carrier, target.context));
  }
  return target.save({ addDefaultPage: false, updateFieldAppearances: false });
}

/** Whether every page can be carried over: tried beforehand, so that a paper is listed with its reason where not. */
export function canBePlaced(paper: ReadPaper): boolean {
  const scratch = PDFContext.create();
  const carrier = new Carrier(paper.document.context, scratch);
  try {
    paper.pages.forEach((_, index) => picture(paper, index, carrier, scratch));
    return true;
  } catch {
    return false;
  }
}

function picture(
  { document, pages }: ReadPaper,
  index: number,
  carrier: Carrier,
  to: PDFContext,
): PDFRawStream {
  const page = document.getPage(index);
  const size = pages[index];
  if (!size) throw new Error(`no page ${index}`);
  const own = page.node.Resources();
  const resources = own ? carrier.carry(own) : PDFDict.withContext(to);
  if (!(resources instanceof PDFDict)) throw new Error('resources are no dictionary');
  const content = [Buffer.from('q\n'), ...contents(page.node), Buffer.from('\nQ\n')];
  content.push(...drawnAnnotations(page.node, carrier, resources));
  return to.flateStream(Buffer.concat(content), {
    Type: 'XObject',
    Subtype: 'Form',
    FormType: 1,
    BBox: [size.box.x, size.box.y, size.box.x + size.box.width, size.box.y + size.box.height],
    Resources: resources,
    ...group(page.node, carrier),
  });
}

/** How a page's pictures are laid over one another (transparency), where it says so. */
function group(page: PDFDict, carrier: Carrier): { Group?: PDFDict } {
  const own = page.lookup(name('Group'));
  const copy = own instanceof PDFDict ? carrier.carry(own) : null;
  return copy instanceof PDFDict ? { Group: copy } : {};
}

function contents(page: PDFDict): Buffer[] {
  const own = page.lookup(name('Contents'));
  const streams = own instanceof PDFArray ? own.asArray().map((_, index) => own.lookup(index)) : [own];
  let total = 0;
  return streams.flatMap((stream) => {
    if (!(stream instanceof PDFStream)) return [];
    const bytes = unpacked(stream);
    total += bytes.byteLength;
    if (total > MOST_CONTENT_BYTES) throw new Error('unpacks too far');
    return [Buffer.from(bytes), Buffer.from('\n')];
  });
}

function unpacked(stream: PDFStream): Uint8Array {
  if (!(stream instanceof PDFRawStream)) return stream.getContents();
  const filter = stream.dict.lookup(name('Filter'));
  const first = filter instanceof PDFArray ? filter.lookup(0) : filter;
  if (filter instanceof PDFArray && filter.size() > 2) throw new Error('packed too often');
  // Measured with a limit before the library, which has none, unpacks it.
  if (first === name('FlateDecode'))
    inflateSync(stream.getContents(), { maxOutputLength: MOST_CONTENT_BYTES, finishFlush: 2 });
  return decodePDFRawStream(stream).decode();
}

/** Annotations that a reader sees on paper: what is filled into a form, stamps, notes typed on the page. */
const UNSEEN = new Set([
  '/Popup',
  '/Link',
  '/FileAttachment',
  '/Sound',
  '/Movie',
  '/Screen',
  '/RichMedia',
  '/3D',
]);
const HIDDEN = 0b10;
const NO_VIEW = 0b100000;
const MOST_ANNOTATIONS = 2000;

/** Draws their appearances as part of the page (ISO 32000-1, 12.5.5), and leaves what they do behind. */
function drawnAnnotations(page: PDFDict, carrier: Carrier, resources: PDFDict): Buffer[] {
  const list = page.lookup(name('Annots'));
  if (!(list instanceof PDFArray)) return [];
  const drawn: Buffer[] = [];
  list
    .asArray()
    .slice(0, MOST_ANNOTATIONS)
    .forEach((_, index) => {
      const annotation = list.lookup(index);
      if (!(annotation instanceof PDFDict)) return;
      const look = appearance(annotation);
      const matrix = look && fitted(annotation, look.stream);
      if (!look || !matrix) return;
      const existing = resources.lookup(name('XObject'));
      const objects = existing instanceof PDFDict ? existing : PDFDict.withContext(resources.context);
      // A page's own list of pictures may be shared with other pages; this page's is its own from here on.
      const widened = objects.clone();
      const called = `Seen${index}`;
      widened.set(name(called), carrier.carry(look.ref));
      resources.set(name('XObject'), widened);
      drawn.push(Buffer.from(`q ${matrix.map((value) => value.toFixed(5)).join(' ')} cm /${called} Do Q\n`));
    });
  return drawn;
}

function appearance(annotation: PDFDict): { stream: PDFStream; ref: PDFRef } | null {
  const flags = annotation.lookup(name('F'));
  const shown = flags instanceof PDFNumber ? flags.asNumber() & (HIDDEN | NO_VIEW) : 0;
  if (shown !== 0 || UNSEEN.has(annotation.lookup(name('Subtype'))?.toString() ?? '')) return null;
  const looks = annotation.lookup(name('AP'));
  if (!(looks instanceof PDFDict)) return null;
  let ref = looks.get(name('N'));
  let normal = looks.lookup(name('N'));
  const state = annotation.lookup(name('AS'));
  if (normal instanceof PDFDict && state instanceof PDFName) {
    ref = normal.get(state);
    normal = normal.lookup(state);
  }
  return normal instanceof PDFStream && ref instanceof PDFRef ? { stream: normal, ref } : null;
}

const numbers = (array: unknown, count: number): number[] | null => {
  if (!(array instanceof PDFArray) || array.size() !== count) return null;
  const found = Array.from({ length: count }, (_, index) => array.lookup(index));
  return found.every((item) => item instanceof PDFNumber) ? found.map((item) => item.asNumber()) : null;
};

/** The transform that lays an appearance's box onto the annotation's rectangle. */
function fitted(annotation: PDFDict, { dict }: PDFStream): number[] | null {
  const rect = numbers(annotation.lookup(name('Rect')), 4);
  const box = numbers(dict.lookup(name('BBox')), 4);
  const [a = 1, b = 0, c = 0, d = 1, e = 0, f = 0] = numbers(dict.lookup(name('Matrix')), 6) ?? [];
  if (!rect || !box) return null;
  const [x0 = 0, y0 = 0, x1 = 0, y1 = 0] = box;
  const xs = [x0, x1].flatMap((x) => [y0, y1].map((y) => a * x + c * y + e));
  const ys = [x0, x1].flatMap((x) => [y0, y1].map((y) => b * x + d * y + f));
  const [left, low] = [Math.min(...xs), Math.min(...ys)];
  const [width, height] = [Math.max(...xs) - left, Math.max(...ys) - low];
  const [r0 = 0, s0 = 0, r1 = 0, s1 = 0] = rect;
  if (!(width > 0 && height > 0)) return null;
  const [sx, sy] = [Math.abs(r1 - r0) / width, Math.abs(s1 - s0) / height];
  return [sx, 0, 0, sy, Math.min(r0, r1) - left * sx, Math.min(s0, s1) - low * sy];
}

/** Where a page of another's paper goes, as a transform onto a box that is measured from the top of the packet's page. */
export function ontoBox(
  { box, turnDeg, widthPt, heightPt }: PageSize,
  to: { readonly x: number; readonly y: number; readonly scale: number },
): [number, number, number, number, number, number] {
  const s = to.scale;
  switch (turnDeg) {
    case 90:
      return [0, s, s, 0, to.x - s * box.y, to.y - s * box.x];
    case 180:
      return [-s, 0, 0, s, to.x + s * (widthPt + box.x), to.y - s * box.y];
    case 270:
      return [0, -s, -s, 0, to.x + s * (widthPt + box.y), to.y + s * (heightPt + box.x)];
    default:
      return [s, 0, 0, -s, to.x - s * box.x, to.y + s * (heightPt + box.y)];
  }
}
