import { PDFDict, PDFHexString, PDFName, PDFString, type PDFDocument } from '@cantoo/pdf-lib';
import { finding, type Finding } from '../finding.ts';

/** What lets a file act, or show itself otherwise at another time or to another reader (ISO 32000-2, 7.7.2). */
const acting = ['OpenAction', 'AA', 'AcroForm', 'OCProperties', 'Collection', 'Requirements'] as const;

/** Whether the file bears what can change what it shows: programs, forms, layers. A packet has none. */
export function actingFindings({ catalog }: PDFDocument): Finding[] {
  const names = catalog.lookupMaybe(PDFName.of('Names'), PDFDict);
  const what: string[] = acting.filter((key) => catalog.has(PDFName.of(key)));
  if (names?.has(PDFName.of('JavaScript'))) what.push('JavaScript');
  return what.length > 0 ? [finding('file-acts', '', { what: what.join(', ') })] : [];
}

/** No outline of a packet is longer; one that runs in a circle ends here. */
const MOST_ENTRIES = 3000;

/** The titles of the outline, in the order in which a reader shows them all opened. */
export function outlineTitles({ catalog }: PDFDocument): string[] {
  const titles: string[] = [];
  const walk = (node: PDFDict): void => {
    let item = node.lookupMaybe(PDFName.of('First'), PDFDict);
    while (item && titles.length < MOST_ENTRIES) {
      const title = item.lookup(PDFName.of('Title'));
      titles.push(title instanceof PDFString || title instanceof PDFHexString ? title.decodeText() : '');
      walk(item);
      item = item.lookupMaybe(PDFName.of('Next'), PDFDict);
    }
  };
  const root = catalog.lookupMaybe(PDFName.of('Outlines'), PDFDict);
  if (root) walk(root);
  return titles;
}
