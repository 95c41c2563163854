import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { sections, type Section } from '../../shared/costs/line.ts';
import { locales, say } from '../../shared/words/index.ts';

/** What the statement of a packet prints, in cents, read back by a library that had no part in writing it. */
export interface PacketTotals {
  readonly totalCents: number;
  readonly sectionCents: Readonly<Partial<Record<Section, number>>>;
}

/** A line of a page: the pieces of text that share a baseline, left to right. */
export type TextLine = readonly string[];

/** The lines of every page of a PDF, top to bottom. */
export async function readPdfLines(pdf: Uint8Array): Promise<readonly (readonly TextLine[])[]> {
  // pdf.js takes the bytes over, and takes no Buffer.
  const loading = getDocument({ data: new Uint8Array(pdf), verbosity: 0, useSystemFonts: false });
  const document = await loading.promise;
  try {
    const pages: TextLine[][] = [];
    for (let number = 1; number <= document.numPages; number += 1) {
      const page = await document.getPage(number);
      const lines = new Map<number, { x: number; text: string }[]>();
      for (const item of (await page.getTextContent()).items) {
        if (!('str' in item) || item.str.trim() === '') continue;
        const [, , , , x, y] = item.transform as number[];
        const at = Math.round((y ?? 0) * 2) / 2;
        lines.set(at, [...(lines.get(at) ?? []), { x: x ?? 0, text: item.str }]);
      }
      pages.push(
        [...lines]
          .sort(([a], [b]) => b - a)
          .map(([, pieces]) => pieces.sort((a, b) => a.x - b.x).map(({ text }) => text)),
      );
    }
    return pages;
  } finally {
    await loading.destroy();
  }
}

const centsOf = (text: string | undefined): number | null => {
  const [, whole, cents] = /^\$([\d,]+)\.(\d\d)$/.exec(text ?? '') ?? [];
  return whole === undefined || cents === undefined
    ? null
    : Number(whole.replaceAll(',', '')) * 100 + Number(cents);
};

/**
 * The totals that a packet's statement prints. Throws when the file has no statement with one total, so that a missing
 * figure is never taken for a zero.
 */
export async function readPacketTotals(pdf: Uint8Array): Promise<PacketTotals> {
  const lines = (await readPdfLines(pdf)).flat();
  const amountAfter = (label: string): number[] =>
    lines.flatMap((line) =>
      line.slice(0, -1).join('').trim() === label ? (centsOf(line.at(-1)) ?? []) : [],
    );
  const labelled = (key: string, params: Record<string, string> = {}): number[] => [
    ...new Set(locales.flatMap((locale) => amountAfter(say(locale, key, params)))),
  ];
  const [totalCents, ...more] = [
    ...labelled('packet.statement.total'),
    ...labelled('packet.statement.total-incomplete'),
  ];
  if (totalCents === undefined || more.length > 0)
    throw new Error('the file has no statement of costs with one total');
  const sectionCents: Partial<Record<Section, number>> = {};
  for (const section of sections) {
    const found = locales.flatMap((locale) =>
      amountAfter(
        say(locale, 'packet.statement.subtotal', { section: say(locale, `packet.section.${section}`) }),
      ),
    );
    const [subtotal] = found;
    if (subtotal !== undefined) sectionCents[section] = subtotal;
  }
  return { totalCents, sectionCents };
}
