import type { Block } from '../../../shared/packet/blocks.ts';
import { HAIR, MARGIN, styles, WIDTH, type Sheet } from './sheet.ts';

type PhotoBlock = Extract<Block, { type: 'photo' }>;

/** Two of the usual shape go on a page, with all that is said under them. */
const MOST_HEIGHT = 204;
const LARGE_HEIGHT = 540;
export const PHOTO_START = MOST_HEIGHT + 60;

/** A photo upright in its place, with its title, times and hash under it. */
export function drawPhoto(sheet: Sheet, photo: PhotoBlock, bytes: Uint8Array): void {
  const { widthPx, heightPx, title, lines, alt, large = false } = photo;
  // A small picture is not blown up beyond 72 pixels to the inch: it would show nothing more.
  const scale = Math.min(WIDTH / widthPx, (large ? LARGE_HEIGHT : MOST_HEIGHT) / heightPx, 1);
  const [width, height] = [widthPx * scale, heightPx * scale];
  const titles = sheet.lines(title, styles.strong, WIDTH);
  const captions = lines.flatMap((line) => sheet.lines(line, styles.small, WIDTH));
  sheet.need(height + 6 + titles.length * styles.strong.leading + captions.length * styles.small.leading);

  const [x, y] = [MARGIN.left, sheet.y];
  const figure = sheet.element('Figure', sheet.root, { alt, bbox: [x, y, x + width, y + height] });
  sheet.content(figure, 'Figure', () => {
    sheet.doc.image(Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength), x, y, { width, height });
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
