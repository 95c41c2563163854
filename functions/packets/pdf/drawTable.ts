import type { Block, Cell, Column, Row } from '../../../shared/packet/blocks.ts';
import { baseline, BOTTOM, MARGIN, styleOf, styles, WIDTH, type Sheet, type Structure } from './sheet.ts';
import type { Line, Style } from './typeset.ts';

type Table = Extract<Block, { type: 'table' }>;

const GAP = 10;
const INK = '#111111';

interface SetPiece {
  readonly lines: readonly Line[];
  readonly style: Style;
}
interface Place {
  readonly x: number;
  readonly width: number;
  readonly align: 'left' | 'right';
}

const placesOf = (columns: readonly Column[]): Place[] => {
  let x: number = MARGIN.left;
  return columns.map(({ share, align }, index) => {
    const width = share * WIDTH;
    const place = { x, width: index === columns.length - 1 ? width : width - GAP, align };
    x += width;
    return place;
  });
};

/** Rows with a role have fewer cells: the first spans what the others leave. */
function placesOfRow({ role, cells }: Row, places: readonly Place[]): readonly Place[] {
  const [first] = places;
  const lastSpanned = places[places.length - cells.length];
  if (role === undefined || !first || !lastSpanned) return places;
  const span: Place = { x: first.x, width: lastSpanned.x + lastSpanned.width - first.x, align: 'left' };
  return [span, ...places.slice(places.length - cells.length + 1)];
}

function mainStyle(align: Place['align'], strong: boolean, dense: boolean): Style {
  if (strong) return align === 'right' ? styles.numberStrong : styles.strong;
  if (dense) return align === 'right' ? styles.denseNumber : styles.dense;
  return align === 'right' ? styles.number : styles.body;
}

function setCell(sheet: Sheet, cell: Cell, { width, align }: Place, main: Style): SetPiece[] {
  const pieces = typeof cell === 'string' ? [{ text: cell }] : cell;
  return pieces
    .filter(({ text }) => text !== '')
    .map((piece) => {
      const look = 'look' in piece ? piece.look : undefined;
      const style =
        look === undefined ? main : align === 'right' ? { ...styleOf(look), tabular: true } : styleOf(look);
      return { style, lines: sheet.lines(piece.text, style, width) };
    });
}

const heightOf = (pieces: readonly SetPiece[]): number =>
  pieces.reduce((height, { lines, style }) => height + lines.length * style.leading, 0);

/** Where the first line of a cell sits under the cell's top. */
const firstBaseline = ([piece]: readonly SetPiece[]): number => (piece ? baseline(0, piece.style) : 0);

function drawPieces(
  sheet: Sheet,
  pieces: readonly SetPiece[],
  { x, width, align }: Place,
  top: number,
): void {
  let y = top;
  for (const { lines, style } of pieces) y += sheet.column(lines, style, x, y, width, align);
}

/** Height of a row that holds a sum and nothing else. */
const SUM_ROW = 26;

/** How many sums follow at once on a row: its section's, and the total after that. */
function sumsUnder(rows: readonly Row[], index: number): number {
  const isSum = (at: number): boolean => rows[at]?.role === 'subtotal' || rows[at]?.role === 'total';
  return !isSum(index + 1) ? 0 : isSum(index + 2) ? 2 : 1;
}

/** So many rows at least go on to another page, where they are lower than this, points: one or two alone look lost. */
const LEAST_TOGETHER = 4;
const MOST_TOGETHER = 220;

/** Height that a heading must find under itself so as not to stand alone. */
export const TABLE_START = 70;

