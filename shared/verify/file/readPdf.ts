import { PDFDocument } from '@cantoo/pdf-lib';
import { finding, type Finding } from '../finding.ts';
import { actingFindings, outlineTitles } from './around.ts';
import { embeddedFiles, type EmbeddedFile } from './attachments.ts';
import { endFindings, isEncrypted, isPdf } from './ends.ts';
import { sha256Of } from './hash.ts';
import type { PageTextReader, TextRun } from './pageText.ts';
import { drawnOn, type Drawn } from './pictures.ts';

/** A packet's file, taken apart. Nothing in it has been judged yet. */
export interface ReadPdf extends Drawn {
  readonly sha256: string;
  readonly pages: readonly (readonly TextRun[])[];
  readonly files: readonly EmbeddedFile[];
  /** Titles of the outline, in order. */
  readonly outline: readonly string[];
  /** What is odd about the file as a file; it could be read all the same. */
  readonly oddities: readonly Finding[];
}

export type PdfReading =
  { readonly ok: true; readonly value: ReadPdf } | { readonly ok: false; readonly problem: Finding };

/** A packet stays under 20 MB; several times that is read, and no more. */
export const MOST_PDF_BYTES = 100_000_000;

/** Reads a file that somebody says is a packet. Why it could not be read is an answer, not an exception. */
export async function readPdf(bytes: Uint8Array, readText: PageTextReader): Promise<PdfReading> {
  const refuse = (code: string, params: Finding['params'] = {}): PdfReading => ({
    ok: false,
    problem: finding(code, '', params),
  });
  if (bytes.length === 0) return refuse('empty');
  if (bytes.length > MOST_PDF_BYTES)
    return refuse('too-large', { megabytes: Math.ceil(bytes.length / 1e6), most: MOST_PDF_BYTES / 1e6 });
  if (!isPdf(bytes)) return refuse('not-a-pdf');
  const oddities = endFindings(bytes);
  if (oddities.some(({ code }) => code === 'cut-short')) return refuse('cut-short', { bytes: bytes.length });
  if (isEncrypted(bytes)) return refuse('encrypted');
  try {
    const document = await PDFDocument.load(bytes, { updateMetadata: false, throwOnInvalidObject: true });
    const drawn = await drawnOn(document);
    const pages = await readText(bytes);
    const count = document.getPageCount();
    const odd = [...oddities, ...actingFindings(document)];
    return {
      ok: true,
      value: {
        ...drawn,
        sha256: await sha256Of(bytes),
        pages,
        files: embeddedFiles(document),
        outline: outlineTitles(document),
        // Two programs that count differently would show two packets.
        oddities:
          count === pages.length
            ? odd
            : [...odd, finding('pages-disagree', '', { one: count, other: pages.length })],
      },
    };
  } catch (error) {
    return refuse('broken', { reason: (error as Error).message.slice(0, 200) });
  }
}
