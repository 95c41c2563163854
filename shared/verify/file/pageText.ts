import type * as PdfJs from 'pdfjs-dist';

/** A stretch of text as a page shows it, in the order in which it is drawn. */
export interface TextRun {
  readonly text: string;
  /** Repeated for the eye alone: heads and feet of pages, heads of tables that go on. */
  readonly artifact: boolean;
  /** Where it begins, points from the lower left of the page. */
  readonly x: number;
  readonly y: number;
}

/** The runs of every page, by pdf.js, which has no part in writing packets. */
export type PageTextReader = (bytes: Uint8Array) => Promise<readonly (readonly TextRun[])[]>;

/**
 * A reader of page text on an opened pdf.js; Node and the browser each bring their own build of it.
 *
 * @throws what pdf.js throws when it cannot open the file or read a page.
 */
export const pageTextReader =
  ({ getDocument }: Pick<typeof PdfJs, 'getDocument'>): PageTextReader =>
  async (bytes) => {
    // pdf.js takes the bytes over, so it gets a copy.
    const loading = getDocument({
      data: new Uint8Array(bytes),
      verbosity: 0,
      useSystemFonts: false,
      disableFontFace: true,
      useWasm: false,
    });
    try {
      const document = await loading.promise;
      const pages: TextRun[][] = [];
      for (let number = 1; number <= document.numPages; number += 1) {
        const page = await document.getPage(number);
        const { items } = await page.getTextContent({ includeMarkedContent: true });
        pages.push(runsOf(items));
        page.cleanup();
      }
      return pages;
    } finally {
      await loading.destroy();
    }
  };

type Item = Awaited<ReturnType<PdfJs.PDFPageProxy['getTextContent']>>['items'][number];

function runsOf(items: readonly Item[]): TextRun[] {
  const open: boolean[] = [];
  const runs: TextRun[] = [];
  for (const item of items)
    if ('str' in item) {
      const [x = 0, y = 0] = (item.transform as number[]).slice(4);
      if (item.str.trim() !== '') runs.push({ text: item.str, artifact: open.includes(true), x, y });
    } else if (item.type === 'endMarkedContent') open.pop();
    else open.push((item as { tag?: string | null }).tag === 'Artifact');
  return runs;
}
