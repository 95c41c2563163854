import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { beforeAll, describe, expect, it } from 'vitest';
import { renderPacket } from '../../functions/packets/pdf/render.ts';
import { demoUtility } from '../../infra/local/demo/utility.ts';
import { packetDocument } from '../../shared/packet/document.ts';
import { packetContentSchema, type PacketContent } from '../../shared/packet/schema.ts';
import type { Locale } from '../../shared/words/index.ts';
import { pageTextReader } from '../../shared/verify/file/pageText.ts';
import { verifyPacket, type Verification } from '../../shared/verify/verify.ts';
import { claimWithCorrectedBreach } from '../support/correctedBreach.ts';
import { demoClaim, demoContent, type DemoClaim } from '../support/demoClaim.ts';
import { everythingIn } from '../support/pdf.ts';
import { withData } from '../support/tamperPdf.ts';

interface Built {
  readonly content: PacketContent;
  readonly pdf: Uint8Array;
  /** Text of pages and attachments, spaces as one. */
  readonly text: string;
}

async function build(claim: DemoClaim, locale: Locale = 'en'): Promise<Built> {
  const { content, photos } = await demoContent(claim, { locale });
  const pdf = await renderPacket(packetDocument(content), (sha256) => photos.shown.get(sha256)!);
  return { content, pdf, text: (await everythingIn(pdf)).replaceAll(/\s+/g, ' ') };
}

const verified = (pdf: Uint8Array): Promise<Verification> =>
  verifyPacket({ pdf }, pageTextReader({ getDocument }));

let corrected: Built;
beforeAll(async () => {
  corrected = await build(claimWithCorrectedBreach());
});

describe('a breach that a correction took from the record', () => {
  it('is in the data, with its correction by id and trade', () => {
    const { breaches } = corrected.content.strike;
    expect(breaches.map(({ code, missing }) => [code, missing])).toEqual([
      ['take-down-before-safe', ['drained']],
      ['opened-before-safe', ['drained']],
    ]);
    for (const { corrected: correction } of breaches)
      expect(correction).toMatchObject({ by: { workerId: 'w-101', trade: 'Crew lead' }, withdrawn: false });
    const [listed] = corrected.content.manifest.submissions.filter(
      ({ submissionId }) => submissionId === breaches[0]?.corrected?.submissionId,
    );
    expect(listed).toMatchObject({ kind: 'correction', recordedAt: breaches[0]?.corrected?.at });
  });

  it('is on paper: what was recorded, when it was corrected, by whom and why', () => {
    const { text } = corrected;
    expect(text).toContain('Records of safety holds, corrected since');
    expect(text).toMatch(
      /Recorded before the correction: Taken down by Crew lead w-101 before this was confirmed by name: Barrel drained\. Nov \d+, 2026/,
    );
    expect(text).toMatch(
      /Record corrected on Nov \d+, 2026, [^.]+ by Crew lead w-101\. Reason given: “w-101 drained it at 6:50\. w-102 forgot to tick it; nozzle left open to mark it”/,
    );
    expect(text).not.toContain('Exceptions on record');
  });

  it('names no worker: not in the reason either, in pages or data', () => {
    const { people } = demoUtility;
    const reasons = corrected.content.strike.breaches.map((breach) => breach.corrected?.reason).join(' ');
    expect(reasons).not.toBe('');
    for (const { name, personId } of people) {
      if (personId !== 'c-301') expect(corrected.text).not.toContain(name);
      for (const part of name.split(/[\s-]+/)) expect(reasons).not.toContain(part);
    }
  });

  it('is said in Spanish too', async () => {
    const { text } = await build(claimWithCorrectedBreach(), 'es');
    expect(text).toMatch(
      /Registrado antes de la corrección: Crew lead w-101 desmontó antes de confirmar con nombre: /,
    );
    expect(text).toMatch(/Registro corregido el .{10,50} por Crew lead w-101\. Motivo dado: «w-101 drained/);
  });

  it('stays told when its whole record was withdrawn', async () => {
    const { content, text } = await build(claimWithCorrectedBreach(true));
    expect(content.strike.breaches.map((breach) => breach.corrected?.withdrawn)).toEqual([true, true]);
    expect(text).toMatch(/Record withdrawn on Nov \d+, 2026/);
  });

  it('gives the same bytes for the same records', async () => {
    const again = await build(claimWithCorrectedBreach());
    expect(Buffer.from(again.pdf).equals(Buffer.from(corrected.pdf))).toBe(true);
  });
});

describe('a packet without one', () => {
  it('says nothing of corrections of safety holds, in its data or on paper', async () => {
    const { content, text } = await build(demoClaim());
    expect(content.strike.breaches).toEqual([]);
    expect(text).not.toContain('safety holds');
  });

  it('of before, whose breaches have no such field, is read as it was written', () => {
    const old = structuredClone(corrected.content);
    for (const breach of old.strike.breaches) delete breach.corrected;
    expect(packetContentSchema.parse(old)).toEqual(old);
    const words = JSON.stringify(packetDocument(old).blocks);
    expect(words).toContain('Exceptions on record');
    expect(words).not.toContain('corrected since');
  });
});

describe('verify', () => {
  it('finds it consistent', async () => {
    const { findings, outcome } = await verified(corrected.pdf);
    expect(findings).toEqual([]);
    expect(outcome).toBe('consistent');
  });

  it.each<[string, (breach: any) => void, string]>([
    ['a breach made to stand again', (breach) => delete breach.corrected, 'printed'],
    ['another reason', (breach) => (breach.corrected.reason = 'A slip of the pen'), 'printed'],
    ['another corrector', (breach) => (breach.corrected.by.workerId = 'w-202'), 'printed'],
    [
      'a correction that is not listed',
      (breach) => (breach.corrected.submissionId = '0198c7a0-5d3e-7c41-9a52-6d1b0f2e8a13'),
      'not-in-manifest strike.breaches.0.corrected',
    ],
    [
      'a correction of another time',
      (breach) => (breach.corrected.at = '2026-11-09T00:00:00Z'),
      'not-that-correction strike.breaches.0.corrected',
    ],
    ['a name beside the id', (breach) => (breach.corrected.by.name = 'A. Person'), 'unknown-field strike.'],
  ])('names %s', async (_, edit, where) => {
    const found = await verified(await withData(corrected.pdf, ({ strike }) => edit(strike.breaches[0])));
    expect(found.outcome).toBe('differs');
    expect(found.findings.map(({ code, path }) => `${code} ${path}`)).toContainEqual(
      expect.stringContaining(where),
    );
  });

  it('names a record that is no correction', async () => {
    const found = await verified(
      await withData(corrected.pdf, ({ strike, manifest }) => {
        const [{ submissionId, recordedAt }] = manifest.submissions;
        Object.assign(strike.breaches[0].corrected, { submissionId, at: recordedAt });
      }),
    );
    expect(found.findings.map(({ code }) => code)).toContain('not-that-correction');
  });
});
