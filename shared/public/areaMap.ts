import { FEET_PER_DEGREE } from '../nearest/sphere.ts';
import type { System } from '../units/units.ts';
import type { PublicAreaDrawing } from './coverSchema.ts';
import { fitFrame, scaleFeet, tenth, type MapFrame } from './mapFrame.ts';
import { placeMarkers, type MapMarker } from './mapSigns.ts';

/** An area that lost its cover, as plain geometry; the page draws it. */
export interface AreaMap {
  readonly width: number;
  readonly height: number;
  /** Path of the ground where no hydrant is left in reach, and of that where the credit is short; '' for none. */
  readonly none: string;
  readonly short: string;
  readonly inService: readonly { readonly x: number; readonly y: number }[];
  /** Signs of the hydrants that are out; `index` is their number in the list. */
  readonly out: readonly MapMarker[];
  readonly footAt: number;
  readonly scale: { readonly feet: number; readonly length: number };
}

const WIDTH = 420;
const MARGIN = 40;
const FOOT = 30;
/** Half the size of a place that stands by itself, units of the picture. */
const DOT = 6;
/** Signs beyond these would cover the ground that the drawing is about. */
const MOST_SIGNS = 20;

/** @param stepFt spacing of the grid, feet; null for places that stand by themselves */
export function areaMap(
  { rows, inService, out }: PublicAreaDrawing,
  stepFt: number | null,
  system: System,
): AreaMap | null {
  const [first] = rows;
  if (!first) return null;
  const half = stepFt === null ? 0 : stepFt / 2 / FEET_PER_DEGREE;
  const widen = Math.cos((first.latitudeDeg * Math.PI) / 180);
  const edges = [
    ...rows.map(({ latitudeDeg, westDeg, eastDeg }) => ({
      south: latitudeDeg - half,
      north: latitudeDeg + half,
      west: westDeg - half / widen,
      east: eastDeg + half / widen,
    })),
    ...out.map(({ position: { latitudeDeg, longitudeDeg } }) => ({
      south: latitudeDeg,
      north: latitudeDeg,
      west: longitudeDeg,
      east: longitudeDeg,
    })),
  ];
  const bounds = edges.reduce((all, edge) => ({
    south: Math.min(all.south, edge.south),
    north: Math.max(all.north, edge.north),
    west: Math.min(all.west, edge.west),
    east: Math.max(all.east, edge.east),
  }));
  const frame = fitFrame(bounds, { width: WIDTH, least: 260, greatest: 420, margin: MARGIN });
  const feet = scaleFeet(frame.feetPerUnit * WIDTH * 0.3, system);
  const ground = (lost: 'none' | 'short'): string =>
    rows
      .filter((row) => row.lost === lost)
      .map((row) => block(row, frame, stepFt))
      .join('');
  return {
    width: frame.width,
    height: tenth(frame.height) + FOOT,
    footAt: tenth(frame.height),
    none: ground('none'),
    short: ground('short'),
    inService: inService
      .map(frame.place)
      .filter(({ x, y }) => x >= 8 && y >= 8 && x <= frame.width - 8 && y <= frame.height - 8)
      .map(({ x, y }) => ({ x: tenth(x), y: tenth(y) })),
    out: placeMarkers(
      out.slice(0, MOST_SIGNS).map(({ number, position }) => ({ index: number, ...frame.place(position) })),
      frame,
    ),
    scale: { feet, length: tenth(feet / frame.feetPerUnit) },
  };
}

/** The ground that a row of points stands for: half a step to every side of each. */
function block(
  { latitudeDeg, westDeg, eastDeg }: PublicAreaDrawing['rows'][number],
  frame: MapFrame,
  stepFt: number | null,
): string {
  const half = stepFt === null ? DOT : stepFt / 2 / frame.feetPerUnit;
  const west = frame.place({ latitudeDeg, longitudeDeg: westDeg });
  const east = frame.place({ latitudeDeg, longitudeDeg: eastDeg });
  const [left, top] = [tenth(west.x - half), tenth(west.y - half)];
  return `M${left} ${top}H${tenth(east.x + half)}V${tenth(west.y + half)}H${left}Z`;
}
