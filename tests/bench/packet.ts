import { createHash } from 'node:crypto';
import PDFDocument from 'pdfkit';
import { renderPacket } from '../../functions/packets/pdf/render.ts';
import { gatherPhotos } from '../../functions/packets/photos/gather.ts';
import { photoBytes, photoNames } from '../../infra/local/demo/photos.ts';
import { demoMembers, demoUtility } from '../../infra/local/demo/utility.ts';
import { packetContent } from '../../shared/packet/content.ts';
import { packetDocument } from '../../shared/packet/document.ts';
import { declaredPhotos } from '../../shared/packet/photos.ts';
import type { Exhibit } from '../../shared/submissions/fields.ts';
import type { Submission } from '../../shared/submissions/submission.ts';
import { demoCase, demoClaim, frozenAt, struckHydrant } from '../support/demoClaim.ts';
import { cost, labor, machine, span, stock, used, worked, fromStock } from '../support/rates.ts';
import type { BenchRow } from './row.ts';

const PHOTOS = 20;
const PHOTO_BYTES = 3_000_000;

/** A drawn JPEG brought to the size of a phone's by comment segments, each photo with bytes of its own. */
function phonePhoto(index: number): Buffer {
  const picture = Buffer.from(photoBytes(photoNames[index % photoNames.length] ?? 'sailmaker-overall'));
  const parts: Buffer[] = [picture.subarray(0, 2)];
  for (let size = picture.length; size < PHOTO_BYTES; size += 65_535) {
    const segment = Buffer.alloc(65_537, index);
    segment.writeUInt16BE(0xfffe, 0);
    segment.writeUInt16BE(65_535, 2);
    parts.push(segment);
  }
  return Buffer.concat([...parts, picture.subarray(2)]);
}

/** From the claim's records to the finished file: statement, content, photos checked and hashed, pages drawn. */
async function buildPacket(
  submissions: readonly Submission[],
  photos: ReadonlyMap<string, Buffer>,
): Promise<number> {
  const found = demoCase({ ...demoClaim(), submissions });
  const exhibits = declaredPhotos(found.facts).map(({ exhibit }) => exhibit);
  const gathered = await gatherPhotos(exhibits, { get: async (sha256) => photos.get(sha256) ?? null });
  const content = packetContent({
    locale: 'en',
    settings: demoUtility,
    issue: { state: 'frozen', revision: 1, asOf: frozenAt, changes: null, added: [] },
    preparedBy: demoMembers.clerk,
    ...found,
    demandCents: found.statement.totalCents,
    otherDemandsCents: 0,
    hydrant: struckHydrant,
    photos: gathered.found,
  });
  const pdf = await renderPacket(
    packetDocument(content),
    (sha256) => gathered.shown.get(sha256) ?? Buffer.alloc(0),
  );
  return pdf.byteLength;
}

/** A plain document by the same library that places the same pictures and does nothing else. */
async function placeOnly(photos: Iterable<Buffer>): Promise<number> {
  const doc = new PDFDocument({ size: 'LETTER', autoFirstPage: false });
  for (const photo of photos) doc.addPage().image(photo, 72, 72, { fit: [468, 600] });
  doc.end();
  let bytes = 0;
  for await (const chunk of doc as AsyncIterable<Buffer>) bytes += chunk.length;
  return bytes;
}

async function fastestMs(work: () => Promise<unknown>, times = 3): Promise<number> {
  let best = Infinity;
  for (let run = 0; run < times; run += 1) {
    const from = performance.now();
    await work();
    best = Math.min(best, performance.now() - from);
  }
  return best;
}

export async function bench(): Promise<BenchRow[]> {
  const photos = new Map(
    Array.from({ length: PHOTOS }, (_, index) => {
      const bytes = phonePhoto(index);
      return [createHash('sha256').update(bytes).digest('hex'), bytes] as const;
    }),
  );
  const exhibits = [...photos].map(([sha256, bytes], index): Exhibit => ({
    sha256,
    bytes: bytes.length,
    mediaType: 'image/jpeg',
    takenAt: new Date(Date.parse('2026-11-08T12:00:00Z') + index * 60_000).toISOString(),
    view: 'close',
    caption: `Photo ${index + 1}`,
  }));
  const claim = demoClaim();
  const submissions = claim.submissions.map((submission): Submission => {
    if (submission.subject.type !== 'strike' || submission.subject.strikeId !== claim.strikeId)
      return submission;
    if (submission.kind === 'strike')
      return { ...submission, body: { ...submission.body, photos: exhibits } };
    if (submission.kind === 'repair') return { ...submission, body: { ...submission.body, photos: [] } };
    if (submission.kind === 'correction' && submission.body.targetKind === 'repair')
      return {
        ...submission,
        body: { ...submission.body, replacement: { ...submission.body.replacement, photos: [] } },
      };
    return submission;
  });

  const packetMs = await fastestMs(() => buildPacket(submissions, photos));
  const plainMs = await fastestMs(() => placeOnly(photos.values()));
  const packetBytes = await buildPacket(submissions, photos);
  const plainBytes = await placeOnly(photos.values());

  const statements = 2000;
  const from = performance.now();
  for (let index = 0; index < statements; index += 1) oneStatement(index);
  const statementsMs = performance.now() - from;

  const besides = `pdfkit placing the same ${PHOTOS} pictures`;
  return [
    {
      name: `packet with ${PHOTOS} photos of 3 MB`,
      value: packetMs,
      unit: 'ms',
      beside: { name: besides, value: plainMs },
    },
    {
      name: 'its size',
      value: packetBytes / 1e6,
      unit: 'MB',
      beside: { name: besides, value: plainBytes / 1e6 },
    },
    { name: 'statements of costs', value: (statements / statementsMs) * 1000, unit: 'per second' },
  ];
}

function oneStatement(index: number): void {
  const from = new Date(Date.parse('2026-03-04T02:00:00Z') + index * 60_000).toISOString();
  cost(
    {
      crew: [worked('w-1', 'a', [span(from, 250)]), worked('w-2', 'b', [span(from, 250)], [span(from, 15)])],
      machines: [used('truck', [span(from, 250)])],
      parts: [fromStock('kit', 1), fromStock('gasket', 2)],
    },
    {
      labor: [labor('a', '38.4150', '0.3940'), labor('b', '30.6850', '0.3940')],
      machines: [machine('truck', 'hour', '29.25')],
      stock: [stock('kit', '412.80'), stock('gasket', '45.90')],
      materialHandling: { fraction: '0.05', authorityId: 'a' },
    },
  );
}
