import type { PublicPosition } from './snapshot.ts';

/** Compass eighths, clockwise from north. Words: `public.bearing.<code>`. */
export const bearings = ['N', 'NE', 'E', 'SE', 'S', 'SW', 'W', 'NW'] as const;
export type Bearing = (typeof bearings)[number];

const radians = (degrees: number): number => (degrees * Math.PI) / 180;

/**
 * Direction of the great circle from one place to another as it leaves the first, degrees clockwise from true north,
 * 0 ≤ result < 360; 0 for the same place. Textbook spherical trigonometry:
 * tan θ = sin Δλ cos φ₂ / (cos φ₁ sin φ₂ − sin φ₁ cos φ₂ cos Δλ).
 */
export function bearingDeg(from: PublicPosition, to: PublicPosition): number {
  const turn = radians(to.longitudeDeg - from.longitudeDeg);
  const [start, end] = [radians(from.latitudeDeg), radians(to.latitudeDeg)];
  const east = Math.sin(turn) * Math.cos(end);
  const north = Math.cos(start) * Math.sin(end) - Math.sin(start) * Math.cos(end) * Math.cos(turn);
  return ((Math.atan2(east, north) * 180) / Math.PI + 360) % 360;
}

/** The compass eighth of a bearing: N is 337.5° up to 22.5°, an edge belonging to the eighth that begins there. */
export function compassEighth(degrees: number): Bearing {
  return bearings[Math.floor(((degrees + 22.5) % 360) / 45)] ?? 'N';
}
