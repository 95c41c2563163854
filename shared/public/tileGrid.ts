import type { PublicPosition } from './position.ts';

/** Latitude at which the Web Mercator square ends (OGC 17-083r4, annex D). */
const MERCATOR_END_DEG = 85.051_128_78;

export interface Tile {
  readonly z: number;
  readonly x: number;
  readonly y: number;
}

const radians = (degrees: number): number => (degrees * Math.PI) / 180;

/** Column and row of a place at a zoom, with fractions. Web Mercator, EPSG:3857, on its tile grid (OGC 17-083r4, annex D). */
export function tileAt({ latitudeDeg, longitudeDeg }: PublicPosition, z: number): { x: number; y: number } {
  const latitude = Math.min(MERCATOR_END_DEG, Math.max(-MERCATOR_END_DEG, latitudeDeg));
  const tiles = 2 ** z;
  return {
    x: ((longitudeDeg + 180) / 360) * tiles,
    y: ((1 - Math.asinh(Math.tan(radians(latitude))) / Math.PI) / 2) * tiles,
  };
}

/** North-west corner of a tile. */
export function cornerOf({ z, x, y }: Tile): PublicPosition {
  const tiles = 2 ** z;
  return {
    latitudeDeg: (Math.atan(Math.sinh(Math.PI * (1 - (2 * y) / tiles))) * 180) / Math.PI,
    longitudeDeg: (x / tiles) * 360 - 180,
  };
}
