import { beforeAll, describe, expect, it } from 'vitest';
import { renderPacket } from '../../functions/packets/pdf/render.ts';
import { readPacketTotals, readPdfLines, type TextLine } from '../../infra/local/packetTotals.ts';
import { demoUtility } from '../../infra/local/demo/utility.ts';
import { packetDocument } from '../../shared/packet/document.ts';
import { statementOf, type Statement } from '../../shared/costs/statement.ts';
import { packetContentSchema, type PacketContent } from '../../shared/packet/schema.ts';
import type { PacketQuestion } from '../../shared/packet/content.ts';
import { demoCase, demoClaim, demoContent } from '../support/demoClaim.ts';
import { attachmentsOf, structureOf, withPdf, type StructureNode } from '../support/pdf.ts';

async function build(
  changed: Partial<PacketQuestion> = {},
): Promise<{ content: PacketContent; pdf: Uint8Array; statement: Statement }> {
  const { content, photos, found } = await demoContent(demoClaim(), changed);
  const pdf = await renderPacket(packetDocument(content), (sha256) => photos.shown.get(sha256)!);
  return { content, pdf, statement: found.statement };
}

/** Cents as a bill prints them, made by the platform's formatter and not by ours. */
const money = (cents: number): string =>
  new Intl.NumberFormat('en-US', { style: 'currency', currency: 'USD' }).format(cents / 100);

let content: PacketContent;
let statement: Statement;
let pdf: Uint8Array;
let pages: readonly (readonly TextLine[])[];
beforeAll(async () => {
  ({ content, pdf, statement } = await build());
  pages = await readPdfLines(pdf);
});

describe('the figures that are printed', () => {
  it('are those of the statement: every line, every section, the total', async () => {
    const lines = pages.flat();
    for (const { amountCents, arithmetic } of content.statement.lines) {
      expect(lines.filter((line) => line.at(-1) === money(amountCents!)).length).toBeGreaterThan(0);
      expect(lines.flat().join(' ').replaceAll(/\s+/g, ' ')).toContain(arithmetic);
    }
    expect(await readPacketTotals(pdf)).toEqual({
      totalCents: content.statement.totalCents,
      sectionCents: Object.fromEntries(
        content.statement.sections.map(({ section, subtotalCents }) => [section, subtotalCents]),
      ),
    });
  });

  it('add up, as printed: amounts to their subtotal, subtotals to the total', async () => {
    const printed = pages
      .flat()
      .map((line) => ({ label: line.slice(0, -1).join(' '), last: line.at(-1) ?? '' }));
    // The summary has the same words before it.
    const from = printed.findLastIndex(({ last }) => last === 'Statement of costs');
    const to = printed.findLastIndex(({ label }) => label === 'Total');
    const cents = (text: string): number | null =>
      /^\$[\d,]+\.\d\d$/.test(text) ? Math.round(Number(text.replaceAll(/[$,]/g, '')) * 100) : null;
    let section = 0;
    let sum = 0;
    for (const { label, last } of printed.slice(from, to)) {
      const amount = cents(last);
      if (amount === null) continue;
      if (label.includes('subtotal')) {
        expect(section).toBe(amount);
        sum += amount;
        section = 0;
      } else section += amount;
    }
    expect(sum).toBe(cents(printed[to]!.last));
    expect(sum).toBe(content.statement.totalCents);
  });

  it('name rate, authority and edition beside each line', () => {
    const text = pages.flat().flat().join(' ');
    for (const { rateUsd, authority, editionId } of content.statement.lines) {
      if (rateUsd !== null) expect(text).toContain(`$${rateUsd}`);
      expect(text.replaceAll(/\s+/g, ' ')).toContain(authority!.title);
      expect(text).toContain(`Rate book ${editionId!}`);
    }
  });
});

