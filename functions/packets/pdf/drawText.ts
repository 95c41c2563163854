import type { Block } from '../../../shared/packet/blocks.ts';
import { BOTTOM, MARGIN, styleOf, styles, WIDTH, type Sheet } from './sheet.ts';
import type { Line, Style } from './typeset.ts';

type Of<T extends Block['type']> = Extract<Block, { type: T }>;

/** The utility's name and address, over a rule. */
export function drawLetterhead(sheet: Sheet, { name, lines }: Of<'letterhead'>): void {
  // A letter begins its page, whatever stands before it.
  if (sheet.y > MARGIN.top) sheet.newPage();
  const element = sheet.element('P');
  let y = MARGIN.top - 30;
  sheet.content(element, 'P', () => {
    y += sheet.column(sheet.lines(name, styles.name, WIDTH), styles.name, MARGIN.left, y, WIDTH);
    for (const line of lines)
      y += sheet.column(sheet.lines(line, styles.small, WIDTH), styles.small, MARGIN.left, y, WIDTH);
  });
  sheet.rule(MARGIN.left, MARGIN.left + WIDTH, y + 7, 1, '#111111');
  sheet.y = y + 18;
}

/** Lines of an address, a signature or a list of sums, kept together; more than a page of them are broken like a paragraph. */
export function drawAddress(sheet: Sheet, { lines, closing }: Of<'address'>): void {
  const style = styles.body;
  const set = lines.flatMap((line) => sheet.lines(line, style, WIDTH));
  const above = closing === undefined ? [] : sheet.lines(closing, style, WIDTH);
  const room = closing === undefined ? 0 : 26;
  sheet.need((above.length + set.length) * style.leading + room);
  if (closing !== undefined) {
    sheet.content(sheet.element('P'), 'P', () => {
      sheet.y += sheet.column(above, style, MARGIN.left, sheet.y, WIDTH);
    });
    sheet.y += room;
  }
  if (sheet.y + set.length * style.leading > BOTTOM) drawFlowing(sheet, set, style, 0, 'P');
  else
    sheet.content(sheet.element('P'), 'P', () => {
      sheet.y += sheet.column(set, style, MARGIN.left, sheet.y, WIDTH);
    });
  sheet.y += 10;
}

/** A heading, never alone at the foot of a page: `following` is what must fit under it, in points. */
export function drawHeading(
  sheet: Sheet,
  { level, text, newPage, inOutline }: Of<'heading'>,
  following: number,
): void {
  const style = level === 1 ? styles.heading1 : styles.heading2;
  const lines = sheet.lines(text, style, WIDTH);
  if (newPage && sheet.y > MARGIN.top) sheet.newPage();
  const before = sheet.y > MARGIN.top ? (level === 1 ? 8 : 10) : 0;
  sheet.need(before + lines.length * style.leading + following);
  if (sheet.y > MARGIN.top) sheet.y += before;
  const kind = level === 1 ? 'H1' : 'H2';
  const element = sheet.element(kind);
  const top = sheet.y;
  sheet.content(element, kind, () => {
    sheet.y += sheet.column(lines, style, MARGIN.left, sheet.y, WIDTH);
  });
  sheet.y += level === 1 ? 8 : 5;
  // pdfkit counts `left` from the right edge.
  const options = { top: top - 12, left: 612, expanded: true } as never;
  if (level === 1) sheet.part = sheet.doc.outline.addItem(text, options);
  else if (inOutline) sheet.part?.addItem(text, options);
}

/** A paragraph, broken over pages where it must be, never with one line alone. */
export function drawParagraph(sheet: Sheet, { text, look }: Of<'paragraph'>): void {
  const style = styleOf(look);
  const lines = sheet.lines(text, style, look === 'caution' ? WIDTH - 14 : WIDTH);
  drawFlowing(sheet, lines, style, look === 'caution' ? 14 : 0, 'P', look === 'caution');
  sheet.y += 8;
}

function drawFlowing(
  sheet: Sheet,
  lines: readonly Line[],
  style: Style,
  indent: number,
  kind: string,
  barred = false,
): void {
  const element = sheet.element(kind);
  let rest = lines;
  sheet.need(Math.min(lines.length, 2) * style.leading);
  while (rest.length > 0) {
    let fits = Math.floor((BOTTOM - sheet.y) / style.leading);
    // A single line left over for the next page takes one with it.
    if (rest.length - fits === 1 && fits > 2) fits -= 1;
    const here = rest.slice(0, Math.max(fits, 1));
    const top = sheet.y;
    sheet.content(element, kind, () => {
      sheet.y += sheet.column(here, style, MARGIN.left + indent, sheet.y, WIDTH - indent);
    });
    if (barred)
      sheet.artifact(() =>
        sheet.doc
          .moveTo(MARGIN.left + 3, top + 2)
          .lineTo(MARGIN.left + 3, sheet.y - 1)
          .lineWidth(2.5)
          .strokeColor('#111111')
          .stroke(),
      );
    rest = rest.slice(here.length);
    if (rest.length > 0) sheet.newPage();
  }
}

export function drawList(sheet: Sheet, { items }: Of<'list'>): void {
  const style = styles.body;
  const list = sheet.element('L');
  for (const item of items) {
    const lines = sheet.lines(item, style, WIDTH - 14);
    sheet.need(Math.min(lines.length, 3) * style.leading);
    const entry = sheet.element('LI', list);
    const label = sheet.element('Lbl', entry);
    sheet.content(label, 'Lbl', () => {
      sheet.column(sheet.lines('–', style, 14), style, MARGIN.left, sheet.y, 14);
    });
    const body = sheet.element('LBody', entry);
    let rest = lines;
    while (rest.length > 0) {
      const here = rest.slice(0, Math.max(1, Math.floor((BOTTOM - sheet.y) / style.leading)));
      sheet.content(body, 'LBody', () => {
        sheet.y += sheet.column(here, style, MARGIN.left + 14, sheet.y, WIDTH - 14);
      });
      rest = rest.slice(here.length);
      if (rest.length > 0) sheet.newPage();
    }
    sheet.y += 3;
  }
  sheet.y += 6;
}

const LABEL_WIDTH = 150;

/** Labels and values in two columns. */
export function drawPairs(sheet: Sheet, { pairs }: Of<'pairs'>): void {
  const list = sheet.element('L');
  for (const { label, value } of pairs) {
    const labels = sheet.lines(label, styles.label, LABEL_WIDTH - 10);
    const values = sheet.lines(value, styles.body, WIDTH - LABEL_WIDTH);
    const height = Math.max(labels.length, values.length) * styles.body.leading;
    sheet.need(height);
    const entry = sheet.element('LI', list);
    const { y } = sheet;
    sheet.content(sheet.element('Lbl', entry), 'Lbl', () => {
      sheet.column(labels, styles.label, MARGIN.left, y, LABEL_WIDTH);
    });
    sheet.content(sheet.element('LBody', entry), 'LBody', () => {
      sheet.column(values, styles.body, MARGIN.left + LABEL_WIDTH, y, WIDTH - LABEL_WIDTH);
    });
    sheet.y += height;
  }
  sheet.y += 10;
}
