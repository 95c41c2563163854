import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import {
  decodePDFRawStream,
  PDFName,
  PDFRawStream,
  PDFString,
  type PDFDict,
  type PDFDocument,
  type PDFObject,
  type PDFRef,
} from '@cantoo/pdf-lib';
import { unzipSync, zipSync, type Unzipped } from 'fflate';
import { beforeAll, describe, expect, it } from 'vitest';
import { pageTextReader } from '../../shared/verify/file/pageText.ts';
import { readProgram } from '../../shared/verify/file/program.ts';
import { sayVerification } from '../../shared/verify/say.ts';
import { verifyPacket, type Verification } from '../../shared/verify/verify.ts';
import { issuedPacket, type IssuedPacket } from '../support/issuedPacket.ts';
import { changed } from '../support/tamperPdf.ts';

/** Changes that leave every sign in its order and every byte of every listed picture, and still show another packet. */
let issued: IssuedPacket;
beforeAll(async () => {
  issued = await issuedPacket();
});
const verify = (pdf: Uint8Array, archive: Uint8Array | null = null): Promise<Verification> =>
  verifyPacket({ pdf, archive }, pageTextReader({ getDocument }));
const codesAt = ({ findings }: Verification): string[] => findings.map(({ code, path }) => `${code} ${path}`);
const lookOf = async (change: (doc: PDFDocument) => unknown): Promise<string[]> =>
  codesAt(await verify(await changed(issued.pdf, (doc) => void change(doc))));

const name = (text: string): PDFName => PDFName.of(text);
const bytes = (text: string): Buffer => Buffer.from(text, 'latin1');
/** Page 3, the statement of costs. */
const PAGE = 2;

function edit(doc: PDFDocument, index: number, change: (program: string) => string): void {
  const ref = doc.getPage(index).node.get(name('Contents')) as PDFRef;
  const program = Buffer.from(decodePDFRawStream(doc.context.lookup(ref) as PDFRawStream).decode()).toString(
    'latin1',
  );
  const after = change(program);
  if (after === program) throw new Error('nothing was changed');
  doc.context.assign(ref, doc.context.flateStream(bytes(after)));
}
const added = (doc: PDFDocument, text: string): void => edit(doc, PAGE, (program) => `${program}\n${text}`);
function resource(doc: PDFDocument, kind: string, key: string, value: PDFObject): void {
  const resources = doc.getPage(PAGE).node.Resources()!;
  if (!resources.has(name(kind))) resources.set(name(kind), doc.context.obj({}));
  (resources.lookup(name(kind)) as PDFDict).set(name(key), value);
}
const whitePixel = (doc: PDFDocument): PDFRef =>
  doc.context.register(
    doc.context.flateStream(bytes('\xff\xff\xff'), {
      Type: 'XObject',
      Subtype: 'Image',
      Width: 1,
      Height: 1,
      ColorSpace: 'DeviceRGB',
      BitsPerComponent: 8,
    }),
  );
const over = 'q 60 0 0 14 480 500 cm';

