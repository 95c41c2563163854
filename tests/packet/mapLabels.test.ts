import { PDFDocument } from '@cantoo/pdf-lib';
import { expect, it } from 'vitest';
import { renderPacket } from '../../functions/packets/pdf/render.ts';
import { packetDocument } from '../../shared/packet/document.ts';
import { drawnOn } from '../../shared/verify/file/pictures.ts';
import { demoClaim, demoContent, struckHydrant } from '../support/demoClaim.ts';
import { withPdf } from '../support/pdf.ts';
import { seeded } from '../support/seeded.ts';

interface Word {
  readonly text: string;
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
}

/** The words of the first page with their boxes, read by pdf.js: how wide they are is not our estimate. */
const wordsOf = (pdf: Uint8Array): Promise<Word[]> =>
  withPdf(pdf, async (document) => {
    const { items } = await (await document.getPage(1)).getTextContent();
    return items.flatMap((item) => {
      if (!('str' in item) || item.str.trim() === '') return [];
      const [, , , size = 0, left = 0, bottom = 0] = item.transform as number[];
      return [{ text: item.str, left, right: left + item.width, bottom, top: bottom + size * 0.7 }];
    });
  });

/** A packet's sketch alone, with neighbours strewn about by chance. */
async function sketch(seed: number): Promise<Uint8Array> {
  const { content } = await demoContent(demoClaim());
  const random = seeded(seed);
  const near = Array.from({ length: 8 }, (_, index) => {
    const distanceFt = 60 + random() * 540;
    const turn = random() * 2 * Math.PI;
    const feet = 364_600;
    return {
      hydrantId: `TH-0${100 + index}`,
      latitudeDeg: struckHydrant.latitudeDeg + (Math.cos(turn) * distanceFt) / feet,
      longitudeDeg:
        struckHydrant.longitudeDeg +
        (Math.sin(turn) * distanceFt) / feet / Math.cos((struckHydrant.latitudeDeg * Math.PI) / 180),
      distanceFt: Math.round(distanceFt),
    };
  });
  const whole = packetDocument({ ...content, hydrant: { ...content.hydrant, near } });
  const blocks = whole.blocks.filter(({ type }) => type === 'map');
  expect(blocks).toHaveLength(1);
  return renderPacket({ ...whole, blocks, attachments: [] }, () => new Uint8Array());
}

it('no word of the sketch covers another, and no packet accuses itself of covered text', async () => {
  const covered: number[] = [];
  const crowded: string[] = [];
  for (let seed = 1; seed <= 40; seed += 1) {
    const pdf = await sketch(seed);
    const { marks } = await drawnOn(await PDFDocument.load(pdf));
    if (marks.some(({ coveredText }) => coveredText)) covered.push(seed);
    const words = (await wordsOf(pdf)).filter(({ text }) => /^TH-|ft$/.test(text));
    expect(words.length).toBeGreaterThanOrEqual(9);
    words.forEach((a, index) => {
      for (const b of words.slice(index + 1))
        if (a.left < b.right && b.left < a.right && a.bottom < b.top && b.bottom < a.top)
          crowded.push(`${seed}: ${a.text} and ${b.text}`);
    });
  }
  expect(covered).toEqual([]);
  expect(crowded).toEqual([]);
}, 120_000);
