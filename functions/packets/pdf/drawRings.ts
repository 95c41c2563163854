import type { Block } from '../../../shared/packet/blocks.ts';
import { MARGIN, styles, WIDTH, type Sheet } from './sheet.ts';
import type { Style } from './typeset.ts';

type RingsBlock = Extract<Block, { type: 'rings' }>;

const INK = '#111111';
const ACROSS = 3;
const CELL = WIDTH / ACROSS;
const RADIUS = 50;
const BOX = 2 * (RADIUS + 26);
const CAPTION = styles.small.leading * 2;
export const RINGS_START = BOX + CAPTION;

/** Rings of bolts, three to a row: the turn in each bolt, its place beside it. */
export function drawRings(sheet: Sheet, { rings }: RingsBlock): void {
  for (let first = 0; first < rings.length; first += ACROSS) {
    sheet.need(RINGS_START + 8);
    const top = sheet.y;
    rings.slice(first, first + ACROSS).forEach(({ ring, caption, alt }, column) => {
      const left = MARGIN.left + column * CELL;
      const [midX, midY] = [left + CELL / 2, top + BOX / 2];
      const figure = sheet.element('Figure', sheet.root, {
        alt,
        bbox: [left, top, left + CELL, top + RINGS_START],
      });
      const put = (text: string, x: number, y: number, style: Style): void => {
        const [line] = sheet.lines(text, style, CELL);
        if (line) sheet.draw(line, x - line.width / 2, y + style.size * 0.35, style);
      };
      sheet.content(figure, 'Figure', () => {
        // Heads that never touch, however many.
        const head = Math.min(10, (Math.PI * RADIUS) / ring.bolts.length - 1);
        const turnStyle: Style = { ...styles.column, size: Math.max(4, head * 0.95) };
        const placeStyle: Style = { ...styles.small, size: Math.max(4.5, Math.min(7.5, head)) };
        sheet.doc
          .lineWidth(0.5)
          .strokeColor('#8a8a8a')
          .circle(midX, midY, RADIUS - head - 4)
          .stroke();
        for (const { place, turn, x, y } of ring.bolts) {
          const [atX, atY] = [midX + RADIUS * x, midY - RADIUS * y];
          sheet.doc.lineWidth(0.9).strokeColor(INK).circle(atX, atY, head).stroke();
          put(String(turn), atX, atY, turnStyle);
          const out = RADIUS + head + 8;
          put(String(place), midX + out * x, midY - out * y, placeStyle);
        }
        sheet
          .lines(caption, styles.small, CELL - 8)
          .slice(0, 2)
          .forEach((line, index) => {
            sheet.draw(
              line,
              midX - line.width / 2,
              top + BOX + 8 + index * styles.small.leading,
              styles.small,
            );
          });
      });
    });
    sheet.y = top + RINGS_START + 8;
  }
}
