import {
  PDFArray,
  PDFDict,
  PDFName,
  PDFRawStream,
  decodePDFRawStream,
  type PDFDocument,
  type PDFPage,
} from '@cantoo/pdf-lib';
import { sha256Of } from './hash.ts';
import { readProgram } from './program.ts';

/** A picture that a page draws. */
export interface Picture {
  /** From 1. */
  readonly page: number;
  /** Of the stored bytes; a JPEG is stored as the file that it was, so this is the hash of that file. */
  readonly sha256: string;
  readonly bytes: number;
  /** Stored as a whole JPEG file; anything else was unpacked on the way in. */
  readonly jpeg: boolean;
  /** Shown otherwise than its bytes say: other colors, a mask over it, another picture in its stead. */
  readonly altered: boolean;
}

/** What of a page is neither text nor picture and could lie over either. */
export interface PageMarks {
  readonly page: number;
  /** Notes, stamps, form fields, links with a look of their own: everything that a reader lays over the page. */
  readonly annotations: number;
  /** Drawings from elsewhere that are laid over the page whole. */
  readonly overlays: number;
  /** Text that is there for a search and not for the eye. */
  readonly hiddenText: boolean;
  /** Something is painted over text. */
  readonly coveredText: boolean;
  /** Ways of drawing or showing the page that no packet uses, by their names in the file. */
  readonly strange: readonly string[];
}

export interface Drawn {
  readonly pictures: readonly Picture[];
  readonly marks: readonly PageMarks[];
}

/** Every picture in the order in which the pages draw them, and what else lies on a page. */
export async function drawnOn(document: PDFDocument): Promise<Drawn> {
  const pictures: Picture[] = [];
  const marks: PageMarks[] = [];
  // One picture may be drawn by many pages; it is hashed once.
  const known = new Map<PDFRawStream, string>();
  const hashOf = async (stream: PDFRawStream): Promise<string> => {
    const sha256 = known.get(stream) ?? (await sha256Of(stream.getContents()));
    known.set(stream, sha256);
    return sha256;
  };
  for (const [index, page] of document.getPages().entries()) {
    const number = index + 1;
    const program = readProgram(contentOf(page));
    const objects = page.node.Resources()?.lookupMaybe(PDFName.of('XObject'), PDFDict);
    const named = new Map(objects?.entries().map(([name, value]) => [name.decodeText(), value]));
    let overlays = 0;
    for (const name of program.drawn) {
      const object = page.node.context.lookup(named.get(name));
      if (!(object instanceof PDFRawStream)) continue;
      if (object.dict.lookup(PDFName.of('Subtype')) !== PDFName.of('Image')) overlays += 1;
      else
        pictures.push({
          page: number,
          sha256: await hashOf(object),
          bytes: object.getContentsSize(),
          jpeg: isJpeg(object),
          altered: isAltered(object),
        });
    }
    marks.push({
      page: number,
      annotations: annotationsOf(page),
      overlays,
      hiddenText: program.hiddenText,
      coveredText: program.coveredText,
      strange: [...program.strange, ...strangeOf(page)],
    });
  }
  return { pictures, marks };
}

function isJpeg({ dict }: PDFRawStream): boolean {
  const filter = dict.lookup(PDFName.of('Filter'));
  const [only, more] = filter instanceof PDFArray ? [filter.lookup(0), filter.size() > 1] : [filter, false];
  return only === PDFName.of('DCTDecode') && !more;
}

/** Whether it is shown as its bytes are (ISO 32000-2, 8.9.5): no mask, no other colors, nothing in its stead. */
function isAltered(picture: PDFRawStream): boolean {
  const { dict } = picture;
  const decode = dict.lookup(PDFName.of('Decode'));
  const plain =
    decode instanceof PDFArray
      ? decode
          .toString()
          .replace(/[^\d.]+/g, ' ')
          .trim()
      : '0 1 0 1 0 1';
  const more = isJpeg(picture) ? ['SMask'] : [];
  return (
    (isJpeg(picture) && plain !== '0 1 0 1 0 1' && plain !== '0 1') ||
    ['Mask', 'Alternates', 'OC', ...more].some((key) => dict.has(PDFName.of(key)))
  );
}

/** What of a page's own entries turns it, or acts when it is opened. */
function strangeOf(page: PDFPage): string[] {
  const actions = page.node.has(PDFName.of('AA')) ? ['AA'] : [];
  return page.getRotation().angle % 360 === 0 ? actions : [...actions, 'Rotate'];
}

/** The page's program, as text; its strings may be anything and are not looked at. */
function contentOf(page: PDFPage): string {
  const contents = page.node.Contents();
  const streams = contents instanceof PDFArray ? contents.asArray() : contents ? [contents] : [];
  const latin1 = new TextDecoder('latin1');
  return streams
    .map((item) => (item instanceof PDFRawStream ? item : page.node.context.lookup(item)))
    .map((stream) =>
      stream instanceof PDFRawStream ? latin1.decode(decodePDFRawStream(stream).decode()) : '',
    )
    .join('\n');
}

function annotationsOf(page: PDFPage): number {
  const list = page.node.Annots();
  let count = 0;
  for (let index = 0; index < (list?.size() ?? 0); index += 1) {
    const note = list?.lookup(index);
    const link =
      note instanceof PDFDict &&
      note.lookup(PDFName.of('Subtype')) === PDFName.of('Link') &&
      !note.has(PDFName.of('AP'));
    if (!link) count += 1;
  }
  return count;
}
