import { createHash } from 'node:crypto';
import PDFKit from 'pdfkit';
import { PDFDocument } from '@cantoo/pdf-lib';
import sharp from 'sharp';
import { packetArchive } from '../../functions/packets/archive.ts';
import { gatherPapers } from '../../functions/packets/papers/gather.ts';
import { renderPacket } from '../../functions/packets/pdf/render.ts';
import { gatherPhotos, MOST_PDF_BYTES } from '../../functions/packets/photos/gather.ts';
import { packetDocument } from '../../shared/packet/document.ts';
import { declaredPapers } from '../../shared/packet/papers.ts';
import { shownPhotos } from '../../shared/packet/photos.ts';
import type { Exhibit } from '../../shared/submissions/fields.ts';
import { launchBrowser } from '../support/browser.ts';
import { demoCase, demoClaim, demoContent } from '../support/demoClaim.ts';
import type { BenchRow } from './row.ts';

const PHOTOS = 60;
const PAPERS = 5;
const PHOTO_BYTES = 4_000_000;

const hashOf = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

/** Twelve megapixels with the grain of a phone's picture, about 4 MB; each with bytes of its own. */
async function phonePhotos(): Promise<Buffer[]> {
  const [width, height] = [4000, 3000];
  const pixels = Buffer.alloc(width * height * 3);
  let seed = 1;
  for (let at = 0; at < pixels.length; at += 3) {
    seed = (seed * 1_103_515_245 + 12_345) % 2_147_483_648;
    const [x, y] = [(at / 3) % width, Math.floor(at / 3 / width)];
    const base = 120 + 80 * Math.sin(x / 180) * Math.cos(y / 140);
    pixels.fill(Math.max(0, Math.min(255, base + (seed % 37) - 18)), at, at + 3);
  }
  const raw = { width, height, channels: 3 as const };
  let picture = Buffer.alloc(0);
  for (const quality of [70, 78, 84, 88, 92]) {
    picture = await sharp(pixels, { raw }).jpeg({ quality }).toBuffer();
    if (picture.byteLength >= PHOTO_BYTES) break;
  }
  return Array.from({ length: PHOTOS }, (_, index) => {
    const segment = Buffer.alloc(64, index);
    segment.writeUInt16BE(0xfffe, 0);
    segment.writeUInt16BE(62, 2);
    return Buffer.concat([picture.subarray(0, 2), segment, picture.subarray(2)]);
  });
}

async function paper(index: number): Promise<Buffer> {
  const doc = new PDFKit({ info: { CreationDate: new Date(0) } });
  for (let page = 0; page < 4; page += 1) {
    if (page > 0) doc.addPage();
    for (let line = 0; line < 40; line += 1)
      doc.fontSize(10).text(`Paper ${index}, page ${page}, line ${line}`);
  }
  doc.end();
  const chunks: Buffer[] = [];
  for await (const chunk of doc as AsyncIterable<Buffer>) chunks.push(chunk);
  return Buffer.concat(chunks);
}

/** What a simple program would do: a page of HTML for every photo, printed by a browser, and the papers appended. */
async function printed(photos: readonly Buffer[], papers: readonly Buffer[]): Promise<Uint8Array> {
  const browser = await launchBrowser();
  try {
    const page = await browser.newPage();
    await page.route('http://photos.invalid/**', (route) => {
      const index = Number(new URL(route.request().url()).pathname.slice(1));
      return Number.isNaN(index) || index < 0
        ? route.fulfill({ contentType: 'text/html', body: '<!doctype html>' })
        : route.fulfill({ contentType: 'image/jpeg', body: photos[index] ?? Buffer.alloc(0) });
    });
    await page.goto('http://photos.invalid/start');
    const figures = photos.map(
      (photo, index) =>
        `<figure><img src="/${index}" width="480"><figcaption>${hashOf(photo)}</figcaption></figure>`,
    );
    await page.setContent(`<!doctype html><base href="http://photos.invalid/">${figures.join('')}`, {
      waitUntil: 'load',
    });
    const pdf = await page.pdf({ format: 'Letter' });
    const whole = await PDFDocument.load(pdf);
    for (const bytes of papers) {
      const one = await PDFDocument.load(bytes);
      for (const copy of await whole.copyPages(one, one.getPageIndices())) whole.addPage(copy);
    }
    return await whole.save();
  } finally {
    await browser.close();
  }
}

