import type { Block } from '../../../shared/packet/blocks.ts';
import { HAIR, MARGIN, styles, WIDTH, type Sheet } from './sheet.ts';

type MapBlock = Extract<Block, { type: 'map' }>;

const SIDE = 250;
export const MAP_HEIGHT = SIDE + 8;
const INK = '#111111';

/** Rings of distance around the struck hydrant, its neighbours as dots with their numbers. Ink only, so that it copies. */
export function drawMap(sheet: Sheet, { map, labels, alt }: MapBlock): void {
  sheet.need(MAP_HEIGHT);
  const { doc } = sheet;
  const scale = SIDE / map.size;
  const left = MARGIN.left + (WIDTH - SIDE) / 2;
  const top = sheet.y;
  const x = (value: number): number => left + value * scale;
  const y = (value: number): number => top + value * scale;
  const words = labels.flatMap(({ text, x: atX, y: atY, strong }) => {
    const style = strong ? { ...styles.column, size: 8 } : { ...styles.small, size: 7 };
    const [line] = sheet.lines(text, style, SIDE);
    if (!line) return [];
    const from = x(atX) + line.width > left + SIDE ? x(atX) - line.width - 10 : x(atX);
    return [{ line, from, y: y(atY), style }];
  });
  const figure = sheet.element('Figure', sheet.root, { alt, bbox: [left, top, left + SIDE, top + SIDE] });
  sheet.content(figure, 'Figure', () => {
    doc.save().rect(left, top, SIDE, SIDE).clip();
    doc.lineWidth(0.6).strokeColor(HAIR);
    for (const { radius } of map.rings) doc.circle(x(map.centre), y(map.centre), radius * scale).stroke();
    doc.restore();
    // Paper under the words, so that no ring runs through them; first of all, so that it covers no dot and no word.
    for (const word of words)
      doc
        .fillColor('#ffffff')
        .rect(word.from - 1, word.y - 6.5, word.line.width + 2, 8.5)
        .fill();
    doc.lineWidth(0.6).strokeColor(INK).rect(left, top, SIDE, SIDE).stroke();
    for (const hydrant of map.hydrants) doc.fillColor(INK).circle(x(hydrant.x), y(hydrant.y), 3).fill();
    doc.lineWidth(1.6).strokeColor(INK).circle(x(map.centre), y(map.centre), 8).stroke();
    doc.fillColor(INK).circle(x(map.centre), y(map.centre), 4).fill();
    doc
      .lineWidth(1)
      .moveTo(left + SIDE - 14, top + 30)
      .lineTo(left + SIDE - 14, top + 12)
      .stroke();
    doc
      .polygon([left + SIDE - 18, top + 15], [left + SIDE - 10, top + 15], [left + SIDE - 14, top + 7])
      .fill();
    for (const { line, from, y: at, style } of words) sheet.draw(line, from, at, style);
  });
  sheet.y += MAP_HEIGHT;
}
