import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { PDFDocument, PDFName, rgb, StandardFonts } from '@cantoo/pdf-lib';
import { unzipSync, zipSync, type Unzipped } from 'fflate';
import { beforeAll, describe, expect, it } from 'vitest';
import { pageTextReader } from '../../shared/verify/file/pageText.ts';
import { sayFinding } from '../../shared/verify/finding.ts';
import { sayVerdict } from '../../shared/verify/say.ts';
import { verifyPacket, type Verification, type VerifyQuestion } from '../../shared/verify/verify.ts';
import { issuedPacket, type IssuedPacket } from '../support/issuedPacket.ts';
import {
  changed,
  embedded,
  withData,
  withPictureBit,
  withPrinted,
  writeEmbedded,
} from '../support/tamperPdf.ts';

const verify = (question: VerifyQuestion): Promise<Verification> =>
  verifyPacket(question, pageTextReader({ getDocument }));

let issued: IssuedPacket;
beforeAll(async () => {
  issued = await issuedPacket();
});

const codesAt = ({ findings }: Verification): string[] => findings.map(({ code, path }) => `${code} ${path}`);
const sentences = ({ findings }: Verification): string[] => findings.map((each) => sayFinding('en', each));

describe('a packet as it was issued', () => {
  it('is consistent, which says nothing of who issued it', async () => {
    const found = await verify({ pdf: issued.pdf });
    expect(codesAt(found)).toEqual([]);
    expect(found).toMatchObject({ outcome: 'consistent', signature: { state: 'none' } });
    expect(sayVerdict('en', found)).toBe(
      'Consistent: nothing in it contradicts itself. This does not show who issued it.',
    );
  });

  it('is issued by the utility, with its signature and keys', async () => {
    const { pdf, jws, keys } = issued;
    const found = await verify({ pdf, jws, keys });
    expect(found).toMatchObject({ outcome: 'consistent', signature: { state: 'issued' } });
    expect(sayVerdict('en', found)).toMatch(/^Issued by this utility/);
  });

  it('has its signature and originals in the archive', async () => {
    const { pdf, archive, keys } = issued;
    const found = await verify({ pdf, archive, keys });
    expect(codesAt(found)).toEqual([]);
    expect(found).toMatchObject({ outcome: 'consistent', signature: { state: 'issued' } });
    expect(found.checked?.archivedFiles).toBe(8);
  });

  it('a signature without keys shows nothing', async () => {
    const { pdf, jws } = issued;
    expect(await verify({ pdf, jws })).toMatchObject({
      outcome: 'consistent',
      signature: { state: 'no-keys' },
    });
  });
});

