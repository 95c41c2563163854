/** A place on WGS 84, decimal degrees. A hydrant is one. */
export interface Position {
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
}

/**
 * The mean radius of the Earth, R1 = (2a + b) / 3 of the GRS 80 and WGS 84 ellipsoids: 6 371 008.8 m (IUGG).
 * A sphere of this radius is up to 0.56 % off the ellipsoid's own distance, depending on latitude and direction: under
 * 6 ft on 1,000 ft, less than a hydrant's surveyed place.
 */
export const EARTH_RADIUS_M = 6_371_008.8;

/** Feet of a degree of a great circle on it (a foot is 0.3048 m exactly). */
export const FEET_PER_DEGREE = ((EARTH_RADIUS_M / 0.3048) * Math.PI) / 180;

const radians = (degrees: number): number => (degrees * Math.PI) / 180;
const square = (value: number): number => value * value;

/**
 * Great-circle distance in metres, on the sphere above. The haversine form (R. W. Sinnott, "Virtues of the Haversine",
 * Sky and Telescope 68, 1984), which stays exact for points a few feet apart, where the cosine form does not.
 */
export function greatCircleMetres(one: Position, other: Position): number {
  const halfChordSquared =
    square(Math.sin(radians(other.latitudeDeg - one.latitudeDeg) / 2)) +
    Math.cos(radians(one.latitudeDeg)) *
      Math.cos(radians(other.latitudeDeg)) *
      square(Math.sin(radians(other.longitudeDeg - one.longitudeDeg) / 2));
  // Rounding can carry antipodes a hair past 1.
  return 2 * EARTH_RADIUS_M * Math.asin(Math.sqrt(Math.min(1, halfChordSquared)));
}

/** Great-circle distance in feet (0.3048 m exactly); see {@link greatCircleMetres} for its error. */
export const greatCircleFt = (one: Position, other: Position): number =>
  greatCircleMetres(one, other) / 0.3048;

/**
 * The direction in which to set out from `from` to reach `to` on the great circle, degrees clockwise from north,
 * 0 ≤ x < 360. 0 for two equal places.
 */
export function initialBearingDeg(from: Position, to: Position): number {
  const [fromLat, toLat] = [radians(from.latitudeDeg), radians(to.latitudeDeg)];
  const east = radians(to.longitudeDeg - from.longitudeDeg);
  const y = Math.sin(east) * Math.cos(toLat);
  const x = Math.cos(fromLat) * Math.sin(toLat) - Math.sin(fromLat) * Math.cos(toLat) * Math.cos(east);
  const degrees = (Math.atan2(y, x) * 180) / Math.PI;
  // A bearing a rounding below zero is north, not 360.
  return (degrees + 360) % 360;
}

export const compassPoints = ['N', 'NE', 'E', 'SE', 'S', 'SW', 'W', 'NW'] as const;
/** A direction in words; the catalogue has them as `bearing.N` and so on. */
export type CompassPoint = (typeof compassPoints)[number];

/** The nearest of the eight compass points to a bearing in degrees. */
export function compassPoint(bearingDeg: number): CompassPoint {
  return compassPoints[Math.round((((bearingDeg % 360) + 360) % 360) / 45) % 8] ?? 'N';
}
