import { coordinate, escapeMarkup } from '../drawing/markup.ts';
import { formatNumber, formatQuantity, unitName, unitSymbol, type Reader } from '../units/format.ts';
import { say } from '../words/index.ts';
import type { Place, SupplyCurve } from './supplyCurve.ts';

/** The picture's own units; it scales to the width it is given. */
const WIDTH = 640;
const HEIGHT = 420;
const LEFT = 64;
const RIGHT = 24;
const TOP = 24;
const BOTTOM = 58;
const PLOT_WIDTH = WIDTH - LEFT - RIGHT;
const PLOT_HEIGHT = HEIGHT - TOP - BOTTOM;

const GRID = 'fill="none" stroke="currentColor" stroke-opacity="0.22" stroke-width="1"';
const LINE = 'fill="none" stroke="currentColor"';

const left = (x: number): number => LEFT + x * PLOT_WIDTH;
const top = (y: number): number => TOP + (1 - y) * PLOT_HEIGHT;

const points = (places: readonly Place[]): string =>
  places.map(({ x, y }) => `${coordinate(left(x))},${coordinate(top(y))}`).join(' ');

function text(
  atX: number,
  atY: number,
  words: string,
  anchor: 'start' | 'middle' | 'end',
  extra = '',
): string {
  return `<text x="${coordinate(atX)}" y="${coordinate(atY)}" text-anchor="${anchor}"${extra}>${escapeMarkup(words)}</text>`;
}

export interface SupplyCurveDrawing extends Reader {
  /** Makes the ids unique where a page shows several curves; letters, digits and hyphens. */
  readonly idPrefix: string;
  /** Whose curve it is, for the title; e.g. the hydrant's id. */
  readonly subject?: string | undefined;
}

/** What the picture shows, in sentences, for those who do not see it. */
export function supplyCurveDescription(curve: SupplyCurve, reader: Reader): string {
  const psi = (value: number): string => formatQuantity(value, 'psi', reader);
  const gpm = (value: number): string => formatQuantity(value, 'gpm', reader);
  const { staticMark, testMark, targetMark, target, targetInterval } = curve;
  const readings = say(reader.locale, 'hydraulics.curve.readings', {
    static: psi(staticMark.residualPsi),
    residual: psi(testMark.residualPsi),
    flow: gpm(testMark.flowGpm),
  });
  const atTarget = targetMark
    ? say(reader.locale, 'hydraulics.curve.at-target', {
        flow: gpm(targetMark.flowGpm),
        target: psi(target.residualPsi),
      })
    : say(
        reader.locale,
        curve.drop.sufficient ? 'hydraulics.curve.below-target' : 'hydraulics.curve.no-projection',
        {
          target: psi(target.residualPsi),
        },
      );
  const within = targetInterval
    ? say(reader.locale, 'hydraulics.curve.within', {
        low: gpm(targetInterval.low.flowGpm),
        high: gpm(targetInterval.high.flowGpm),
      })
    : '';
  return [readings, atTarget, within].filter((sentence) => sentence !== '').join(' ');
}

/** The band as a light fill, which prints as a grey, and the interval at the target as a bracket on its line. */
function uncertainty({ band, targetInterval }: SupplyCurve): string {
  const fill =
    band.length > 0 ? `<polygon points="${points(band)}" fill="currentColor" fill-opacity="0.1"/>` : '';
  if (!targetInterval) return fill;
  const { low, high } = targetInterval;
  const atY = coordinate(top(low.y));
  const end = ({ x }: Place): string => `M${coordinate(left(x))} ${coordinate(top(low.y) - 6)}v12`;
  return `${fill}<path d="M${coordinate(left(low.x))} ${atY}H${coordinate(left(high.x))}${end(low)}${end(high)}" ${LINE} stroke-width="2"/>`;
}

function grid(curve: SupplyCurve, reader: Reader): string {
  const number = (value: number): string => formatNumber(value, reader.locale, 1);
  const across = curve.pressure.ticks.map(({ value, position, labelled }) => {
    const atY = coordinate(top(position));
    const label = labelled ? text(LEFT - 8, top(position) + 4, number(value), 'end') : '';
    return `<path d="M${LEFT} ${atY}H${WIDTH - RIGHT}" ${GRID}/>${label}`;
  });
  const up = curve.flow.ticks.map(({ value, position, labelled }) => {
    const atX = coordinate(left(position));
    const label = labelled ? text(left(position), HEIGHT - BOTTOM + 18, number(value), 'middle') : '';
    return `<path d="M${atX} ${TOP}V${HEIGHT - BOTTOM}" ${GRID}/>${label}`;
  });
  return [...across, ...up].join('');
}

/** Average width of a sign at the size of the labels, generous. */
const SIGN_WIDTH = 7;

/**
 * A supply falls to the right, so above right and below left of a mark are free of it. Where it is wanted if the words
 * fit there, else on the other side.
 */