describe('one change in the data', () => {
  it.each<[what: string, edit: (content: any) => void, ...where: string[]]>([
    [
      'a cent of a line',
      (content) =>
        (content.statement.lines[1].amountCents = Number(content.statement.lines[1].amountCents) + 1),
      'line-amount statement.lines.1.amountCents',
      'section-sum statement.sections.0.subtotalCents',
      'total-sum statement.totalCents',
      'attachment-differs statement.json',
      'printed-differs page.3',
    ],
    [
      'a cent of the total',
      (content) => (content.statement.totalCents = Number(content.statement.totalCents) + 1),
      'total-sum statement.totalCents',
      'total-amount statement.totalCents',
      'printed-differs page.2',
    ],
    [
      'a line, its section and the total alike, so that all of it foots',
      ({ statement }) => {
        statement.lines[1].amountCents = Number(statement.lines[1].amountCents) + 1;
        statement.sections[0].subtotalCents = Number(statement.sections[0].subtotalCents) + 1;
        statement.totalCents = Number(statement.totalCents) + 1;
      },
      'line-amount statement.lines.1.amountCents',
      'section-amount statement.sections.0.subtotalCents',
      'total-amount statement.totalCents',
      'printed-differs page.3',
    ],
    [
      'a rate',
      ({ basis }) => (basis.editions[0].labor[0].hourlyUsd = '38.4250'),
      'line-amount statement.lines.0.amountCents',
      'line-field statement.lines.0.rateUsd',
    ],
    [
      'an hour worked',
      ({ basis: { work } }) => {
        const [spell] = work.records[0].crew[0].work;
        spell.to = new Date(Date.parse(spell.to) + 60_000).toISOString();
      },
      'line-amount statement.lines.0.amountCents',
      'line-field statement.lines.0.hoursWorked',
    ],
    [
      'a flow test’s reading',
      ({ flowTests }) => (flowTests[0].staticPsi = Number(flowTests[0].staticPsi) + 1),
      'printed-differs page.10',
    ],
    [
      'an earlier test’s reading, which was rated',
      ({ earlierTests }) => (earlierTests.at(-1).residualPsi = Number(earlierTests.at(-1).residualPsi) - 20),
      'test-class hydrant.lastFlowTest.hydrantClass',
    ],
    [
      'the water lost',
      ({ waterLost }) => (waterLost.claimedGal = Number(waterLost.claimedGal) + 1000),
      'water-gallons waterLost.claimedGal',
    ],
    [
      'how high the jet stood',
      ({ waterLost }) =>
        (waterLost.question.found.jetHeightIn = Number(waterLost.question.found.jetHeightIn) + 12),
      'water-sentence waterLost.basis',
    ],
    [
      'the demand',
      ({ claim }) => (claim.demandCents = Number(claim.demandCents) + 1),
      'demand-above claim.demandCents',
    ],
    [
      'a time of the story',
      ({ timeline }) => (timeline[3].at = '2026-11-09T00:00:00Z'),
      'timeline-order timeline.4.at',
    ],
    [
      'when it was returned',
      ({ strike }) => (strike.returnedAt = '2026-11-08T20:00:00Z'),
      'not-in-timeline strike.returnedAt',
    ],
    [
      'a record of the manifest',
      ({ manifest, statement }) =>
        (manifest.submissions = manifest.submissions.filter(
          (item: any) => item.submissionId !== statement.lines[0].submissionIds[0],
        )),
      'not-in-manifest statement.lines.0.submissionIds',
    ],
    [
      'a picture’s hash',
      ({ photos }) => (photos[0].state.display.sha256 = '0'.repeat(64)),
      'picture-changed page.13',
    ],
    ['a field that no packet has', (content) => (content.claim.note = 'paid'), 'unknown-field claim.note'],
    [
      'a field that cannot be',
      (content) => (content.claim.demandCents = 'much'),
      'not-valid claim.demandCents',
    ],
    [
      'a day that is none',
      ({ basis }) => (basis.work.strike.date = '2026-02-31'),
      'not-valid basis.work.strike.date',
    ],
  ])('%s', async (_, edit, ...where) => {
    const found = await verify({ pdf: await withData(issued.pdf, edit) });
    expect(found.outcome).toBe('differs');
    for (const place of where) expect(codesAt(found)).toContain(place);
  });

  it('says of a line what the file says and what its own rates give', async () => {
    const found = await verify({
      pdf: await withData(
        issued.pdf,
        ({ statement }) => (statement.lines[1].amountCents = Number(statement.lines[1].amountCents) + 1),
      ),
    });
    // 3 h 10 min at $32.1750 with 36.45 % fringe is $139.02 (computed by hand: 3.1667 × 32.175 × 1.3645).
    expect(sentences(found)[0]).toBe(
      'Line labor-2: the file says $139.03, its own quantities and rates give $139.02.',
    );
  });

  it('a field that stands twice, of which readers see one or the other', async () => {
    const pdf = await changed(issued.pdf, (doc) => {
      const { text } = embedded(doc).get('packet.json')!;
      writeEmbedded(doc, 'packet.json', text.replace('"totalCents":', '"totalCents": 1,\n"totalCents":'));
    });
    expect(codesAt(await verify({ pdf }))).toContain('data-not-plain packet.json');
  });
});