describe('the file', () => {
  it('is Letter, and says page n of m on every page', async () => {
    const count = pages.length;
    expect(count).toBeGreaterThan(5);
    pages.forEach((page, index) => expect(page.flat().join(' ')).toContain(`Page ${index + 1} of ${count}`));
    await withPdf(pdf, async (document) => {
      expect(document.numPages).toBe(count);
      expect((await document.getPage(1)).view).toEqual([0, 0, 612, 792]);
    });
  });

  it('embeds every face that it uses', async () => {
    await withPdf(pdf, async (document) => {
      const names = new Set<string>();
      for (let number = 1; number <= document.numPages; number += 1) {
        const page = await document.getPage(number);
        const { fnArray, argsArray } = await page.getOperatorList();
        // 37 is setFont.
        fnArray.forEach((fn, index) => fn === 37 && names.add(`${number} ${String(argsArray[index][0])}`));
      }
      expect(names.size).toBeGreaterThan(document.numPages);
      for (const name of names) {
        const [number, font] = name.split(' ');
        const page = await document.getPage(Number(number));
        await page.getOperatorList();
        const face = page.commonObjs.get(font!) as { missingFile?: boolean; name: string };
        expect(face.missingFile ?? false).toBe(false);
        expect(face.name).toContain('AtkinsonHyperlegible');
      }
    });
  });

  it('has title, language and an outline of its parts', async () => {
    await withPdf(pdf, async (document) => {
      const { info } = await document.getMetadata();
      expect(info).toMatchObject({ Title: 'Claim packet 2026-0001, revision 1', Language: 'en-US' });
      const outline = await document.getOutline();
      expect(outline.map(({ title }) => title)).toEqual([
        'Claim 2026-0001: damage to fire hydrant TH-0071',
        'Summary',
        'Statement of costs',
        'Damage and repair',
        'Timeline',
        'Flow test',
        'Photographs',
        'Records behind this packet',
      ]);
    });
  });

  it('is tagged: headings, tables with heads, lists, and figures that say what they show', async () => {
    const nodes = await structureOf(pdf);
    const count = (role: string): number => nodes.filter((node) => node.role === role).length;
    const { photos, timeline } = content;
    expect(count('H1')).toBe(8);
    expect(count('Table')).toBeGreaterThanOrEqual(3);
    expect(count('TH')).toBeGreaterThanOrEqual(4 + 4 + 3);
    expect(count('TR')).toBeGreaterThanOrEqual(timeline.length + statement.lines.length);
    const figures = nodes.filter(({ role }) => role === 'Figure');
    // One curve, one sketch of the place, and a ring for each joint whose bolts were counted.
    const rings = content.tightening.joints.filter(({ used }) => used?.bolts).length;
    expect(figures).toHaveLength(photos.length + 2 + rings);
    for (const { alt } of figures) expect(alt?.length ?? 0).toBeGreaterThan(20);
    expect(figures.some(({ alt }) => alt?.includes('residual'))).toBe(true);
  });

  it('has no text that is neither tagged nor marked as decoration', async () => {
    await withPdf(pdf, async (document) => {
      expect(((await document.getMarkInfo()) as unknown as Map<string, boolean>).get('Marked')).toBe(true);
      for (let number = 1; number <= document.numPages; number += 1) {
        const page = await document.getPage(number);
        const { items } = await page.getTextContent({ includeMarkedContent: true });
        let depth = 0;
        for (const item of items) {
          if ('str' in item) {
            if (item.str.trim() !== '') expect(depth, `page ${number}: ${item.str}`).toBeGreaterThan(0);
          } else depth += item.type === 'endMarkedContent' ? -1 : 1;
        }
        expect(depth).toBe(0);
      }
    });
  });

  it('carries the statement as data', async () => {
    await withPdf(pdf, async (document) => {
      const attached = await attachmentsOf(document);
      expect(attached.map(([name]) => name)).toEqual(['packet.json', 'statement.json', 'words.json']);
      expect(packetContentSchema.parse(JSON.parse(attached[0]![1]))).toEqual(content);
      const data = JSON.parse(attached[1]![1]);
      expect(data).toMatchObject({ claimNumber: '2026-0001', issue: { revision: 1 } });
      expect(data.statement).toEqual(content.statement);
    });
  });

  it('is the same bytes from the same facts, wherever and whenever it is built', async () => {
    const zone = process.env['TZ'];
    try {
      process.env['TZ'] = 'Asia/Tokyo';
      const { pdf: again } = await build();
      expect(Buffer.from(again).equals(Buffer.from(pdf))).toBe(true);
    } finally {
      if (zone === undefined) delete process.env['TZ'];
      else process.env['TZ'] = zone;
    }
    const { pdf: other } = await build({
      issue: { state: 'frozen', revision: 2, asOf: '2026-11-25T14:05:00Z', changes: 'x', added: [] },
    });
    expect(Buffer.from(other).equals(Buffer.from(pdf))).toBe(false);
  });
});

