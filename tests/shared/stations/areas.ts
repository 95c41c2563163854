import { slugOf, type Station } from '../../../shared/stations/stations.ts';

/** A ring around four sides, degrees; the first corner stands again at the end. */
export const box = (west: number, south: number, east: number, north: number): number[] => [
  ...[west, south],
  ...[east, south],
  ...[east, north],
  ...[west, north],
  ...[west, south],
];

/** A station's area: each polygon its outer ring and then its holes. */
export const station = (name: string, ...polygons: number[][][]): Station => ({
  name,
  slug: slugOf(name),
  polygons,
});
