import { fitFrame, scaleFeet, tenth, type Bounds, type MapFrame } from '../public/mapFrame.ts';
import { placeMarkers } from '../public/mapSigns.ts';
import type { PublicPosition } from '../public/position.ts';
import type { System } from '../units/units.ts';
import type { PublicStation } from './page.ts';
import type { Station } from './stations.ts';

/** The page shows it beside the counts, paper across half a sheet: its letters are the page's. */
const WIDTH = 560;
const MARGIN = 20;
const FOOT = 34;
/** Signs beyond this hide one another; the list has every place in words. */
const MOST_SIGNS = 40;
/** Two corners of a border nearer than this, units of the picture, are one. */
const LEAST_STEP = 0.7;
/** More dots than this are drawn on a raster, one a cell. */
const MOST_DOTS = 3000;

/** The area of a station as it is drawn when the page is made: its border, its hydrants in service, signs for what is out. */
export function stationDrawing(
  { polygons }: Station,
  dots: readonly PublicPosition[],
  out: readonly { readonly entry: number; readonly position: PublicPosition }[],
  system: System,
): PublicStation['drawing'] {
  const rings = polygons.flat();
  const frame = fitFrame(boundsOf(rings), { width: WIDTH, least: 240, greatest: 480, margin: MARGIN });
  const feet = scaleFeet(frame.feetPerUnit * frame.width * 0.3, system);
  const signs = placeMarkers(
    out.slice(0, MOST_SIGNS).map(({ entry, position }) => ({ index: entry, ...frame.place(position) })),
    { width: frame.width, height: frame.height },
  );
  return {
    width: frame.width,
    height: tenth(frame.height) + FOOT,
    outline: rings.map((ring) => outlineOf(ring, frame)).join(''),
    dots: dotsOf(dots, frame),
    dotSize: dots.length > 800 ? 2.5 : dots.length > 150 ? 4 : 6,
    signs: signs.map(({ index, ...place }) => ({ entry: index, ...place })),
    scale: { feet, length: tenth(feet / frame.feetPerUnit) },
  };
}

function boundsOf(rings: readonly (readonly number[])[]): Bounds {
  const bounds = { south: 90, north: -90, west: 180, east: -180 };
  for (const ring of rings)
    for (let at = 0; at < ring.length; at += 2) {
      const [longitude = 0, latitude = 0] = [ring[at], ring[at + 1]];
      bounds.west = Math.min(bounds.west, longitude);
      bounds.east = Math.max(bounds.east, longitude);
      bounds.south = Math.min(bounds.south, latitude);
      bounds.north = Math.max(bounds.north, latitude);
    }
  return bounds;
}

function outlineOf(ring: readonly number[], { place }: MapFrame): string {
  const corners: string[] = [];
  let last = { x: Infinity, y: Infinity };
  for (let at = 0; at < ring.length - 2; at += 2) {
    const corner = place({ longitudeDeg: ring[at] ?? 0, latitudeDeg: ring[at + 1] ?? 0 });
    if (Math.hypot(corner.x - last.x, corner.y - last.y) < LEAST_STEP) continue;
    corners.push(`${tenth(corner.x)} ${tenth(corner.y)}`);
    last = corner;
  }
  return `M${corners.join('L')}Z`;
}

function dotsOf(dots: readonly PublicPosition[], { place }: MapFrame): string {
  const cell = dots.length > MOST_DOTS ? WIDTH / Math.sqrt(MOST_DOTS) / 2 : 0.1;
  const places = new Set(
    dots.map((dot) => {
      const { x, y } = place(dot);
      return `M${tenth(Math.round(x / cell) * cell)} ${tenth(Math.round(y / cell) * cell)}h0`;
    }),
  );
  return [...places].join('');
}