describe('one change on paper', () => {
  it('a cent of a line', async () => {
    const found = await verify({ pdf: await withPrinted(issued.pdf, 3, '$187.43', '$187.44') });
    expect(codesAt(found)).toEqual(['printed-differs page.3']);
    expect(sentences(found)[0]).toMatch(
      /^Page 3, “Statement of costs”.*: the page says “\$187\.44”, the packet’s data give “\$187\.43”\.$/,
    );
  });

  it('a page taken out', async () => {
    const found = await verify({ pdf: await changed(issued.pdf, (doc) => doc.removePage(5)) });
    expect(found.findings[0]).toBeDefined();
    expect(
      sentences(found).some((text) => text.includes('Pages are missing: 6 of 20. The file has 19.')),
    ).toBe(true);
    expect(codesAt(found)).toContain('pages-missing pages');
  });

  it('two pages the other way round', async () => {
    const found = await verify({
      pdf: await changed(issued.pdf, (doc) => {
        const kids = doc.catalog.Pages().Kids();
        const [one, other] = [kids.get(5), kids.get(6)];
        kids.set(5, other);
        kids.set(6, one);
      }),
    });
    expect(codesAt(found)).toContain('pages-moved pages');
  });

  it('a figure laid over another, as text, as a note, as a drawing', async () => {
    const text = await changed(issued.pdf, async (doc) => {
      const font = await doc.embedFont(StandardFonts.Helvetica);
      const page = doc.getPage(2);
      page.drawRectangle({ x: 480, y: 500, width: 60, height: 14, color: rgb(1, 1, 1) });
      page.drawText('$999.99', { x: 482, y: 502, size: 10, font });
    });
    // The words stand after the foot of the page, where nothing is to come.
    const added = await verify({ pdf: text });
    expect(codesAt(added).some((code) => /^printed-(added|differs) page\.3$/.test(code))).toBe(true);
    expect(sentences(added).join()).toContain('$999.99');

    const note = await changed(issued.pdf, (doc) => {
      const { context } = doc;
      doc
        .getPage(2)
        .node.addAnnot(
          context.register(context.obj({ Type: 'Annot', Subtype: 'FreeText', Rect: [480, 500, 540, 514] })),
        );
    });
    expect(codesAt(await verify({ pdf: note }))).toEqual(['annotation page.3']);

    const drawing = await changed(issued.pdf, async (doc) => {
      const other = await PDFDocument.create();
      other.addPage([60, 14]).drawRectangle({ width: 60, height: 14 });
      const [over] = await doc.embedPdf(await other.save());
      doc.getPage(2).drawPage(over!, { x: 480, y: 500 });
    });
    expect(codesAt(await verify({ pdf: drawing }))).toEqual(['overlay page.3']);
  });

  it('a bit of a photo', async () => {
    const found = await verify({ pdf: await withPictureBit(issued.pdf, 1) });
    expect(codesAt(found)).toEqual(['picture-changed page.14']);
    expect(sentences(found)[0]).toContain('Page 14: the picture of photo-02');
  });

  it('two photos, each under the other’s words', async () => {
    const pdf = await changed(issued.pdf, (doc) => {
      const objects = [12, 13].map(
        (index) => doc.getPage(index).node.Resources()!.lookup(PDFName.of('XObject')) as any,
      );
      const [one, other] = objects.map((dict) => dict.keys()[0]);
      const [a, b] = [objects[0].get(one), objects[1].get(other)];
      objects[0].set(one, b);
      objects[1].set(other, a);
    });
    expect(codesAt(await verify({ pdf })).some((code) => code.startsWith('picture-moved'))).toBe(true);
  });

  it('a word of a paper’s page, against its original in the archive', async () => {
    const { pdf, archive } = issued;
    const forged = unzipSync(archive);
    // Another paper with the same title in the packet would bear other words: the archive's original is of this hash.
    expect(Object.keys(forged)).toContain('papers/paper-01.pdf');
    const found = await verify({ pdf: await withPaperWords(pdf), archive });
    expect(codesAt(found).some((code) => code.startsWith('paper-differs page.'))).toBe(true);
  });
});