describe('what it says', () => {
  it('every photo with its hash, when it was taken and by which clock', () => {
    const text = pages.flat().flat().join(' ').replaceAll(/\s+/g, ' ');
    for (const { sha256 } of content.photos) expect(text).toContain(`SHA-256 ${sha256}`);
    expect(text).toContain('Hash recorded');
    expect(text).toContain('Captured Nov 8, 2026');
  });

  it('every record behind it, in the list', () => {
    const text = pages.flat().flat().join(' ');
    for (const { submissionId } of content.manifest.submissions) expect(text).toContain(submissionId);
  });

  it('a preview is marked on every page and has no revision', async () => {
    const preview = await build({ issue: { state: 'preview', asOf: '2026-11-25T14:05:00Z' } });
    for (const page of await readPdfLines(preview.pdf)) {
      const text = page.flat().join(' ');
      expect(text).toContain('PREVIEW: not issued');
      expect(text).not.toContain('revision 1');
    }
  });

  it('an incomplete statement says so beside its total and in the letter', async () => {
    const { work, editions } = demoCase(demoClaim());
    const withoutLead = editions.map((edition) => ({ ...edition, labor: edition.labor.slice(1) }));
    const incomplete = statementOf(work, withoutLead);
    expect(incomplete.complete).toBe(false);
    const built = await build({
      statement: incomplete,
      editions: withoutLead,
      issue: { state: 'preview', asOf: '2026-11-25T14:05:00Z' },
    });
    const text = (await readPdfLines(built.pdf)).flat().flat().join(' ').replaceAll(/\s+/g, ' ');
    expect(text.match(/This statement is incomplete/g)).toHaveLength(2);
    expect(text).toContain('No rate');
    expect((await readPacketTotals(built.pdf)).totalCents).toBe(incomplete.totalCents);
  });

  it('a statement that does not foot never becomes a packet', async () => {
    const wrong = { ...statement, totalCents: statement.totalCents + 1 };
    await expect(build({ statement: wrong })).rejects.toThrow(/does not follow from its packet/);
  });

  it('in Spanish too, with the same figures', async () => {
    const spanish = await build({ locale: 'es' });
    expect(await readPacketTotals(spanish.pdf)).toEqual(await readPacketTotals(pdf));
    const text = (await readPdfLines(spanish.pdf)).flat().flat().join(' ');
    expect(text).toContain('Relación de costos');
    expect(text).toContain('Página 1 de ');
    // A key without words would stand in brackets.
    expect(text).not.toMatch(/\[[a-z-]+\.[a-zA-Z0-9.-]+\]/);
    expect(pages.flat().flat().join(' ')).not.toMatch(/\[[a-z-]+\.[a-zA-Z0-9.-]+\]/);
  });

  it('names beyond Latin-1 in an embedded face, and a plain sign for what no face has', async () => {
    const settings = { ...demoUtility, name: 'Wodociągi Łódź 水道 Dept.' };
    const built = await build({ settings });
    const text = (await readPdfLines(built.pdf)).flat().flat().join('');
    expect(text.replaceAll(' ', '')).toContain('WodociągiŁódź??Dept.');
  });
});

it('figures that a reader cannot see are described in words (the curve)', async () => {
  const figure = (await structureOf(pdf)).find(
    ({ role, alt }: StructureNode) => role === 'Figure' && alt?.startsWith('Water supply curve'),
  );
  const [test] = content.flowTests;
  expect(figure?.alt).toContain(`${test!.staticPsi} psi`);
  expect(figure?.alt).toContain(`${test!.residualPsi} psi`);
  expect(figure?.alt).toMatch(/gives [\d,]+ gpm at a residual of 20 psi/);
});
