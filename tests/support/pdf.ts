import { getDocument, type PDFDocumentProxy } from 'pdfjs-dist/legacy/build/pdf.mjs';

/** A PDF opened with pdf.js, which had no part in writing it. */
export async function withPdf<T>(
  pdf: Uint8Array,
  read: (document: PDFDocumentProxy) => Promise<T>,
): Promise<T> {
  const loading = getDocument({
    data: new Uint8Array(pdf),
    verbosity: 0,
    useSystemFonts: false,
    fontExtraProperties: true,
  });
  try {
    return await read(await loading.promise);
  } finally {
    await loading.destroy();
  }
}

/** Everything that a reader could find in the file: its text, its structure's alternatives, its outline and attachments. */
export const everythingIn = (pdf: Uint8Array): Promise<string> =>
  withPdf(pdf, async (document) => {
    const parts: string[] = [];
    for (let number = 1; number <= document.numPages; number += 1) {
      const page = await document.getPage(number);
      const { items } = await page.getTextContent();
      parts.push(items.map((item) => ('str' in item ? item.str : '')).join(' '));
      parts.push(JSON.stringify(await page.getStructTree()));
    }
    const { info } = await document.getMetadata();
    parts.push(JSON.stringify(await document.getOutline()), JSON.stringify(info));
    for (const [name, text] of await attachmentsOf(document)) parts.push(name, text);
    return parts.join('\n');
  });

/** Attached files by name, as text. */
export async function attachmentsOf(document: PDFDocumentProxy): Promise<[string, string][]> {
  const names = [...((await document.getAttachments()) ?? new Map<string, unknown>()).keys()];
  return Promise.all(
    names.map(async (name): Promise<[string, string]> => {
      const content = await document.getAttachmentContent(name);
      return [name, Buffer.from(content as Uint8Array).toString('utf8')];
    }),
  );
}

export interface StructureNode {
  readonly role?: string;
  readonly type?: string;
  readonly alt?: string;
  readonly children?: readonly StructureNode[];
}

/** Every element of the structure tree of every page. */
export const structureOf = (pdf: Uint8Array): Promise<StructureNode[]> =>
  withPdf(pdf, async (document) => {
    const found: StructureNode[] = [];
    const walk = (node: StructureNode | null): void => {
      if (!node) return;
      found.push(node);
      node.children?.forEach(walk);
    };
    for (let number = 1; number <= document.numPages; number += 1)
      walk(await (await document.getPage(number)).getStructTree());
    return found;
  });