function label({ x, y }: Place, words: string, wanted: 'above' | 'below'): string {
  const width = words.length * SIGN_WIDTH;
  const fitsAbove = left(x) + 12 + width <= WIDTH;
  const fitsBelow = left(x) - 12 - width >= LEFT && top(y) + 22 <= HEIGHT - BOTTOM;
  return fitsBelow && (wanted === 'below' || !fitsAbove)
    ? text(left(x) - 12, top(y) + 20, words, 'end')
    : text(left(x) + 12, top(y) - 10, words, 'start');
}

function marks({ staticMark, testMark, targetMark }: SupplyCurve, reader: Reader): string {
  const psi = (value: number): string => formatQuantity(value, 'psi', reader);
  const gpm = (value: number): string => formatQuantity(value, 'gpm', reader);
  const { locale } = reader;
  const square = `<rect x="${coordinate(left(staticMark.x) - 5)}" y="${coordinate(top(staticMark.y) - 5)}" width="10" height="10"/>`;
  const circle = `<circle cx="${coordinate(left(testMark.x))}" cy="${coordinate(top(testMark.y))}" r="5.5"/>`;
  const labels = [
    label(
      staticMark,
      say(locale, 'hydraulics.curve.static', { pressure: psi(staticMark.residualPsi) }),
      'above',
    ),
    label(
      testMark,
      say(locale, 'hydraulics.curve.test', {
        flow: gpm(testMark.flowGpm),
        pressure: psi(testMark.residualPsi),
      }),
      'above',
    ),
  ];
  if (!targetMark) return square + circle + labels.join('');
  const [atX, atY] = [left(targetMark.x), top(targetMark.y)];
  const triangle = `<path d="M${coordinate(atX)} ${coordinate(atY - 7)}l7 12h-14z"/>`;
  labels.push(
    label(
      targetMark,
      say(locale, 'hydraulics.curve.target', {
        flow: gpm(targetMark.flowGpm),
        pressure: psi(targetMark.residualPsi),
      }),
      'below',
    ),
  );
  return square + circle + triangle + labels.join('');
}

/**
 * The supply curve as one SVG element: flow on N^1.85 paper across, residual pressure up; square for static, circle for
 * the test, triangle for the target, the projected part dashed. One ink (`currentColor`), so it prints in black and
 * white and follows a dark page. Title and description tell a screen reader the same figures.
 */
export function supplyCurveSvg(curve: SupplyCurve, drawing: SupplyCurveDrawing): string {
  const { locale, idPrefix, subject } = drawing;
  const title = subject
    ? say(locale, 'hydraulics.curve.title-of', { subject })
    : say(locale, 'hydraulics.curve.title');
  const targetY = coordinate(top(curve.target.y));
  const axisWords = (key: string, unit: SupplyCurve['flow' | 'pressure']['unit']): string =>
    say(locale, key, { unit: unitSymbol(unit, locale), unitName: unitName(unit, locale) });
  const middle = TOP + PLOT_HEIGHT / 2;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WIDTH} ${HEIGHT}" role="img" class="supply-curve"`,
    ` aria-labelledby="${idPrefix}-title ${idPrefix}-desc" font-family="inherit" font-size="13" fill="currentColor">`,
    `<title id="${idPrefix}-title">${escapeMarkup(title)}</title>`,
    `<desc id="${idPrefix}-desc">${escapeMarkup(supplyCurveDescription(curve, drawing))}</desc>`,
    grid(curve, drawing),
    uncertainty(curve),
    `<path d="M${LEFT} ${TOP}V${HEIGHT - BOTTOM}H${WIDTH - RIGHT}" ${LINE} stroke-width="1.5"/>`,
    `<path d="M${LEFT} ${targetY}H${WIDTH - RIGHT}" ${LINE} stroke-width="1.5" stroke-dasharray="2 4"/>`,
    `<polyline points="${points(curve.measured)}" ${LINE} stroke-width="2.5"/>`,
    curve.projected.length > 0
      ? `<polyline points="${points(curve.projected)}" ${LINE} stroke-width="2.5" stroke-dasharray="9 6"/>`
      : '',
    curve.targetMark
      ? ''
      : text(
          WIDTH - RIGHT - 4,
          top(curve.target.y) - 6,
          formatQuantity(curve.target.residualPsi, 'psi', drawing),
          'end',
        ),
    marks(curve, drawing),
    text(
      LEFT + PLOT_WIDTH / 2,
      HEIGHT - 16,
      axisWords('hydraulics.curve.flow-axis', curve.flow.unit),
      'middle',
    ),
    text(
      0,
      0,
      axisWords('hydraulics.curve.pressure-axis', curve.pressure.unit),
      'middle',
      ` transform="translate(16 ${coordinate(middle)}) rotate(-90)"`,
    ),
    '</svg>',
  ].join('');
}
