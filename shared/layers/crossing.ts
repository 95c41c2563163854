import Flatbush from 'flatbush';
import type { Position } from '../nearest/sphere.ts';

/** A straight piece between two positions. */
export interface Piece {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
}

/** Pieces laid out for search, by their numbers. */
export function pieceIndex(pieces: readonly Piece[]): Flatbush {
  const index = new Flatbush(Math.max(1, pieces.length));
  for (const piece of pieces) index.add(...boxOf(piece));
  // The library holds no empty index.
  if (pieces.length === 0) index.add(0, 0, 0, 0);
  index.finish();
  return index;
}

/** Those that a piece may meet, it among them: whose boxes touch its own. */
export const besidePiece = (index: Flatbush, piece: Piece): readonly number[] =>
  index.search(...boxOf(piece));

const boxOf = ({ x0, y0, x1, y1 }: Piece): [number, number, number, number] => [
  Math.min(x0, x1),
  Math.min(y0, y1),
  Math.max(x0, x1),
  Math.max(y0, y1),
];

/** How near an end, as a share of a piece, two pieces may meet and still meet there and not between. */
const atAnEnd = 1e-9;

/**
 * Where two pieces cross between their ends, as the share of each at which they do; null where they do not, or only
 * touch at an end, or lie along each other.
 */
export function crossingOf(a: Piece, b: Piece): { readonly shareA: number; readonly shareB: number } | null {
  const [ax, ay, bx, by] = [a.x1 - a.x0, a.y1 - a.y0, b.x1 - b.x0, b.y1 - b.y0];
  const turn = ax * by - ay * bx;
  if (turn === 0) return null;
  const [dx, dy] = [b.x0 - a.x0, b.y0 - a.y0];
  const shareA = (dx * by - dy * bx) / turn;
  const shareB = (dx * ay - dy * ax) / turn;
  const inside = (share: number): boolean => share > atAnEnd && share < 1 - atAnEnd;
  return inside(shareA) && inside(shareB) ? { shareA, shareB } : null;
}

/** The place at a share of a piece. */
export const placeAt = ({ x0, y0, x1, y1 }: Piece, share: number): Position => ({
  longitudeDeg: x0 + (x1 - x0) * share,
  latitudeDeg: y0 + (y1 - y0) * share,
});
