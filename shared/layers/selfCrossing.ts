import type { Position } from '../nearest/sphere.ts';
import { besidePiece, crossingOf, pieceIndex, placeAt, type Piece } from './crossing.ts';
import type { Places } from './positions.ts';

/** A place at which a ring crosses itself, or null. Where it does, nobody can say what is inside. */
export function crossesItself(ring: Places): Position | null {
  const pieces: Piece[] = [];
  for (let at = 2; at < ring.length; at += 2) {
    const [x0 = 0, y0 = 0, x1 = 0, y1 = 0] = ring.slice(at - 2, at + 2);
    pieces.push({ x0, y0, x1, y1 });
  }
  const index = pieceIndex(pieces);
  for (const [number, piece] of pieces.entries())
    for (const other of besidePiece(index, piece)) {
      const found = other > number ? pieces[other] : undefined;
      const crossing = found && crossingOf(piece, found);
      if (crossing) return placeAt(piece, crossing.shareA);
    }
  return null;
}
