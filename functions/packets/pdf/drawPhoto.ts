import type { Block } from '../../../shared/packet/blocks.ts';
import { HAIR, MARGIN, styles, WIDTH, type Doc, type Sheet } from './sheet.ts';

type PhotoBlock = Extract<Block, { type: 'photo' }>;

/** Two of the usual shape go on a page. */
const MOST_HEIGHT = 232;
export const PHOTO_START = MOST_HEIGHT + 60;

type Corner = readonly [number, number];
type Turn = readonly [Corner, Corner, Corner];

/**
 * Where a stored corner goes when the picture is shown upright, by EXIF orientation (TIFF 6.0, tag 274): the share of
 * the upright box at which a stored (column, row) share of (0, 0), (1, 0) and (0, 1) lands.
 */
// prettier-ignore
const turns: Readonly<Record<1, Turn> & Record<number, Turn>> = {
  1: [[0, 0], [1, 0], [0, 1]],
  2: [[1, 0], [0, 0], [1, 1]],
  3: [[1, 1], [0, 1], [1, 0]],
  4: [[0, 1], [1, 1], [0, 0]],
  5: [[0, 0], [0, 1], [1, 0]],
  6: [[1, 0], [1, 1], [0, 0]],
  7: [[1, 1], [1, 0], [0, 1]],
  8: [[0, 1], [0, 0], [1, 1]],
};

/** A photo upright in its place, with its title, times and hash under it. */
export function drawPhoto(sheet: Sheet, photo: PhotoBlock, bytes: Uint8Array): void {
  const { widthPx, heightPx, title, lines, alt, orientation } = photo;
  // A small picture is not blown up beyond 72 pixels to the inch: it would show nothing more.
  const scale = Math.min(WIDTH / widthPx, MOST_HEIGHT / heightPx, 1);
  const [width, height] = [widthPx * scale, heightPx * scale];
  const titles = sheet.lines(title, styles.strong, WIDTH);
  const captions = lines.flatMap((line) => sheet.lines(line, styles.small, WIDTH));
  sheet.need(height + 6 + titles.length * styles.strong.leading + captions.length * styles.small.leading);

  const [x, y] = [MARGIN.left, sheet.y];
  const figure = sheet.element('Figure', sheet.root, { alt, bbox: [x, y, x + width, y + height] });
  sheet.content(figure, 'Figure', () => {
    place(sheet.doc, bytes, orientation, { x, y, width, height });
    sheet.doc.lineWidth(0.5).strokeColor(HAIR).rect(x, y, width, height).stroke();
  });
  sheet.y += height + 6;
  const caption = sheet.element('P');
  sheet.content(caption, 'P', () => {
    sheet.y += sheet.column(titles, styles.strong, MARGIN.left, sheet.y, WIDTH);
    sheet.y += sheet.column(captions, styles.small, MARGIN.left, sheet.y, WIDTH);
  });
  sheet.y += 18;
}

interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** The transform that shows a stored picture (a unit square, rows downwards) upright in a box. */
export function uprightMatrix(
  orientation: number,
  { x, y, width, height }: Box,
): readonly [number, number, number, number, number, number] {
  const [origin, column, row] = turns[orientation] ?? turns[1];
  return [
    (column[0] - origin[0]) * width,
    (column[1] - origin[1]) * height,
    (row[0] - origin[0]) * width,
    (row[1] - origin[1]) * height,
    x + origin[0] * width,
    y + origin[1] * height,
  ];
}

function place(doc: Doc, bytes: Uint8Array, orientation: number, box: Box): void {
  doc.save();
  doc.transform(...uprightMatrix(orientation, box));
  // pdfkit would turn the picture by its own reading of the file. (Its types do not know that it can be told not to.)
  const options = { width: 1, height: 1, ignoreOrientation: true };
  doc.image(Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength), 0, 0, options);
  doc.restore();
}
