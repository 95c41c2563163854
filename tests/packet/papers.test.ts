import { createHash } from 'node:crypto';
import {
  beginText,
  degrees,
  endText,
  moveText,
  PDFDocument,
  PDFName,
  PDFString,
  rgb,
  setFontAndSize,
  showText,
  StandardFonts,
} from '@cantoo/pdf-lib';
import PDFKit from 'pdfkit';
import sharp from 'sharp';
import { beforeAll, describe, expect, it } from 'vitest';
import { gatherPapers } from '../../functions/packets/papers/gather.ts';
import { readPaper } from '../../functions/packets/papers/read.ts';
import { renderPacket } from '../../functions/packets/pdf/render.ts';
import { packetDocument } from '../../shared/packet/document.ts';
import { declaredPapers } from '../../shared/packet/papers.ts';
import type { PacketContent } from '../../shared/packet/schema.ts';
import type { BodyOf } from '../../shared/submissions/submission.ts';
import { demoCase, demoClaim, demoContent, demoPhotos } from '../support/demoClaim.ts';
import { structureOf, withPdf } from '../support/pdf.ts';

const sha256 = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');
type Document = BodyOf<'documents'>['documents'][number];

/** A paper of so many pages, with words that can be searched for, made by a library that has no part in merging. */
async function paper(words: string, pages = 1, options: PDFKit.PDFDocumentOptions = {}): Promise<Buffer> {
  const doc = new PDFKit({ info: { CreationDate: new Date(0) }, ...options });
  const chunks: Buffer[] = [];
  for (let page = 1; page <= pages; page += 1) {
    if (page > 1) doc.addPage();
    doc.fontSize(18).text(`${words}, its page ${page}`, 72, 72);
    doc.rect(72, 120, 300, 200).stroke();
  }
  doc.end();
  for await (const chunk of doc as AsyncIterable<Buffer>) chunks.push(chunk);
  return Buffer.concat(chunks);
}

/** A paper with everything that must not come along, and three things that must. */
async function hostile(): Promise<Uint8Array> {
  const doc = await PDFDocument.create();
  const font = await doc.embedFont(StandardFonts.Helvetica);
  const page = doc.addPage([842, 595]);
  page.setRotation(degrees(90));
  page.drawText('Visible words of the hostile paper', { x: 60, y: 300, size: 20, font, color: rgb(0, 0, 0) });
  doc.addJavaScript('evil', 'app.alert("CANARYSCRIPT")');
  await doc.attach(Buffer.from('CANARYFILE'), 'canary.exe', { mimeType: 'application/octet-stream' });
  const form = doc.getForm();
  const field = form.createTextField('CANARYFIELD');
  field.setText('Filled into the form');
  field.addToPage(page, { x: 60, y: 200, width: 300, height: 30, font });
  // A page may call its letters as it likes, also by a name that means something else elsewhere.
  const named = await doc.embedFont(StandardFonts.Courier);
  page.node.setFontDictionary(PDFName.of('A'), named.ref);
  page.pushOperators(
    beginText(),
    setFontAndSize('A', 14),
    moveText(60, 100),
    showText(named.encodeText('Typewritten')),
    endText(),
  );
  const { context } = doc;
  const link = context.register(
    context.obj({
      Type: 'Annot',
      Subtype: 'Link',
      Rect: [0, 0, 100, 100],
      A: { S: 'Launch', F: PDFString.of('CANARYLAUNCH') },
    }),
  );
  page.node.addAnnot(link);
  page.node.set(PDFName.of('AA'), context.obj({ O: { S: 'JavaScript', JS: PDFString.of('CANARYONOPEN') } }));
  doc.catalog.set(
    PDFName.of('OpenAction'),
    context.obj({ S: 'URI', URI: PDFString.of('http://canaryuri.example') }),
  );
  const resources = page.node.Resources()!;
  resources.set(PDFName.of('PieceInfo'), context.obj({ Secret: PDFString.of('CANARYPIECE') }));
  return doc.save({ useObjectStreams: false });
}

