import { coordinate, escapeMarkup } from '../drawing/markup.ts';
import { convert } from '../units/convert.ts';
import { displays, formatNumber, formatQuantity, unitSymbol, type Reader } from '../units/format.ts';
import { say } from '../words/index.ts';
import { classNameOf, standardBands, type ClassBand, type HydrantClass } from './hydrantClass.ts';

const WIDTH = 640;
const HEIGHT = 300;
const LEFT = 64;
const RIGHT = 84;
const TOP = 20;
const BOTTOM = 40;

/** What the chart needs of a test; a `HistoryEntry` fits, and so does what a public page may know of it. */
export interface ChartEntry {
  readonly testedAt: string;
  /** Its day as it is to be written. */
  readonly testedOn: string;
  readonly result: {
    readonly hydrantClass: HydrantClass | null;
    readonly rating: { readonly capacityGpm: number | null };
    readonly interval: { readonly lowGpm: number; readonly highGpm: number } | null;
  } | null;
}
interface Chart {
  /** Oldest first. */
  readonly entries: readonly ChartEntry[];
}

type Rated = ChartEntry & { readonly result: NonNullable<ChartEntry['result']> };
const isRated = (entry: ChartEntry): entry is Rated =>
  entry.result !== null && entry.result.rating.capacityGpm !== null;

export interface HistoryDrawing extends Reader {
  readonly idPrefix: string;
  readonly subject?: string | undefined;
  readonly bands?: readonly ClassBand[] | undefined;
}

const capacity = ({ result }: Rated): number => result.rating.capacityGpm ?? 0;
const high = ({ result }: Rated): number => result.interval?.highGpm ?? 0;

/** What the chart shows, in a sentence for each test. */
export function historyDescription(
  { entries }: Chart,
  reader: Reader & { readonly bands?: readonly ClassBand[] | undefined },
): string {
  const rated = entries.filter(isRated);
  if (rated.length === 0) return say(reader.locale, 'hydraulics.history.none-rated');
  return rated
    .map((entry) =>
      say(reader.locale, 'hydraulics.history.test', {
        testedOn: entry.testedOn,
        capacity: formatQuantity(capacity(entry), 'gpm', reader),
        hydrantClass: entry.result.hydrantClass && classNameOf(entry.result.hydrantClass, reader.bands),
      }),
    )
    .join(' ');
}

/**
 * Rated capacity of each test over time as one SVG element: a dot with the 95 % interval of its readings, dotted lines
 * where the classes begin. One ink, so it prints. Tests that rate nothing are not in it.
 */
export function historyChartSvg(history: Chart, drawing: HistoryDrawing): string {
  const { locale, system, idPrefix, subject } = drawing;
  const rated = history.entries.filter(isRated);
  const { unit } = displays.gpm[system];
  const times = rated.map(({ testedAt }) => Date.parse(testedAt));
  const [first, last] = [Math.min(...times), Math.max(...times)];
  const most = Math.max(1, ...rated.map((entry) => Math.max(capacity(entry), high(entry)))) * 1.08;
  const x = (at: number): number =>
    first === last
      ? (LEFT + WIDTH - RIGHT) / 2
      : LEFT + 24 + ((at - first) / (last - first)) * (WIDTH - LEFT - RIGHT - 48);
  const y = (gpm: number): number => TOP + (1 - gpm / most) * (HEIGHT - TOP - BOTTOM);
  const words = (atX: number, atY: number, text: string, anchor: string): string =>
    `<text x="${coordinate(atX)}" y="${coordinate(atY)}" text-anchor="${anchor}">${escapeMarkup(text)}</text>`;

  const classes = (drawing.bands ?? standardBands)
    .filter(({ fromGpm }) => fromGpm > 0 && fromGpm < most)
    .map(({ hydrantClass, name, fromGpm }) => {
      const atY = y(fromGpm);
      const line = `<path d="M${LEFT} ${coordinate(atY)}H${WIDTH - RIGHT}" fill="none" stroke="currentColor" stroke-dasharray="2 4"/>`;
      const value = formatNumber(convert(fromGpm, 'gpm', unit), locale, 0);
      return (
        line +
        words(LEFT - 8, atY + 4, value, 'end') +
        words(
          WIDTH - RIGHT + 8,
          atY - 4,
          say(locale, 'hydraulics.class', { hydrantClass: name ?? hydrantClass }),
          'start',
        )
      );
    });
  const dots = rated.map((entry, index) => {
    const [atX, atY] = [x(times[index] ?? first), y(capacity(entry))];
    const { interval } = entry.result;
    const whisker = interval
      ? `<path d="M${coordinate(atX)} ${coordinate(y(interval.lowGpm))}V${coordinate(y(interval.highGpm))}" fill="none" stroke="currentColor" stroke-width="2"/>`
      : '';
    return `${whisker}<circle cx="${coordinate(atX)}" cy="${coordinate(atY)}" r="5"/>`;
  });
  // Dates that would run into one another are left to the table beside the chart.
  let taken = Number.NEGATIVE_INFINITY;
  const dates = rated.map(({ testedOn }, index) => {
    const atX = x(times[index] ?? first);
    if (atX - taken < 84) return '';
    taken = atX;
    return words(atX, HEIGHT - BOTTOM + 20, testedOn, 'middle');
  });
  const title = say(
    locale,
    subject === undefined ? 'hydraulics.history.title' : 'hydraulics.history.title-of',
    {
      subject,
      unit: unitSymbol(unit, locale),
    },
  );
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WIDTH} ${HEIGHT}" role="img" class="capacity-history"`,
    ` aria-labelledby="${idPrefix}-title ${idPrefix}-desc" font-family="inherit" font-size="13" fill="currentColor">`,
    `<title id="${idPrefix}-title">${escapeMarkup(title)}</title>`,
    `<desc id="${idPrefix}-desc">${escapeMarkup(historyDescription(history, drawing))}</desc>`,
    `<path d="M${LEFT} ${TOP}V${HEIGHT - BOTTOM}H${WIDTH - RIGHT}" fill="none" stroke="currentColor" stroke-width="1.5"/>`,
    ...classes,
    ...dots,
    ...dates,
    words(LEFT - 8, HEIGHT - BOTTOM + 4, '0', 'end'),
    words(LEFT - 8, TOP - 6, unitSymbol(unit, locale), 'end'),
    '</svg>',
  ].join('');
}
