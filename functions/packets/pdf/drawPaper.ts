import type { Block } from '../../../shared/packet/blocks.ts';
import { ontoBox, type Placement } from '../papers/place.ts';
import type { ReadPaper } from '../papers/read.ts';
import { HAIR, MARGIN, PAGE, styles, WIDTH, type Sheet } from './sheet.ts';

/** Nearly the width of the paper: what was handed in should lose as little of its size as may be. */
const FRAME = { left: 40, top: 76, width: PAGE.width - 80, height: PAGE.height - 76 - 62 } as const;

/** A place for a page of a paper, as large as fits and never larger than it is. Answers what goes there. */
export function drawPaperPage(
  sheet: Sheet,
  { page, line, begins, alt }: Extract<Block, { type: 'paper-page' }>,
  paper: ReadPaper,
  serial: number,
): Placement {
  const size = paper.pages[page];
  if (!size) throw new Error(`the paper has no page ${page}`);
  sheet.newPage();
  const [label] = sheet.lines(line, styles.column, WIDTH);
  const kind = begins === null ? 'P' : 'H2';
  if (label)
    sheet.content(sheet.element(kind), kind, () => {
      sheet.column([label], styles.column, MARGIN.left, FRAME.top - 18, WIDTH);
    });
  // pdfkit counts `left` from the right edge.
  if (begins !== null)
    sheet.part?.addItem(begins, { top: FRAME.top - 30, left: PAGE.width, expanded: true } as never);
  const scale = Math.min(FRAME.width / size.widthPt, FRAME.height / size.heightPt, 1);
  const [width, height] = [size.widthPt * scale, size.heightPt * scale];
  const x = FRAME.left + (FRAME.width - width) / 2;
  const y = FRAME.top;
  const name = `Paper${serial}`;
  const { doc } = sheet;
  // Empty until the paper's page is put in its place, when the packet is otherwise done.
  const empty = doc.ref({ Type: 'XObject', Subtype: 'Form', BBox: [0, 0, 1, 1] });
  empty.end('');
  const held = doc.page as unknown as { readonly xobjects: Record<string, unknown> };
  held.xobjects[name] = empty;
  const figure = sheet.element('Figure', sheet.root, { alt, bbox: [x, y, x + width, y + height] });
  sheet.content(figure, 'Figure', () => {
    doc.save();
    doc.transform(...ontoBox(size, { x, y, scale }));
    (doc as unknown as { addContent(text: string): void }).addContent(`/${name} Do`);
    doc.restore();
  });
  sheet.artifact(() => doc.lineWidth(0.5).strokeColor(HAIR).rect(x, y, width, height).stroke());
  sheet.y = PAGE.height;
  const { start, count } = doc.bufferedPageRange();
  return { onPage: start + count - 1, name, paper, page };
}
