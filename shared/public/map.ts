import type { System } from '../units/units.ts';
import { greatCircleFt } from '../nearest/sphere.ts';
import type { PublicPosition } from './snapshot.ts';
import { fitFrame, scaleFeet, tenth, type Bounds, type MapFrame } from './mapFrame.ts';
import { placeMarkers, type MapMarker } from './mapSigns.ts';

/** The town at a glance, as plain geometry; the page draws it. */
export interface TownMap {
  readonly width: number;
  readonly height: number;
  /** One SVG path: a zero-length line for each dot, to be drawn with round ends. */
  readonly dots: string;
  readonly dotSize: number;
  /** Dots that lie so far off that they would shrink the town to a speck. */
  readonly beyond: number;
  /** Hydrants out of service that are left off because their place cannot be right for this town. */
  readonly outBeyond: number;
  /** Signs for the first of the list; `index` is the place in it. */
  readonly markers: readonly MapMarker[];
  /** Those out of service beyond that: a path of zero-length lines as `dots`, to be drawn with square ends. */
  readonly further: string;
  readonly furtherCount: number;
  /** Degrees to units of the picture, for whoever draws more on it. */
  readonly projection: MapFrame['projection'];
  /** Below this line no hydrant stands: room for the scale and the arrow. */
  readonly footAt: number;
  readonly scale: { readonly feet: number; readonly length: number };
}

/** How large a map is drawn, and how many of those out of service get a numbered sign of their own. */
export interface MapSize {
  readonly width: number;
  readonly leastHeight: number;
  readonly greatestHeight: number;
  readonly mostSigns: number;
}
/** Beside the list: about as wide as the page shows it, so that its letters are the page's; a phone shows it at two thirds. */
export const besideList: MapSize = { width: 540, leastHeight: 300, greatestHeight: 600, mostSigns: 40 };
/** On a page of its own. */
export const ownPage: MapSize = { width: 720, leastHeight: 420, greatestHeight: 640, mostSigns: 60 };

const MARGIN = 30;
const FOOT = 30;
/** More dots than this are drawn on a raster, one a cell: a city of 250,000 must not weigh megabytes. */
const MOST_DOTS = 4000;
/** With fewer dots an outlier is a hydrant; with more it is nearly always a mistake in the inventory. */
const OUTLIERS_FROM = 100;

/** No town reaches this far from the middle half of its hydrants: such a place is a mistake, e.g. 0, 0. */
const FARTHEST_FROM_MIDDLE_FT = 50_000 / 0.3048;
/** With fewer places nobody can say which of them is the mistake. */
const MIDDLE_FROM = 4;

/** Whether a place can belong to a town with these hydrants: at most 50 km from the box of their middle half. */
export function nearTown(places: readonly PublicPosition[]): (position: PublicPosition) => boolean {
  if (places.length < MIDDLE_FROM) return () => true;
  const half = (of: (position: PublicPosition) => number): [number, number] => {
    // Numbers by themselves sort ten times as fast: a city has 250,000.
    const sorted = Float64Array.from(places, of).sort();
    const at = (share: number): number => sorted[Math.floor((sorted.length - 1) * share)] ?? 0;
    return [at(0.25), at(0.75)];
  };
  const [south, north] = half(({ latitudeDeg }) => latitudeDeg);
  const [west, east] = half(({ longitudeDeg }) => longitudeDeg);
  const between = (value: number, least: number, most: number): number =>
    Math.min(most, Math.max(least, value));
  return (position) =>
    greatCircleFt(position, {
      latitudeDeg: between(position.latitudeDeg, south, north),
      longitudeDeg: between(position.longitudeDeg, west, east),
    }) <= FARTHEST_FROM_MIDDLE_FT;
}

