import { isPlausible } from '../inventory/place/decide.ts';
import { isDegrees, type Crs } from '../inventory/place/crs.ts';
import type { Feature } from './features.ts';
import type { Findings } from './findings.ts';

/** Longitudes and latitudes by turns, WGS 84 degrees. */
export type Places = readonly number[];

/** How positions are read: in which system, and where it is said that they cannot be. */
export interface Reading {
  readonly crs: Crs;
  readonly findings: Findings;
}

const shown = (value: unknown): string =>
  (value === undefined ? 'nothing' : JSON.stringify(value)).slice(0, 40);

/** One position; null when it is none, which has been said. A third number (elevation) is passed over, as RFC 7946 lets. */
export function readPosition(
  value: unknown,
  path: string,
  feature: Feature,
  { crs, findings }: Reading,
): readonly [longitudeDeg: number, latitudeDeg: number] | null {
  const [x, y] = (Array.isArray(value) ? value : []) as unknown[];
  // Numbers written as text are not numbers in GeoJSON, and a reader that takes them hides a broken export.
  if (typeof x !== 'number' || typeof y !== 'number') {
    findings.add(feature, 'layers-not-a-position', path, { value: shown(value) });
    return null;
  }
  if (x === 0 && y === 0) {
    findings.add(feature, 'layers-at-zero', path);
    return null;
  }
  if (crs.kind === 'degrees' && !isDegrees(x, y)) {
    findings.add(feature, 'layers-not-in-degrees', path, { value: shown(value) });
    return null;
  }
  const place = crs.toWgs84(x, y);
  if (place === null || !isPlausible(crs, ...place)) {
    findings.add(feature, 'layers-outside-area', path, { value: shown(value), crs: crs.label });
    return null;
  }
  return place;
}

/**
 * A line of positions; null when it is none, which has been said. A position that repeats the one before it is left
 * out. No line of a town crosses the date line, and one that does was not cut there as RFC 7946, 3.1.9 asks.
 */
export function readLine(value: unknown, path: string, feature: Feature, reading: Reading): Places | null {
  if (!Array.isArray(value)) {
    reading.findings.add(feature, 'layers-no-positions', path, { value: shown(value) });
    return null;
  }
  const places: number[] = [];
  for (const [index, each] of value.entries()) {
    const place = readPosition(each, `${path}.${index}`, feature, reading);
    if (!place) return null;
    const [longitude, latitude] = place;
    const [lastLongitude, lastLatitude] = places.slice(-2);
    if (lastLongitude !== undefined && Math.abs(longitude - lastLongitude) > 180) {
      reading.findings.add(feature, 'layers-date-line', `${path}.${index}`);
      return null;
    }
    if (longitude !== lastLongitude || latitude !== lastLatitude) places.push(longitude, latitude);
  }
  return places;
}

/** The parts of a geometry of one of two types, `single` or its multiple, each with its path; null when it is another. */
export function partsOf(
  feature: Feature,
  single: 'Point' | 'LineString' | 'Polygon',
  { findings }: Reading,
): readonly (readonly [value: unknown, path: string])[] | null {
  if (feature.broken !== null) {
    findings.add(feature, 'layers-broken-feature', '', { detail: feature.broken });
    return null;
  }
  const { geometry } = feature;
  if (!geometry) {
    findings.add(feature, 'layers-no-geometry', 'geometry');
    return null;
  }
  const path = 'geometry.coordinates';
  if (geometry.type === single) return [[geometry.coordinates, path]];
  if (geometry.type !== `Multi${single}`) {
    findings.add(feature, 'layers-wrong-geometry', 'geometry.type', {
      type: geometry.type.slice(0, 40),
      wanted: single,
    });
    return null;
  }
  if (!Array.isArray(geometry.coordinates) || geometry.coordinates.length === 0) {
    findings.add(feature, 'layers-no-positions', path, { value: shown(geometry.coordinates) });
    return null;
  }
  return geometry.coordinates.map((part: unknown, index) => [part, `${path}.${index}`] as const);
}
