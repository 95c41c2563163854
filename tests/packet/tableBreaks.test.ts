import { expect, it } from 'vitest';
import { renderPacket } from '../../functions/packets/pdf/render.ts';
import { readPdfLines } from '../../infra/local/packetTotals.ts';
import type { PacketDocument, Row } from '../../shared/packet/blocks.ts';

/** A statement of so many lines, each two lines high, with the sum of its section and the total under them. */
const statementOf = (count: number): PacketDocument => {
  const lines: Row[] = Array.from({ length: count }, (_, index) => ({
    cells: [[{ text: `Line ${index + 1}` }, { text: 'arithmetic', look: 'small' }], '$1.00'],
  }));
  return {
    language: 'en',
    title: 'A statement',
    subject: 'A statement',
    issuedAt: '2026-01-01T00:00:00Z',
    banner: null,
    runningHead: 'Utility',
    runningFoot: 'Packet',
    pageOf: (page, all) => `Page ${page} of ${all}`,
    blocks: [
      {
        type: 'table',
        summary: 'Lines and their sums',
        columns: [
          { label: 'Item', align: 'left', share: 0.7 },
          { label: 'Amount', align: 'right', share: 0.3 },
        ],
        rows: [
          { role: 'group', cells: ['Labor'] },
          ...lines,
          { role: 'subtotal', cells: ['Labor, subtotal', '$1.00'] },
          { role: 'total', cells: ['Total', '$1.00'] },
        ],
      },
    ],
    attachments: [],
  };
};

it('a total never stands on a page without a line that it sums, wherever the page ends', async () => {
  const alone: number[] = [];
  let broken = 0;
  for (let count = 8; count <= 26; count += 1) {
    const pages = await readPdfLines(await renderPacket(statementOf(count), () => new Uint8Array()));
    if (pages.length > 1) broken += 1;
    const last = pages.at(-1)!.flat().join(' ');
    expect(last).toContain('Total');
    if (!/Line \d+/.test(last)) alone.push(count);
  }
  expect(broken).toBeGreaterThan(3);
  expect(alone).toEqual([]);
}, 60_000);