export async function bench(): Promise<BenchRow[]> {
  const photos = await phonePhotos();
  const papers = await Promise.all(Array.from({ length: PAPERS }, (_, index) => paper(index)));
  const files = new Map([...photos, ...papers].map((bytes) => [hashOf(bytes), bytes]));
  const declared = (bytes: Buffer, mediaType: Exhibit['mediaType']): Exhibit => ({
    sha256: hashOf(bytes),
    bytes: bytes.byteLength,
    mediaType,
    takenAt: null,
    view: 'close',
    caption: null,
  });
  const claim = demoClaim((teller, { strikeId }) => {
    const subject = { type: 'strike', strikeId } as const;
    const repair = teller.told.find(
      ({ submission }) =>
        submission.kind === 'repair' &&
        submission.subject.type === 'strike' &&
        submission.subject.strikeId === strikeId,
    )!.submission;
    teller.tell('repair', subject, 390, {
      ...(repair.body as never as Record<string, unknown>),
      crew: [],
      machines: [],
      parts: [],
      contractors: [],
      steps: [],
      photos: photos.map((bytes) => declared(bytes, 'image/jpeg')),
    } as never);
    teller.tell(
      'documents',
      subject,
      200,
      {
        documents: papers.map((bytes, index) => ({
          ...declared(bytes, 'application/pdf'),
          what: 'invoice' as const,
          title: `Paper ${index}`,
          number: null,
        })),
        note: null,
      },
      { role: 'clerk' },
    );
  });
  const source = { get: async (sha256: string) => files.get(sha256) ?? null };
  const { facts } = demoCase(claim);

  // What the photos themselves take is the store's, so that only what building adds is counted.
  global.gc?.();
  const before = process.memoryUsage().rss;
  let peak = before;
  const watch = setInterval(() => (peak = Math.max(peak, process.memoryUsage().rss)), 20);
  const from = performance.now();
  const gathered = await gatherPapers(
    declaredPapers(facts).map(({ exhibit }) => exhibit),
    source,
  );
  const shown = await gatherPhotos(
    shownPhotos(facts).map(({ exhibit }) => exhibit),
    source,
    { mostBytes: MOST_PDF_BYTES - 2_500_000 - gathered.bytes },
  );
  const { content } = await demoContent(
    claim,
    { photos: shown.found, papers: gathered.found },
    { get: async () => null },
  );
  const pdf = await renderPacket(packetDocument(content), (hash) => shown.shown.get(hash)!, gathered.papers);
  const packetMs = performance.now() - from;
  clearInterval(watch);
  const archiveFrom = performance.now();
  const archive = await packetArchive({ content, source, signature: 'none' });
  const archiveMs = performance.now() - archiveFrom;

  const printFrom = performance.now();
  const print = await printed(photos, papers);
  const printMs = performance.now() - printFrom;
  const besides = 'the same pictures and papers printed by headless Chromium and merged';
  return [
    {
      name: `packet with ${PHOTOS} photos of ${((photos[0]?.byteLength ?? 0) / 1e6).toFixed(1)} MB and ${PAPERS} papers`,
      value: packetMs,
      unit: 'ms',
      beside: { name: besides, value: printMs },
    },
    {
      name: 'its size',
      value: pdf.byteLength / 1e6,
      unit: 'MB',
      beside: { name: besides, value: print.byteLength / 1e6 },
    },
    { name: 'memory that building it adds', value: (peak - before) / 1e6, unit: 'MB' },
    { name: `its archive (${(archive.byteLength / 1e6).toFixed(0)} MB)`, value: archiveMs, unit: 'ms' },
  ];
}
