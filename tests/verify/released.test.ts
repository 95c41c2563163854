import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { expect, it } from 'vitest';
import { pageTextReader } from '../../shared/verify/file/pageText.ts';
import { verifyPacket } from '../../shared/verify/verify.ts';

/** Packets as earlier versions issued them, and what each says of itself: an insurer may check one years later. */
const folder = join(import.meta.dirname, '../fixtures/released/packets');

it.each(readdirSync(folder))('a packet of %s is consistent for this version', async (file) => {
  const { outcome } = await verifyPacket(
    { pdf: new Uint8Array(readFileSync(join(folder, file))), archive: null, jws: null, keys: null },
    pageTextReader({ getDocument }),
  );
  expect(outcome).toBe('consistent');
});