const document = (bytes: Uint8Array, more: Partial<Document> = {}): Document => ({
  sha256: sha256(bytes),
  bytes: bytes.byteLength,
  mediaType: 'application/pdf',
  takenAt: null,
  view: 'document',
  caption: null,
  what: 'other',
  title: 'A paper',
  number: null,
  ...more,
});

async function build(files: readonly (readonly [Uint8Array, Partial<Document>])[]) {
  const bytes = new Map(files.map(([file]) => [sha256(file), file]));
  const claim = demoClaim((teller, { strikeId }) => {
    teller.tell(
      'documents',
      { type: 'strike', strikeId },
      200,
      { documents: files.map(([file, more]) => document(file, more)), note: null },
      { role: 'clerk' },
    );
  });
  const exhibits = declaredPapers(demoCase(claim).facts).map(({ exhibit }) => exhibit);
  const papers = await gatherPapers(exhibits, { get: async (hash) => bytes.get(hash) ?? null });
  const { content, photos } = await demoContent(claim, { papers: papers.found }, demoPhotos);
  const pdf = await renderPacket(
    packetDocument(content),
    (hash) => photos.shown.get(hash) ?? papers.shown.get(hash)!,
    papers.papers,
  );
  return { content, pdf };
}

const textOf = (pdf: Uint8Array): Promise<string[]> =>
  withPdf(pdf, async (file) =>
    Promise.all(
      Array.from({ length: file.numPages }, async (_, index) => {
        const { items } = await (await file.getPage(index + 1)).getTextContent();
        return items.map((item) => ('str' in item ? item.str : '')).join(' ');
      }),
    ),
  );

/** Which faces a text is set in, by what the file calls them. */
const fontsShownIn = (pdf: Uint8Array, words: string): Promise<string[]> =>
  withPdf(pdf, async (file) => {
    for (let number = 1; number <= file.numPages; number += 1) {
      const page = await file.getPage(number);
      const { items } = await page.getTextContent();
      const item = items.find((one) => 'str' in one && one.str.includes(words));
      if (!item || !('fontName' in item)) continue;
      await page.getOperatorList();
      return [(page.commonObjs.get(item.fontName) as { name: string }).name];
    }
    return [];
  });

