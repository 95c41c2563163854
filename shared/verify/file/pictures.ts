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

/** A picture that a page draws. */
export interface Picture {
  /** From 1. */
  readonly page: number;
  /** Of the stored bytes; a JPEG is stored as the file that it was, so this is the hash of that file. */
  readonly sha256: string;
  readonly bytes: number;
  /** Stored as a whole JPEG file; anything else was unpacked on the way in. */
  readonly jpeg: boolean;
}

/** What of a page is neither text nor picture and could lie over either. */
export interface PageMarks {
  readonly page: number;
  /** Notes, stamps, form fields: everything that a reader lays over the page, links aside. */
  readonly annotations: number;
  /** Drawings from elsewhere that are laid over the page whole. */
  readonly overlays: number;
  /** Text that is there for a search and not for the eye. */
  readonly hiddenText: boolean;
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
    const content = contentOf(page);
    const objects = page.node.Resources()?.lookupMaybe(PDFName.of('XObject'), PDFDict);
    let overlays = 0;
    for (const [, name = ''] of content.matchAll(/\/([^\s/<>[\]()]+)\s+Do\b/g)) {
      const object = objects?.lookup(PDFName.of(name));
      if (!(object instanceof PDFRawStream)) continue;
      if (object.dict.lookup(PDFName.of('Subtype')) !== PDFName.of('Image')) overlays += 1;
      else
        pictures.push({
          page: number,
          sha256: await hashOf(object),
          bytes: object.getContentsSize(),
          jpeg: isJpeg(object),
        });
    }
    marks.push({
      page: number,
      annotations: annotationsOf(page),
      overlays,
      // Rendering modes 3 and 7 (ISO 32000-2, 9.3.6) paint nothing.
      hiddenText: /(^|\s)[37]\s+Tr\b/.test(content),
    });
  }
  return { pictures, marks };
}

function isJpeg({ dict }: PDFRawStream): boolean {
  const filter = dict.lookup(PDFName.of('Filter'));
  const [only, more] = filter instanceof PDFArray ? [filter.lookup(0), filter.size() > 1] : [filter, false];
  return only === PDFName.of('DCTDecode') && !more;
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
    if (!(note instanceof PDFDict) || note.lookup(PDFName.of('Subtype')) !== PDFName.of('Link')) count += 1;
  }
  return count;
}