/** The first page of the first paper, drawn anew with other words. */
const withPaperWords = (pdf: Uint8Array): Promise<Uint8Array> =>
  changed(pdf, async (doc) => {
    const other = await PDFDocument.create();
    const font = await other.embedFont(StandardFonts.Helvetica);
    other
      .addPage([612, 792])
      .drawText('Crash report TP-4471: unit 2 struck hydrant', { x: 72, y: 700, font });
    const [over] = await doc.embedPdf(await other.save());
    const page = doc
      .getPages()
      .find(({ node }) =>
        (node.Resources()!.lookup(PDFName.of('XObject')) as any)?.get(PDFName.of('Paper1')),
      )!;
    (page.node.Resources()!.lookup(PDFName.of('XObject')) as any).set(PDFName.of('Paper1'), over!.ref);
  });

describe('the file as a file', () => {
  const unreadable = async (pdf: Uint8Array): Promise<string | undefined> => {
    const found = await verify({ pdf });
    expect(found.outcome).toBe('unreadable');
    return found.findings[0]?.code;
  };

  it('no file, no PDF, a PDF that is no packet, half of one', async () => {
    expect(await unreadable(new Uint8Array())).toBe('empty');
    expect(await unreadable(new TextEncoder().encode('{"not": "a PDF"}'))).toBe('not-a-pdf');
    const other = await PDFDocument.create();
    other.addPage();
    expect(await unreadable(await other.save())).toBe('no-data');
    expect(await unreadable(issued.pdf.slice(0, Math.floor(issued.pdf.length / 2)))).toBe('cut-short');
    expect(await unreadable(issued.pdf.slice(0, -8))).toBe('cut-short');
  });

  it('locked by a password', async () => {
    const doc = await PDFDocument.load(issued.pdf);
    doc.encrypt({ userPassword: 'secret', ownerPassword: 'owner' });
    expect(await unreadable(await doc.save())).toBe('encrypted');
  });

  it('changes appended after its end', async () => {
    const doc = await PDFDocument.load(issued.pdf, { updateMetadata: false });
    const before = doc.takeSnapshot();
    doc.setTitle('Another title');
    const update = await doc.saveIncremental(before);
    const found = await verify({ pdf: new Uint8Array([...issued.pdf, ...update]) });
    expect(found.findings[0]).toMatchObject({ code: 'appended', params: { bytes: expect.any(Number) } });
    expect(sentences(found)[0]).toContain('The file was changed after it was written');
    const tail = await verify({ pdf: new Uint8Array([...issued.pdf, ...new TextEncoder().encode('tail')]) });
    expect(tail.findings.map(({ code }) => code)).toEqual(['bytes-after-end']);
  });

  it('its data taken out, swapped, doubled, or in company', async () => {
    const without = await changed(issued.pdf, (doc) => void doc.catalog.delete(PDFName.of('Names')));
    expect(await unreadable(without)).toBe('no-data');

    const swapped = await changed(issued.pdf, (doc) => {
      const files = embedded(doc);
      writeEmbedded(doc, 'packet.json', files.get('statement.json')!.text);
      writeEmbedded(doc, 'statement.json', files.get('packet.json')!.text);
    });
    const found = await verify({ pdf: swapped });
    expect(found.outcome).toBe('differs');
    expect(found.findings.map(({ code }) => code)).toContain('not-valid');

    const doubled = await changed(issued.pdf, async (doc) => {
      await doc.attach(new TextEncoder().encode('{}'), 'packet.json', { mimeType: 'application/json' });
    });
    expect(codesAt(await verify({ pdf: doubled }))).toContain('attachment-twice packet.json');

    const more = await changed(issued.pdf, async (doc) => {
      await doc.attach(new TextEncoder().encode('hello'), 'note.txt', { mimeType: 'text/plain' });
    });
    expect(codesAt(await verify({ pdf: more }))).toEqual(['attachment-added note.txt']);
  });
});