function boundsOf(dots: readonly PublicPosition[], out: readonly PublicPosition[]): Bounds | null {
  const all = [...dots, ...out];
  if (all.length === 0) return null;
  const range = (of: (position: PublicPosition) => number): [number, number] => {
    const sorted = dots.map(of).toSorted((a, b) => a - b);
    const cut = sorted.length > OUTLIERS_FROM ? Math.floor(sorted.length / 200) : 0;
    const ends = [sorted[cut], sorted[sorted.length - 1 - cut], ...out.map(of)].filter(
      (end) => end !== undefined,
    );
    // Not spread into Math.min: a city of arguments would overflow the stack.
    return [ends.reduce((a, b) => Math.min(a, b)), ends.reduce((a, b) => Math.max(a, b))];
  };
  const [south, north] = range(({ latitudeDeg }) => latitudeDeg);
  const [west, east] = range(({ longitudeDeg }) => longitudeDeg);
  return { south, north, west, east };
}

/**
 * Row by row, each dot from the one before it: on a raster those are the same few letters again and again, which
 * compress to next to nothing. Dots that each say where they stand were half the weight of a city's first page.
 */
function dotPath(points: readonly { x: number; y: number }[], width: number): string {
  const cell = points.length > MOST_DOTS ? Math.sqrt((width * width) / MOST_DOTS) / 2 : 0.1;
  const rows = new Map<number, Set<number>>();
  for (const { x, y } of points) {
    const row = tenth(Math.round(y / cell) * cell);
    const places = rows.get(row) ?? new Set();
    rows.set(row, places.add(tenth(Math.round(x / cell) * cell)));
  }
  return [...rows]
    .toSorted(([a], [b]) => a - b)
    .map(([row, places]) => {
      const [first = 0, ...others] = [...places].toSorted((a, b) => a - b);
      // From tenth to tenth: what is rounded does not add up along the row.
      const steps = others.map((x, index) => `m${tenth(x - (others[index - 1] ?? first))} 0h0`);
      return `M${first} ${row}h0${steps.join('')}`;
    })
    .join('');
}

/**
 * A map of hydrants in service (dots) and out of service (numbered signs). Null when there is nothing with a place.
 * `out` keeps its order; an entry without a place has no sign.
 */
export function townMap(
  dots: readonly PublicPosition[],
  out: readonly (PublicPosition | null)[],
  system: System = 'us',
  size: MapSize = besideList,
): TownMap | null {
  const isNear = nearTown([...dots, ...out.filter((position) => position !== null)]);
  const near = out.map((position) => (position && isNear(position) ? position : null));
  const bounds = boundsOf(
    dots.filter(isNear),
    near.filter((position) => position !== null),
  );
  if (!bounds) return null;
  const { width, leastHeight: least, greatestHeight: greatest, mostSigns } = size;
  const frame = fitFrame(bounds, { width, least, greatest, margin: MARGIN });
  const points = dots.map(frame.place);
  const inside = points.filter(({ x, y }) => x >= 0 && y >= 0 && x <= frame.width && y <= frame.height);
  const feet = scaleFeet(frame.feetPerUnit * frame.width * 0.3, system);
  const placed = near.flatMap((position, index) => (position ? [{ index, ...frame.place(position) }] : []));
  // The list is numbered from its beginning: a sign beyond that would have a number that leads nowhere.
  const signed = placed.filter(({ index }) => index < mostSigns);
  const further = placed.slice(signed.length);
  return {
    width: frame.width,
    height: tenth(frame.height) + FOOT,
    footAt: tenth(frame.height),
    dots: dotPath(inside, width),
    dotSize: inside.length > 1500 ? 2.5 : inside.length > 200 ? 4 : 6,
    beyond: points.length - inside.length,
    outBeyond: out.filter((position, index) => position !== null && near[index] === null).length,
    markers: placeMarkers(signed, { width: frame.width, height: frame.height }),
    further: dotPath(further, width),
    furtherCount: further.length,
    projection: frame.projection,
    scale: { feet, length: tenth(feet / frame.feetPerUnit) },
  };
}
