import { coordinate, escapeMarkup } from './markup.ts';
/** The picture's own units; its words are enlarged on a phone (`.bars svg`), so each row has a line of its own for them. */
const WIDTH = 640;
const WORDS = 34;
const BAR = 18;
const ROW = WORDS + BAR + 12;
const LEGEND = 40;

/** One ink and three fills that are told apart in black and white, too. */
export type Fill = 'solid' | 'hatched' | 'open';

export interface Series {
  readonly label: string;
  readonly fill: Fill;
}
export interface BarRow {
  readonly label: string;
  /** A value for each series, none below zero. */
  readonly values: readonly number[];
  /** What stands at the end of the bar. */
  readonly note: string;
}
export interface StackedBars {
  readonly title: string;
  readonly description: string;
  readonly series: readonly Series[];
  readonly rows: readonly BarRow[];
  /** Unique on its page. */
  readonly idPrefix: string;
}

const paint = (fill: Fill, idPrefix: string): string =>
  fill === 'solid'
    ? 'fill="currentColor"'
    : fill === 'hatched'
      ? `fill="url(#${idPrefix}-hatch)" stroke="currentColor"`
      : 'fill="none" stroke="currentColor"';

/**
 * Bars of parts that lie end to end, a row each, as one SVG element with its title and description. All rows have one
 * scale, from zero; the longest fills the width. The same figures must stand in a table beside it.
 */
export function stackedBarsSvg({ title, description, series, rows, idPrefix }: StackedBars): string {
  const totals = rows.map(({ values }) => values.reduce((sum, value) => sum + value, 0));
  const most = Math.max(...totals, 1);
  const height = LEGEND + rows.length * ROW + 6;
  const legend = series.map(({ label, fill }, index) => {
    const x = (index * WIDTH) / series.length;
    return `<rect x="${coordinate(x + 1)}" y="6" width="16" height="16" ${paint(fill, idPrefix)}/><text x="${coordinate(x + 24)}" y="20">${escapeMarkup(label)}</text>`;
  });
  const bars = rows.map(({ label, values, note }, row) => {
    const y = LEGEND + row * ROW;
    let x = 0;
    const parts = values.map((value, index) => {
      const width = (value / most) * WIDTH;
      const drawn =
        value > 0
          ? `<rect x="${coordinate(x)}" y="${coordinate(y + WORDS)}" width="${coordinate(width)}" height="${BAR}" ${paint(series[index]?.fill ?? 'open', idPrefix)}/>`
          : '';
      x += width;
      return drawn;
    });
    return [
      `<text x="0" y="${coordinate(y + 26)}">${escapeMarkup(label)}</text>`,
      `<text x="${WIDTH}" y="${coordinate(y + 26)}" text-anchor="end">${escapeMarkup(note)}</text>`,
      ...parts,
    ].join('');
  });
  return [
    `<svg viewBox="0 0 ${WIDTH} ${height}" role="img" aria-labelledby="${idPrefix}-title ${idPrefix}-text" font-size="16" fill="currentColor">`,
    `<title id="${idPrefix}-title">${escapeMarkup(title)}</title><desc id="${idPrefix}-text">${escapeMarkup(description)}</desc>`,
    `<defs><pattern id="${idPrefix}-hatch" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><line x1="0" y1="0" x2="0" y2="6" stroke="currentColor" stroke-width="3"/></pattern></defs>`,
    ...legend,
    ...bars,
    '</svg>',
  ].join('');
}
