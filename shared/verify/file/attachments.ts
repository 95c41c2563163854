import {
  PDFArray,
  PDFDict,
  PDFHexString,
  PDFName,
  PDFRawStream,
  PDFStream,
  PDFString,
  decodePDFRawStream,
  type PDFDocument,
} from '@cantoo/pdf-lib';

/** A file in the file (ISO 32000-2, 7.11.4). */
export interface EmbeddedFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** A name tree is no deeper than this in any file that a packet's maker writes. */
const MOST_DEPTH = 8;

/**
 * Every entry of the tree of embedded files, also those that bear one name: which of two a reader opens is its own
 * choice. A file specification without bytes is left out here and missed by whoever asks for it by name.
 */
export function embeddedFiles({ catalog }: PDFDocument): EmbeddedFile[] {
  const names = catalog.lookupMaybe(PDFName.of('Names'), PDFDict);
  const root = names?.lookupMaybe(PDFName.of('EmbeddedFiles'), PDFDict);
  return root ? entriesOf(root, 0) : [];
}

function entriesOf(node: PDFDict, depth: number): EmbeddedFile[] {
  if (depth > MOST_DEPTH) return [];
  const found: EmbeddedFile[] = [];
  const entries = node.lookupMaybe(PDFName.of('Names'), PDFArray);
  for (let index = 0; index + 1 < (entries?.size() ?? 0); index += 2) {
    const key = entries?.lookup(index);
    const spec = entries?.lookup(index + 1);
    if (!(spec instanceof PDFDict)) continue;
    const bytes = bytesOf(spec);
    if (bytes) found.push({ name: nameOf(spec) ?? textOf(key) ?? '', bytes });
  }
  const kids = node.lookupMaybe(PDFName.of('Kids'), PDFArray);
  for (let index = 0; index < (kids?.size() ?? 0); index += 1) {
    const kid = kids?.lookup(index);
    if (kid instanceof PDFDict) found.push(...entriesOf(kid, depth + 1));
  }
  return found;
}

const textOf = (value: unknown): string | null =>
  value instanceof PDFString || value instanceof PDFHexString ? value.decodeText() : null;

const nameOf = (spec: PDFDict): string | null =>
  textOf(spec.lookup(PDFName.of('UF'))) ?? textOf(spec.lookup(PDFName.of('F')));

function bytesOf(spec: PDFDict): Uint8Array | null {
  const files = spec.lookupMaybe(PDFName.of('EF'), PDFDict);
  const stream = files?.lookup(PDFName.of('F')) ?? files?.lookup(PDFName.of('UF'));
  if (stream instanceof PDFRawStream) return decodePDFRawStream(stream).decode();
  return stream instanceof PDFStream ? stream.getContents() : null;
}
