import {
  decodePDFRawStream,
  PDFArray,
  PDFDict,
  PDFDocument,
  PDFName,
  PDFRawStream,
  type PDFRef,
  type PDFPage,
} from '@cantoo/pdf-lib';

/** Ways to change a finished PDF as somebody with a program for it would. Each answers a new file. */
const name = (text: string): PDFName => PDFName.of(text);
const latin1 = (bytes: Uint8Array): string => Buffer.from(bytes).toString('latin1');

export async function changed(
  pdf: Uint8Array,
  change: (doc: PDFDocument) => void | Promise<void>,
): Promise<Uint8Array> {
  const doc = await PDFDocument.load(pdf, { updateMetadata: false });
  await change(doc);
  return doc.save({ addDefaultPage: false, updateFieldAppearances: false });
}

interface Embedded {
  readonly spec: PDFDict;
  readonly ref: PDFRef;
  readonly text: string;
}

/** The embedded files by name. */
export function embedded(doc: PDFDocument): Map<string, Embedded> {
  const list = doc.catalog
    .lookup(name('Names'), PDFDict)
    .lookup(name('EmbeddedFiles'), PDFDict)
    .lookup(name('Names'), PDFArray);
  const found = new Map<string, Embedded>();
  for (let index = 0; index < list.size(); index += 2) {
    const spec = list.lookup(index + 1, PDFDict);
    const ref = spec.lookup(name('EF'), PDFDict).get(name('F')) as PDFRef;
    const stream = doc.context.lookup(ref) as PDFRawStream;
    found.set((spec.lookup(name('UF')) as unknown as { decodeText(): string }).decodeText(), {
      spec,
      ref,
      text: Buffer.from(decodePDFRawStream(stream).decode()).toString('utf8'),
    });
  }
  return found;
}

export function writeEmbedded(doc: PDFDocument, file: string, text: string): void {
  const { ref } = embedded(doc).get(file)!;
  doc.context.assign(ref, doc.context.flateStream(Buffer.from(text, 'utf8'), { Type: 'EmbeddedFile' }));
}

/** Changes the data that the packet carries, and leaves its pages as they are. */
export const withData = (pdf: Uint8Array, edit: (content: any) => void): Promise<Uint8Array> =>
  changed(pdf, (doc) => {
    const content = JSON.parse(embedded(doc).get('packet.json')!.text);
    edit(content);
    writeEmbedded(doc, 'packet.json', `${JSON.stringify(content, null, 1)}\n`);
  });

/** A face's codes and the signs that they stand for, from its ToUnicode map. */
function signsOf(page: PDFPage, font: string): Map<string, string> {
  const face = page.node.Resources()!.lookup(name('Font'), PDFDict).lookup(name(font), PDFDict);
  const map = latin1(decodePDFRawStream(face.lookup(name('ToUnicode')) as PDFRawStream).decode());
  const signs = new Map<string, string>();
  const text = (hex: string): string =>
    String.fromCharCode(...(hex.match(/.{4}/g) ?? []).map((unit) => Number.parseInt(unit, 16)));
  for (const [, from = '', , list = ''] of map.matchAll(/<([0-9a-f]+)>\s*<([0-9a-f]+)>\s*\[([^\]]*)\]/gi))
    [...list.matchAll(/<([0-9a-f ]+)>/gi)].forEach(([, hex = ''], index) =>
      signs.set(
        (Number.parseInt(from, 16) + index).toString(16).padStart(4, '0'),
        text(hex.replaceAll(' ', '')),
      ),
    );
  return signs;
}

/** Prints `to` where a page prints `from` (of one length), by editing the page's own program. */
export const withPrinted = (pdf: Uint8Array, number: number, from: string, to: string): Promise<Uint8Array> =>
  changed(pdf, (doc) => {
    const page = doc.getPage(number - 1);
    const ref = page.node.get(name('Contents')) as PDFRef;
    let font = '';
    let done = false;
    const program = latin1(decodePDFRawStream(doc.context.lookup(ref) as PDFRawStream).decode());
    const edited = program.replace(
      /\/(\S+) [\d.]+ Tf|\[([^\]]*)\] TJ/g,
      (all, face?: string, shown?: string) => {
        if (face !== undefined) font = face;
        if (shown === undefined || done) return all;
        const signs = signsOf(page, font);
        const codes = [...shown.matchAll(/<([0-9a-f]+)>/gi)].flatMap(
          ([, hex = '']) => hex.match(/.{4}/g) ?? [],
        );
        const text = codes.map((code) => signs.get(code.toLowerCase()) ?? '').join('');
        if (text.trim() !== from) return all;
        const known = new Map([...signs].map(([code, sign]) => [sign, code]));
        done = true;
        return `[<${Array.from(to)
          .map((sign) => known.get(sign)!)
          .join('')}>] TJ`;
      },
    );
    if (!done) throw new Error(`page ${number} does not print ${from} in one piece`);
    doc.context.assign(ref, doc.context.flateStream(Buffer.from(edited, 'latin1')));
  });

/** The stored bytes of every picture that is a JPEG, in the order of the file. */
export async function storedPictures(pdf: Uint8Array): Promise<Uint8Array[]> {
  const doc = await PDFDocument.load(pdf, { updateMetadata: false });
  return doc.context
    .enumerateIndirectObjects()
    .flatMap(([, object]) =>
      object instanceof PDFRawStream && object.dict.lookup(name('Filter')) === name('DCTDecode')
        ? [object.getContents()]
        : [],
    );
}

/** One bit of one picture, where it lies in the file. */
export async function withPictureBit(pdf: Uint8Array, index: number): Promise<Uint8Array> {
  const picture = (await storedPictures(pdf))[index]!;
  const bytes = Buffer.from(pdf);
  const at = bytes.indexOf(Buffer.from(picture)) + Math.floor(picture.length / 2);
  bytes[at] = bytes[at]! ^ 1;
  return new Uint8Array(bytes);
}
