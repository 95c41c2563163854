import type { Piece } from '../layers/crossing.ts';
import { FEET_PER_DEGREE, type Position } from '../nearest/sphere.ts';

/**
 * The place of a straight piece that is nearest to a point, and how far off it is, feet. Taken on a plane that touches
 * the globe at the point: within some thousand feet of it that is exact to an inch.
 */
export function nearestOnPiece(
  point: Position,
  { x0, y0, x1, y1 }: Piece,
): { readonly offFt: number; readonly share: number } {
  const shrink = Math.cos((point.latitudeDeg * Math.PI) / 180);
  const ax = (x0 - point.longitudeDeg) * shrink;
  const ay = y0 - point.latitudeDeg;
  const bx = (x1 - x0) * shrink;
  const by = y1 - y0;
  const length2 = bx * bx + by * by;
  const share = length2 === 0 ? 0 : Math.min(1, Math.max(0, -(ax * bx + ay * by) / length2));
  return { offFt: Math.hypot(ax + share * bx, ay + share * by) * FEET_PER_DEGREE, share };
}
