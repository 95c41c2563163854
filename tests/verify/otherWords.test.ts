import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { describe, expect, it } from 'vitest';
import { renderPacket } from '../../functions/packets/pdf/render.ts';
import type { Block } from '../../shared/packet/blocks.ts';
import { packetDocument } from '../../shared/packet/document.ts';
import { WORDING_NAME, wordingOf } from '../../shared/packet/wording.ts';
import { pageTextReader } from '../../shared/verify/file/pageText.ts';
import { verifyPacket, type Verification } from '../../shared/verify/verify.ts';
import { demoClaim, demoContent } from '../support/demoClaim.ts';

/** A packet as another edition of the program would have worded it; `kept` is whether its words lie in the file. */
async function worded(change: (text: string) => string, kept = true): Promise<Verification> {
  const { content, photos } = await demoContent(demoClaim());
  const document = packetDocument(content);
  const blocks = document.blocks.map((block): Block =>
    block.type === 'paragraph' ? { ...block, text: change(block.text) } : block,
  );
  expect(blocks).not.toEqual(document.blocks);
  const attachments = document.attachments.map((file) =>
    kept && file.name === WORDING_NAME ? { ...file, text: JSON.stringify(wordingOf(blocks), null, 1) } : file,
  );
  const pdf = await renderPacket({ ...document, blocks, attachments }, (sha256) => photos.shown.get(sha256)!);
  return verifyPacket({ pdf }, pageTextReader({ getDocument }));
}

const reworded = (text: string): string => text.replace('Everything in this packet was', 'All of it was');

describe('a packet that another edition of the program worded', () => {
  it('is consistent, and the other words are remarked on', async () => {
    const found = await worded(reworded);
    expect(found.findings).toEqual([]);
    expect(found.outcome).toBe('consistent');
    expect(found.remarks.map(({ code }) => code)).toEqual(['printed-words']);
  });

  it('differs when the words are not those that the file carries', async () => {
    const found = await worded(reworded, false);
    expect(found.outcome).toBe('differs');
    expect(found.findings.map(({ code }) => code)).toEqual(['printed-words']);
  });

  it.each<[string, (text: string) => string]>([
    ['a figure', (text) => text.replace(/\$(\d)/, (_, digit: string) => `$${(Number(digit) + 1) % 10}`)],
    ['a name', (text) => text.replaceAll('2026-0001', '2026-0002')],
  ])('differs when %s is other, whatever the file carries', async (_, change) => {
    const found = await worded(change);
    expect(found.outcome).toBe('differs');
  });
});
