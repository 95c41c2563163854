import { FEET_PER_DEGREE } from '../nearest/sphere.ts';
import type { System } from '../units/units.ts';
import type { PublicPosition } from './snapshot.ts';

/** A plane picture of a few miles: x to the east, y to the south, in the picture's own units. */
export interface MapFrame {
  readonly width: number;
  readonly height: number;
  /** Feet on the ground in one unit of the picture. */
  readonly feetPerUnit: number;
  readonly place: (position: PublicPosition) => { readonly x: number; readonly y: number };
  readonly projection: Projection;
}

/** From degrees to a picture and back. */
export interface Projection {
  /** Degrees at the point of the picture below. */
  readonly middle: PublicPosition;
  readonly x: number;
  readonly y: number;
  /** Units of the picture to the east and to the south in one degree. */
  readonly perDegreeEast: number;
  readonly perDegreeSouth: number;
}

export const project = (
  { middle, x, y, perDegreeEast, perDegreeSouth }: Projection,
  { latitudeDeg, longitudeDeg }: PublicPosition,
): { x: number; y: number } => ({
  x: x + (longitudeDeg - middle.longitudeDeg) * perDegreeEast,
  y: y + (latitudeDeg - middle.latitudeDeg) * perDegreeSouth,
});

export const unproject = (
  { middle, x, y, perDegreeEast, perDegreeSouth }: Projection,
  at: { readonly x: number; readonly y: number },
): PublicPosition => ({
  latitudeDeg: middle.latitudeDeg + (at.y - y) / perDegreeSouth,
  longitudeDeg: middle.longitudeDeg + (at.x - x) / perDegreeEast,
});

export interface Bounds {
  readonly south: number;
  readonly north: number;
  readonly west: number;
  readonly east: number;
}

/** A length of the picture to the tenth, which is finer than any screen shows. */
export const tenth = (value: number): number => Math.round(value * 10) / 10;

/** Nothing smaller is drawn: a town with one hydrant still gets a map with a scale. */
const LEAST_SPAN_FT = 1200;

/**
 * Fits a part of the Earth into a picture of the given width: equirectangular, true to scale at its middle latitude,
 * which over a city is off by less than the width of a dot.
 */
export function fitFrame(
  bounds: Bounds,
  { width, least, greatest, margin }: { width: number; least: number; greatest: number; margin: number },
): MapFrame {
  const middle = {
    latitudeDeg: (bounds.south + bounds.north) / 2,
    longitudeDeg: (bounds.west + bounds.east) / 2,
  };
  const shrink = Math.cos((middle.latitudeDeg * Math.PI) / 180);
  const spanX = Math.max((bounds.east - bounds.west) * shrink * FEET_PER_DEGREE, LEAST_SPAN_FT);
  const spanY = Math.max((bounds.north - bounds.south) * FEET_PER_DEGREE, LEAST_SPAN_FT);
  const inner = width - 2 * margin;
  const height = Math.min(greatest, Math.max(least, (spanY / spanX) * inner + 2 * margin));
  const feetPerUnit = Math.max(spanX / inner, spanY / (height - 2 * margin));
  const projection = {
    middle,
    x: width / 2,
    y: height / 2,
    perDegreeEast: (shrink * FEET_PER_DEGREE) / feetPerUnit,
    perDegreeSouth: -FEET_PER_DEGREE / feetPerUnit,
  };
  return { width, height, feetPerUnit, place: (position) => project(projection, position), projection };
}

const FEET_PER_MILE = 5280;
const FEET_PER_METRE = 1 / 0.3048;

/** A scale bar that is a round number of what it is labelled with (feet, miles, metres, kilometres), in feet. */
export function scaleFeet(mostFeet: number, system: System): number {
  if (system === 'metric') return roundLength(mostFeet / FEET_PER_METRE) * FEET_PER_METRE;
  return mostFeet < FEET_PER_MILE
    ? roundLength(mostFeet)
    : roundLength(mostFeet / FEET_PER_MILE) * FEET_PER_MILE;
}

/** The longest round length (1, 2 or 5 times a power of ten) that is no longer than `most`. */
export function roundLength(most: number): number {
  const power = 10 ** Math.floor(Math.log10(most));
  return power * ([5, 2, 1].find((step) => step * power <= most) ?? 1);
}