describe('a picture over a figure, however it is called', () => {
  it.each([
    ['after a remark', 'Zz', '/Zz % a remark\nDo'],
    ['by another spelling of its name', 'Zz', '/Z#7a Do'],
    ['by a name that holds a bracket', 'Z]z', '/Z#5dz Do'],
  ])('%s', async (_, key, call) => {
    expect(
      await lookOf((doc) => {
        resource(doc, 'XObject', key, whitePixel(doc));
        added(doc, `${over} ${call} Q`);
      }),
    ).toEqual(['picture-added page.3']);
  });

  it('within the program, as a pattern, as a shading, or half seen through', async () => {
    const strange = ['strange-drawing page.3'];
    expect(
      await lookOf((doc) => added(doc, `${over} BI /W 1 /H 1 /CS /RGB /BPC 8 ID \xff\xff\xff EI Q`)),
    ).toEqual(strange);
    expect(await lookOf((doc) => added(doc, '/Pattern cs /P1 scn 480 500 60 14 re f'))).toContain(strange[0]);
    expect(await lookOf((doc) => added(doc, 'q 480 500 60 14 re W n /S1 sh Q'))).toEqual(strange);
    expect(await lookOf((doc) => edit(doc, PAGE, (program) => `/G0 gs\n${program}`))).toEqual(strange);
  });

  it('in other colors, or behind a mask', async () => {
    const jpeg = (doc: PDFDocument): PDFRawStream =>
      doc.context
        .enumerateIndirectObjects()
        .map(([, object]) => object)
        .find(
          (object): object is PDFRawStream =>
            object instanceof PDFRawStream && object.dict.lookup(name('Filter')) === name('DCTDecode'),
        )!;
    const altered = ['picture-altered page.13'];
    expect(
      await lookOf((doc) => jpeg(doc).dict.set(name('Decode'), doc.context.obj([1, 0, 1, 0, 1, 0]))),
    ).toEqual(altered);
    expect(await lookOf((doc) => jpeg(doc).dict.set(name('SMask'), whitePixel(doc)))).toEqual(altered);
  });
});

describe('text that is there and not to be seen', () => {
  it.each<[string, (program: string) => string]>([
    ['white', (program) => program.replace(/0\.06\d+ 0\.06\d+ 0\.06\d+ scn/, '1 1 1 scn')],
    ['tiny', (program) => program.replace('/F1 10 Tf', '/F1 0.01 Tf')],
    ['not painted', (program) => program.replace('/F1 10 Tf', '/F1 10 Tf 3.0 Tr')],
    ['painted as an outline', (program) => program.replace('/F1 10 Tf', '/F1 10 Tf +1 Tr')],
    ['outside what may be painted', (program) => `q 0 0 1 1 re W n\n${program}\nQ`],
  ])('%s', async (_, change) => {
    expect(await lookOf((doc) => edit(doc, PAGE, change))).toEqual(['hidden-text page.3']);
  });

  it('under a white patch, or a white line as thick as one', async () => {
    const covered = ['covered-text page.3'];
    expect(await lookOf((doc) => added(doc, '1 1 1 rg 60 -800 400 780 re f'))).toEqual([]);
    // The page's program ends with its own axes: y goes down from the top.
    expect(await lookOf((doc) => added(doc, '1 1 1 rg 60 60 400 400 re f'))).toEqual(covered);
    // Only the end of a line of text: "… 187.43" without its cents.
    expect(await lookOf((doc) => added(doc, '1 1 1 rg 200 105 20 20 re f'))).toEqual(covered);
    expect(await lookOf((doc) => added(doc, '1 1 1 RG 600 w 60 300 m 500 300 l S'))).toEqual(covered);
  });
});

describe('text out of its place', () => {
  const amount = /1 0 0 1 ([\d.]+) ([\d.]+) Tm\s+\/F\d+ [\d.]+ Tf/g;

  it('two amounts, each in the other’s row', async () => {
    const found = await lookOf((doc) =>
      edit(doc, PAGE, (program) => {
        // The places at the right, where amounts stand, each on its row.
        const places = [...program.matchAll(amount)].filter(([, x = '']) => Number(x) > 480);
        const [one, other] = [places[1]!, places[2]!];
        const swapped = (text: string): string =>
          text
            .replace(`${one[1]} ${one[2]} Tm`, `${one[1]} @ Tm`)
            .replace(`${other[1]} ${other[2]} Tm`, `${other[1]} ${one[2]} Tm`)
            .replace('@', other[2]!);
        return swapped(program);
      }),
    );
    expect(found.length).toBeGreaterThan(0);
    expect(new Set(found)).toEqual(new Set(['printed-moved page.3']));
  });

  it('a line put under those that follow it', async () => {
    expect(
      await lookOf((doc) =>
        edit(doc, PAGE, (program) => program.replace('1 0 0 1 64 676.5 Tm', '1 0 0 1 64 300 Tm')),
      ),
    ).toContain('printed-moved page.3');
  });
});

