import type { System } from '../units/units.ts';
import type { PublicPosition } from './snapshot.ts';
import { fitFrame, scaleFeet, tenth, type Bounds, type MapFrame } from './mapFrame.ts';
import { placeMarkers, type MapMarker } from './mapSigns.ts';
import { nearTown, townBox } from './town.ts';

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
/** A box widened until it holds these places, too. */
function holding(box: Bounds | null, places: readonly PublicPosition[]): Bounds | null {
  return places.reduce<Bounds | null>(
    (held, { latitudeDeg, longitudeDeg }) => ({
      south: Math.min(held?.south ?? latitudeDeg, latitudeDeg),
      north: Math.max(held?.north ?? latitudeDeg, latitudeDeg),
      west: Math.min(held?.west ?? longitudeDeg, longitudeDeg),
      east: Math.max(held?.east ?? longitudeDeg, longitudeDeg),
    }),
    box,
  );
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

/** What is drawn of a town, however large: hydrants in service and out of it, and the part of the earth they fill. */
export interface TownPlaces {
  readonly dots: readonly PublicPosition[];
  /** In the order of the list; null for one without a place, or with one that cannot be right for this town. */
  readonly out: readonly (PublicPosition | null)[];
  readonly outBeyond: number;
  readonly bounds: Bounds;
}

/** Looks the town over, once for every size it is drawn in; null when there is nothing with a place. */
export function townPlaces(
  dots: readonly PublicPosition[],
  given: readonly (PublicPosition | null)[],
): TownPlaces | null {
  const reported = given.filter((position) => position !== null);
  const isNear = nearTown([...dots, ...reported]);
  const out = given.map((position) => (position && isNear(position) ? position : null));
  const near = out.filter((position) => position !== null);
  const bounds = holding(townBox(dots.filter(isNear)), near);
  return bounds && { dots, out, outBeyond: reported.length - near.length, bounds };
}

/** A map of hydrants in service (dots) and out of service (numbered signs). An entry without a place has no sign. */
export function townMap(
  { dots, out, outBeyond, bounds }: TownPlaces,
  system: System = 'us',
  size: MapSize = besideList,
): TownMap {
  const { width, leastHeight: least, greatestHeight: greatest, mostSigns } = size;
  const frame = fitFrame(bounds, { width, least, greatest, margin: MARGIN });
  const points = dots.map(frame.place);
  const inside = points.filter(({ x, y }) => x >= 0 && y >= 0 && x <= frame.width && y <= frame.height);
  const feet = scaleFeet(frame.feetPerUnit * frame.width * 0.3, system);
  const placed = out.flatMap((position, index) => (position ? [{ index, ...frame.place(position) }] : []));
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
    outBeyond,
    markers: placeMarkers(signed, { width: frame.width, height: frame.height }),
    further: dotPath(further, width),
    furtherCount: further.length,
    projection: frame.projection,
    scale: { feet, length: tenth(feet / frame.feetPerUnit) },
  };
}