describe('papers of every sort', () => {
  let pdf: Uint8Array;
  let content: PacketContent;
  let pages: string[];
  let evil: Uint8Array;
  beforeAll(async () => {
    evil = await hostile();
    const whole = await paper('An invoice', 2);
    const picture = await sharp({
      create: { width: 900, height: 1200, channels: 3, background: '#dddddd' },
    })
      .png()
      .toBuffer();
    ({ pdf, content } = await build([
      [whole, { what: 'invoice', title: 'Paver', number: '77' }],
      [await paper('The police report', 3), { what: 'police-report', title: 'Crash report', number: 'TP-1' }],
      [evil, { what: 'letter', title: 'Hostile letter' }],
      [picture, { mediaType: 'image/png', what: 'time-sheet', title: 'Time sheet' }],
      [await paper('Locked', 1, { userPassword: 'secret', pdfVersion: '1.7ext3' }), { title: 'Locked' }],
      [await paper('May be read', 1, { ownerPassword: 'owner', pdfVersion: '1.7' }), { title: 'Readable' }],
      [whole.subarray(0, whole.length - 700), { title: 'Cut short' }],
      [Buffer.from('<html>not found</html>'), { title: 'No PDF' }],
      [await paper('Long', 201), { title: 'Very long' }],
    ]));
    pages = await textOf(pdf);
  });

  const states = (): Record<string, string> =>
    Object.fromEntries(
      content.papers.map(({ title, state }) => [
        title,
        state.code === 'not-included' ? state.reason : state.code === 'pages' ? `${state.pages}` : state.code,
      ]),
    );

  it('each included, or listed with the reason', () => {
    expect(states()).toEqual({
      'Crash report': '3',
      Paver: '2',
      'Time sheet': 'included',
      'Hostile letter': '1',
      Locked: 'password',
      Readable: '1',
      'Cut short': 'corrupt',
      'No PDF': 'corrupt',
      'Very long': 'too-many-pages',
    });
    const all = pages.join(' ').replaceAll(/\s+/g, ' ');
    for (const words of ['protected with a password', 'damaged or cut short', 'more than 200 pages'])
      expect(all).toContain(words);
  });

  it('page by page in the order of their kinds, with words that can be selected', () => {
    const at = (words: string): number => pages.findIndex((text) => text.includes(words));
    const found = [
      'The police report, its page 1',
      'The police report, its page 3',
      'An invoice, its page 1',
      'An invoice, its page 2',
      'Visible words of the hostile paper',
      'May be read, its page 1',
    ].map(at);
    expect(found.every((page) => page > 0)).toBe(true);
    expect(found).toEqual([...found].sort((a, b) => a - b));
  });

  it('each under a line that names it, with the packet’s own page numbers', () => {
    pages.forEach((text, index) => expect(text).toContain(`Page ${index + 1} of ${pages.length}`));
    expect(pages.find((text) => text.includes('An invoice, its page 2'))).toContain(
      'paper-02, Invoice: Paver, no. 77: page 2 of 2',
    );
  });

  it('what was filled into a form is seen; what a file would do stays behind', async () => {
    expect(pages.join(' ')).toContain('Filled into the form');
    expect(await fontsShownIn(pdf, 'Typewritten')).toEqual(['Courier']);
    // Nothing is packed in this copy, so a search sees every object that came along.
    const bare = await (
      await PDFDocument.load(pdf, { updateMetadata: false })
    ).save({ useObjectStreams: false });
    const raw = Buffer.from(bare).toString('latin1');
    for (const trap of [
      'CANARYSCRIPT',
      'CANARYONOPEN',
      'CANARYLAUNCH',
      'canaryuri',
      'CANARYPIECE',
      'CANARYFIELD',
    ])
      expect(raw).not.toContain(trap);
    for (const name of ['/JavaScript', '/Launch', '/AcroForm', '/OpenAction', '/AA'])
      expect(raw).not.toContain(`${name} `);
    expect(Buffer.from(evil).toString('latin1')).toContain('CANARYLAUNCH');
    await withPdf(pdf, async (file) => {
      expect([...(await file.getAttachments())!.keys()].sort()).toEqual([
        'packet.json',
        'statement.json',
        'words.json',
      ]);
      expect(await file.getJSActions()).toBeNull();
      expect(await file.getFieldObjects()).toBeNull();
    });
  });

  it('stands in the outline, and each page says what it is to a screen reader', async () => {
    const outline = await withPdf(pdf, (file) => file.getOutline());
    const part = outline.find(({ title }) => title === 'Papers')!;
    expect(part.items.map(({ title }) => title)).toEqual([
      'paper-01. Police or crash report: Crash report, no. TP-1',
      'paper-02. Invoice: Paver, no. 77',
      expect.stringContaining('Time sheet'),
      expect.stringContaining('Hostile letter'),
      expect.stringContaining('Readable'),
    ]);
    const figures = (await structureOf(pdf)).filter(({ role }) => role === 'Figure').map(({ alt }) => alt);
    expect(figures).toContain('Page 2 of 2 of Invoice: Paver, no. 77');
  });

  it('is the same bytes again', async () => {
    const files = [[evil, { what: 'letter', title: 'Hostile letter' }]] as const;
    const [one, two] = [await build(files), await build(files)];
    expect(Buffer.from(one.pdf).equals(Buffer.from(two.pdf))).toBe(true);
  });
});

describe('a paper that unpacks to far more than it is', () => {
  it('is refused before it is unpacked', async () => {
    const { deflateSync } = await import('node:zlib');
    const bomb = deflateSync(Buffer.alloc(100_000_000));
    const file = Buffer.concat([
      Buffer.from(
        `%PDF-1.7\n1 0 obj\n<</Type /ObjStm /N 1 /First 4 /Filter /FlateDecode /Length ${bomb.length}>>\nstream\n`,
      ),
      bomb,
      Buffer.from('\nendstream\nendobj\ntrailer\n<</Root 2 0 R>>\n%%EOF\n'),
    ]);
    expect(await readPaper(sha256(file), file)).toBe('too-large');
  });
});