/** A table whose head is repeated on every page; a row is never broken. */
export function drawTable(sheet: Sheet, { columns, rows, summary, dense = false }: Table): void {
  const pad = dense ? 2.5 : 4;
  const places = placesOf(columns);
  const table = sheet.element('Table', sheet.root, { alt: summary });
  const heads = columns.map(({ label }, index) => ({
    style: styles.column,
    lines: sheet.lines(label, styles.column, places[index]?.width ?? WIDTH),
  }));
  const headHeight = Math.max(...heads.map((piece) => heightOf([piece]))) + 8;

  const drawHead = (row: Structure | null): void => {
    heads.forEach((piece, index) => {
      const place = places[index];
      if (!place) return;
      const draw = (): void => drawPieces(sheet, [piece], place, sheet.y + 4);
      // The head is read once, where the table begins; repeated, it is only for the eye.
      if (row) sheet.content(sheet.element('TH', row, { scope: 'Column' }), 'TH', draw);
      else sheet.artifact(draw, 'Pagination');
    });
    sheet.y += headHeight;
    sheet.rule(MARGIN.left, MARGIN.left + WIDTH, sheet.y, 0.9, INK);
  };

  const set = (row: Row) => {
    const spans = placesOfRow(row, places);
    const cells = row.cells.flatMap((cell, at) => {
      const place = spans[at];
      if (!place) return [];
      return [
        { place, pieces: setCell(sheet, cell, place, mainStyle(place.align, row.role !== undefined, dense)) },
      ];
    });
    const lowest = Math.max(...cells.map(({ pieces }) => firstBaseline(pieces)));
    // Cells of one row stand on one line, whatever their sizes.
    const dropOf = (pieces: readonly SetPiece[]): number =>
      pieces.length === 0 ? 0 : lowest - firstBaseline(pieces);
    const height = Math.max(...cells.map(({ pieces }) => heightOf(pieces) + dropOf(pieces))) + 2 * pad;
    return { cells, height, dropOf };
  };
  /** Whether these last rows would be cut in two, and are low enough to go on together. */
  const tornAt = (index: number): boolean => {
    if (index < 2 || rows.length - index !== LEAST_TOGETHER) return false;
    const left = rows.slice(index).reduce((sum, row) => sum + set(row).height, 0);
    return sheet.y + left > BOTTOM && left < MOST_TOGETHER;
  };

  sheet.need(TABLE_START);
  drawHead(sheet.element('TR', table));
  rows.forEach((row, index) => {
    const next = rows[index + 1]?.role;
    const { cells, height, dropOf } = set(row);
    const before = row.role === 'group' && index > 0 ? 8 : 0;
    // A section's name keeps its first line with it, and a sum the line that it sums.
    const together = row.role === 'group' ? 60 : sumsUnder(rows, index) * SUM_ROW;
    if (sheet.y + before + height + together > BOTTOM || tornAt(index)) {
      sheet.newPage();
      drawHead(null);
    } else sheet.y += before;
    if (row.role === 'total') sheet.rule(MARGIN.left, MARGIN.left + WIDTH, sheet.y + 1, 0.9, INK);
    const element = sheet.element('TR', table);
    cells.forEach(({ place, pieces }, at) => {
      const spanned = at === 0 && row.role !== undefined ? columns.length - row.cells.length + 1 : 1;
      const kind = at === 0 && row.role === 'group' ? 'TH' : 'TD';
      const cell = sheet.element(kind, element, {
        ...(kind === 'TH' ? { scope: 'Row' } : {}),
        ...(spanned > 1 ? { columns: spanned } : {}),
      });
      sheet.content(cell, kind, () => drawPieces(sheet, pieces, place, sheet.y + pad + dropOf(pieces)));
    });
    sheet.y += height;
    if (row.role === 'total') sheet.rule(MARGIN.left, MARGIN.left + WIDTH, sheet.y, 1.8, INK);
    else if (row.role !== 'group' && next !== undefined && next !== 'total' && next !== 'group')
      sheet.rule(MARGIN.left, MARGIN.left + WIDTH, sheet.y);
    else if (row.role === undefined && next === undefined && index < rows.length - 1)
      sheet.rule(MARGIN.left, MARGIN.left + WIDTH, sheet.y);
  });
  sheet.y += 14;
}