describe('the statement that is attached by itself', () => {
  it('names the figure that was changed in it', async () => {
    const pdf = await changed(issued.pdf, (doc) => {
      const statement = JSON.parse(embedded(doc).get('statement.json')!.text) as {
        statement?: { lines: { amountCents: number }[] };
        lines?: { amountCents: number }[];
      };
      const line = (statement.lines ?? statement.statement!.lines)[2]!;
      line.amountCents += 100;
      writeEmbedded(doc, 'statement.json', JSON.stringify(statement));
    });
    const found = await verify({ pdf });
    const said = found.findings.map((each) => sayFinding('en', each));
    expect(codesAt(found)).toContain('attachment-differs statement.json');
    expect(said.find((sentence) => sentence.includes('statement.json'))).toMatch(
      /lines\.2\.amountCents it says “\d+”, and packet\.json gives “\d+”\./,
    );
  });
});

describe('the archive', () => {
  const repacked = (edit: (files: Unzipped) => unknown): Uint8Array => {
    const files = unzipSync(issued.archive);
    edit(files);
    return zipSync(files, { level: 0 });
  };
  const first = 'photos/photo-01.jpg';
  const look = async (archive: Uint8Array): Promise<string[]> =>
    codesAt(await verify({ pdf: issued.pdf, archive }));

  it('packed anew with nothing changed', async () => {
    expect(await look(repacked(() => undefined))).toEqual([]);
  });

  it('a byte of an original', async () => {
    const archive = repacked((files) => {
      const bytes = Uint8Array.from(files[first]!);
      bytes[100] = bytes[100]! ^ 1;
      files[first] = bytes;
    });
    expect(await look(archive)).toEqual([
      `archive-changed archive/${first}`,
      'archive-list archive/manifest.txt',
    ]);
  });

  it('an original left out', async () => {
    const archive = repacked((files) => Reflect.deleteProperty(files, first));
    expect(await look(archive)).toEqual([
      'archive-missing archive',
      'archive-list-missing archive/manifest.txt',
    ]);
  });

  it('a file added', async () => {
    const archive = repacked((files) => void (files['photos/photo-99.jpg'] = new Uint8Array([1, 2, 3])));
    expect(await look(archive)).toEqual([
      'archive-added archive/photos/photo-99.jpg',
      'archive-not-listed archive/manifest.txt',
    ]);
  });

  it('its copy of the data', async () => {
    const archive = repacked((files) => void (files['packet.json'] = new TextEncoder().encode('{}')));
    expect(await look(archive)).toEqual([
      'archive-data archive/packet.json',
      'archive-list archive/manifest.txt',
    ]);
  });

  it('changed alone does not put the PDF in doubt', async () => {
    const archive = repacked((files) => {
      const bytes = Uint8Array.from(files[first]!);
      bytes[bytes.length >> 1] = bytes[bytes.length >> 1]! ^ 1;
      files[first] = bytes;
    });
    const { pdf, jws, keys } = issued;
    expect(sayVerdict('en', await verify({ pdf, archive, jws, keys }))).toBe(
      'The PDF is genuine: the signature is of this very file, and nothing in it contradicts itself. Its archive is not the one that goes with it.',
    );
    expect(
      sayVerdict(
        'en',
        await verify({
          pdf,
          archive: repacked(
            (files) =>
              Reflect.deleteProperty(files, 'packet.pdf.jws') && Reflect.deleteProperty(files, first),
          ),
        }),
      ),
    ).toMatch(/^Nothing in the PDF contradicts itself; its archive is not/);
  });

  it('no archive', async () => {
    const found = await verify({ pdf: issued.pdf, archive: new Uint8Array([80, 75, 1, 2, 3]) });
    expect(found).toMatchObject({ outcome: 'unreadable', findings: [{ code: 'archive-broken' }] });
  });
});
