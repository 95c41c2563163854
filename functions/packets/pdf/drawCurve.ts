import type { Block } from '../../../shared/packet/blocks.ts';
import type { Place } from '../../../shared/hydraulics/supplyCurve.ts';
import { HAIR, MARGIN, styles, WIDTH, type Sheet } from './sheet.ts';
import type { Style } from './typeset.ts';

type CurveBlock = Extract<Block, { type: 'supply-curve' }>;

const PLOT = { left: 46, right: 10, top: 8, height: 250 } as const;
const INK = '#111111';
/** Light enough for the grid and the words on it, dark enough to come out of a copier. */
const BAND = '#e2e2e2';
export const CURVE_HEIGHT = PLOT.top + PLOT.height + 44;

/** The supply curve on N^1.85 paper, as lines and marks that differ in shape, so that it reads in black and white. */
export function drawCurve(sheet: Sheet, { curve, words, alt }: CurveBlock): void {
  sheet.need(CURVE_HEIGHT);
  const { doc } = sheet;
  const top = sheet.y + PLOT.top;
  const left = MARGIN.left + PLOT.left;
  const width = WIDTH - PLOT.left - PLOT.right;
  const x = (share: number): number => left + share * width;
  const y = (share: number): number => top + (1 - share) * PLOT.height;
  const figure = sheet.element('Figure', sheet.root, {
    alt,
    bbox: [MARGIN.left, sheet.y, MARGIN.left + WIDTH, sheet.y + CURVE_HEIGHT],
  });
  const small: Style = styles.small;
  const put = (
    text: string,
    atX: number,
    atY: number,
    align: 'left' | 'center' | 'right',
    style: Style = small,
  ): void => {
    const [line] = sheet.lines(text, style, WIDTH);
    if (!line) return;
    sheet.draw(
      line,
      align === 'right' ? atX - line.width : align === 'center' ? atX - line.width / 2 : atX,
      atY,
      style,
    );
  };
  const path = (places: readonly Place[]): void => {
    places.forEach((place, index) =>
      index === 0 ? doc.moveTo(x(place.x), y(place.y)) : doc.lineTo(x(place.x), y(place.y)),
    );
  };

  sheet.content(figure, 'Figure', () => {
    if (curve.band.length > 0) {
      path(curve.band);
      doc.closePath().fillColor(BAND).fill();
    }
    doc.lineWidth(0.5).strokeColor(HAIR);
    for (const { position } of curve.pressure.ticks)
      doc
        .moveTo(left, y(position))
        .lineTo(left + width, y(position))
        .stroke();
    for (const { position } of curve.flow.ticks)
      doc
        .moveTo(x(position), top)
        .lineTo(x(position), top + PLOT.height)
        .stroke();
    doc.lineWidth(0.9).strokeColor(INK).rect(left, top, width, PLOT.height).stroke();
    for (const { position, value, labelled } of curve.pressure.ticks)
      if (labelled) put(words.number(value), left - 6, y(position) + 3, 'right');
    for (const { position, value, labelled } of curve.flow.ticks)
      if (labelled) put(words.number(value), x(position), top + PLOT.height + 13, 'center');
    put(words.flowAxis, left + width / 2, top + PLOT.height + 30, 'center');
    doc.save().rotate(-90, { origin: [MARGIN.left + 8, top + PLOT.height / 2] });
    put(words.pressureAxis, MARGIN.left + 8, top + PLOT.height / 2 + 3, 'center');
    doc.restore();

    doc
      .lineWidth(0.9)
      .dash(2, { space: 2 })
      .moveTo(left, y(curve.target.y))
      .lineTo(left + width, y(curve.target.y))
      .stroke()
      .undash();
    put(words.target, left + width - 4, y(curve.target.y) + 11, 'right');
    doc.lineWidth(1.8).strokeColor(INK);
    path(curve.measured);
    doc.stroke();
    if (curve.projected.length > 0) {
      doc.lineWidth(1.4).dash(6, { space: 4 });
      path(curve.projected);
      doc.stroke().undash();
    }
    const { staticMark, testMark, targetMark, targetInterval } = curve;
    if (targetInterval) {
      const { low, high } = targetInterval;
      const at = y(low.y);
      doc.lineWidth(1.6).strokeColor(INK).moveTo(x(low.x), at).lineTo(x(high.x), at).stroke();
      for (const { x: end } of [low, high])
        doc
          .moveTo(x(end), at - 5)
          .lineTo(x(end), at + 5)
          .stroke();
    }
    doc
      .fillColor(INK)
      .rect(x(staticMark.x) - 3.5, y(staticMark.y) - 3.5, 7, 7)
      .fill();
    doc.fillColor(INK).circle(x(testMark.x), y(testMark.y), 4).fill();
    if (targetMark) {
      const [atX, atY] = [x(targetMark.x), y(targetMark.y)];
      doc
        .fillColor(INK)
        .polygon([atX, atY - 5], [atX + 5, atY + 3.5], [atX - 5, atY + 3.5])
        .fill();
    }
    const strong: Style = { ...styles.column, size: 8 };
    const label = (place: Place, text: string): void => {
      const [line] = sheet.lines(text, strong, WIDTH);
      if (!line) return;
      // The supply falls to the right: above right of a mark is free, or below left where the plot ends.
      const fits = x(place.x) + 9 + line.width < left + width;
      const from = fits ? x(place.x) + 8 : x(place.x) - 8 - line.width;
      const base = fits ? y(place.y) - 7 : y(place.y) + 14;
      // Paper under the words, so that no grid line runs through them.
      doc
        .fillColor('#ffffff')
        .rect(from - 2, base - 7.5, line.width + 4, 10)
        .fill();
      sheet.draw(line, from, base, strong);
    };
    label(staticMark, words.staticMark);
    label(testMark, words.testMark);
    if (targetMark && words.targetMark !== null) label(targetMark, words.targetMark);
  });
  sheet.y += CURVE_HEIGHT + 10;
}