describe('the file about its pages', () => {
  it('a page upside down, a link with a look of its own', async () => {
    expect(await lookOf((doc) => doc.getPage(PAGE).node.set(name('Rotate'), doc.context.obj(180)))).toEqual([
      'strange-drawing page.3',
    ]);
    expect(
      await lookOf((doc) =>
        doc
          .getPage(PAGE)
          .node.addAnnot(
            doc.context.register(
              doc.context.obj({ Type: 'Annot', Subtype: 'Link', Rect: [480, 500, 540, 514], AP: {} }),
            ),
          ),
      ),
    ).toEqual(['annotation page.3']);
  });

  it('programs, forms and layers', async () => {
    const script = (doc: PDFDocument): PDFObject =>
      doc.context.obj({ S: 'JavaScript', JS: PDFString.of('app.alert(1)') });
    expect(await lookOf((doc) => doc.catalog.set(name('OpenAction'), script(doc)))).toEqual(['file-acts ']);
    expect(await lookOf((doc) => doc.catalog.set(name('AcroForm'), doc.context.obj({ Fields: [] })))).toEqual(
      ['file-acts '],
    );
    expect(await lookOf((doc) => edit(doc, PAGE, (program) => `/OC /L0 BDC\n${program}\nEMC`))).toEqual([
      'strange-drawing page.3',
    ]);
  });

  it('a title of the outline', async () => {
    expect(
      await lookOf((doc) => {
        const outline = doc.catalog.lookup(name('Outlines')) as PDFDict;
        (outline.lookup(name('First')) as PDFDict).set(name('Title'), PDFString.of('Total $999,999.00'));
      }),
    ).toEqual(['outline-differs outline']);
  });
});

describe('originals under other names', () => {
  const look = async (change: (files: Unzipped) => void): Promise<string[]> => {
    const files = unzipSync(issued.archive);
    change(files);
    return codesAt(await verify(issued.pdf, zipSync(files, { level: 0 })));
  };
  const listed = (files: Unzipped, change: (list: string) => string): void => {
    files['manifest.txt'] = Buffer.from(change(Buffer.from(files['manifest.txt']!).toString()));
  };
  const [one, other] = ['photos/photo-01.jpg', 'photos/photo-02.jpg'];

  it('two photos, each under the other’s number, and so in the list', async () => {
    const found = await look((files) => {
      [files[one], files[other]] = [files[other]!, files[one]!];
      listed(files, (list) => list.replace(one, '@').replace(other, one).replace('@', other));
    });
    expect(found).toEqual([`archive-misnamed archive/${one}`, `archive-misnamed archive/${other}`]);
  });

  it('a photo that would be unpacked elsewhere', async () => {
    const found = await look((files) => {
      files['../../photo-01.jpg'] = files[one]!;
      Reflect.deleteProperty(files, one);
      listed(files, (list) => list.replace(one, '../../photo-01.jpg'));
    });
    expect(found).toEqual(['archive-misnamed archive/../../photo-01.jpg']);
  });

  it('the data left out, and so in the list', async () => {
    const found = await look((files) => {
      Reflect.deleteProperty(files, 'packet.json');
      listed(files, (list) => list.replace(/^.*packet\.json\n/m, ''));
    });
    expect(found).toEqual(['archive-no-data archive']);
  });
});

describe('a page’s program', () => {
  it('is read by its tokens: strings, remarks and dictionaries hold no operators', () => {
    expect(readProgram('(/A Do \\) /B Do) Tj % /C Do\n<< /K /D /L [ Do ] >> BDC /E Do').drawn).toEqual(['E']);
    // A picture within the program ends at its own end, whatever its bytes are.
    expect(readProgram('BI /W 1 ID /A Do Q\nEI /B Do')).toMatchObject({ drawn: ['B'], strange: ['BI'] });
  });
});

it('the answer says what it does not see', async () => {
  expect(sayVerification('en', await verify(issued.pdf)).at(-1)).toMatch(/are not seen: look at the page/);
});
