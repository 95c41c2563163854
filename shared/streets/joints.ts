import type { StreetLine } from '../layers/lines.ts';
import { besidePiece, crossingOf, pieceIndex, placeAt, type Piece } from '../layers/crossing.ts';
import { FEET_PER_DEGREE, type Position } from '../nearest/sphere.ts';
import { nearestOnPiece } from './plane.ts';
import { PER_DEGREE } from './streets.ts';

/** A place where two streets may or may not be one network, and the features that they come from. */
export interface LooseJoint {
  readonly row: number;
  readonly otherRow: number;
  readonly at: Position;
  /** How far the end stops from the street, feet; 0 for a crossing. */
  readonly offFt: number;
}

/** What a file leaves open about how its streets join. */
export interface LooseJoints {
  /** Crossings, on one level, without a position that both have. */
  readonly crossings: readonly LooseJoint[];
  /** Ends that stop short of another street by no more than `lookWithinFt`, or that touch it where it has no position. */
  readonly ends: readonly LooseJoint[];
  /** The lines with a position of both streets at each of these. */
  readonly joined: (what: {
    readonly crossings: boolean;
    readonly endsWithinFt: number;
  }) => readonly StreetLine[];
}

interface Cut {
  readonly line: number;
  /** Which piece of the line, and where on it as a share. */
  readonly piece: number;
  readonly share: number;
  readonly at: Position;
  readonly why: 'crossing' | 'end';
  readonly offFt: number;
}

const rounded = (degrees: number): number => Math.round(degrees * PER_DEGREE);
const keyOf = (longitude: number, latitude: number): string => `${rounded(longitude)} ${rounded(latitude)}`;

/**
 * Looks where streets that cross, or nearly meet, have no position in common. Two streets join only at a position that
 * both have (as OSM has it, and RFC 7946 knows nothing else): a crossing without one may be a bridge, and an end beside
 * a street may be a fence. So they are told, and joined only if the person says so.
 *
 * @param lookWithinFt how far an end may stop short of a street to be told, feet
 */
export function looseJoints(lines: readonly StreetLine[], lookWithinFt: number): LooseJoints {
  const pieces: (Piece & { readonly line: number; readonly piece: number })[] = [];
  const used = new Map<string, number>();
  for (const [line, { places }] of lines.entries())
    for (let at = 0; at < places.length; at += 2) {
      const [x = 0, y = 0, nextX, nextY] = places.slice(at, at + 4);
      // A line counts once at each end and twice at each position between, like the pieces that meet there.
      const meets = at === 0 || at === places.length - 2 ? 1 : 2;
      used.set(keyOf(x, y), (used.get(keyOf(x, y)) ?? 0) + meets);
      if (nextX !== undefined && nextY !== undefined)
        pieces.push({ x0: x, y0: y, x1: nextX, y1: nextY, line, piece: at / 2 });
    }
  const index = pieceIndex(pieces);

  const cuts: Cut[] = [];
  const rowOf = (line: number): number => lines[line]?.row ?? 0;
  const crossings: LooseJoint[] = [];
  for (const [number, piece] of pieces.entries())
    for (const other of besidePiece(index, piece)) {
      const found = other > number ? pieces[other] : undefined;
      if (!found || lines[piece.line]?.level !== lines[found.line]?.level) continue;
      const crossing = crossingOf(piece, found);
      if (!crossing) continue;
      const at = placeAt(piece, crossing.shareA);
      crossings.push({ row: rowOf(piece.line), otherRow: rowOf(found.line), at, offFt: 0 });
      cuts.push(
        { line: piece.line, piece: piece.piece, share: crossing.shareA, at, why: 'crossing', offFt: 0 },
        { line: found.line, piece: found.piece, share: crossing.shareB, at, why: 'crossing', offFt: 0 },
      );
    }

  const ends: LooseJoint[] = [];
  for (const [line, { places }] of lines.entries())
    for (const at of [0, places.length - 2]) {
      const end = { longitudeDeg: places[at] ?? 0, latitudeDeg: places[at + 1] ?? 0 };
      if (used.get(keyOf(end.longitudeDeg, end.latitudeDeg)) !== 1) continue;
      const highDeg = lookWithinFt / FEET_PER_DEGREE;
      const wideDeg = highDeg / Math.cos((end.latitudeDeg * Math.PI) / 180);
      let best: { readonly offFt: number; readonly share: number; readonly number: number } | null = null;
      for (const number of index.search(
        end.longitudeDeg - wideDeg,
        end.latitudeDeg - highDeg,
        end.longitudeDeg + wideDeg,
        end.latitudeDeg + highDeg,
      )) {
        const piece = pieces[number];
        if (!piece || piece.line === line) continue;
        const near = nearestOnPiece(end, piece);
        if (near.offFt <= lookWithinFt && (!best || near.offFt < best.offFt)) best = { ...near, number };
      }
      const piece = best && pieces[best.number];
      if (!best || !piece) continue;
      ends.push({ row: rowOf(line), otherRow: rowOf(piece.line), at: end, offFt: best.offFt });
      cuts.push({
        line: piece.line,
        piece: piece.piece,
        share: best.share,
        at: end,
        why: 'end',
        offFt: best.offFt,
      });
    }
  return {
    crossings,
    ends,
    joined: (what) =>
      withCuts(
        lines,
        cuts.filter(({ why, offFt }) => (why === 'crossing' ? what.crossings : offFt <= what.endsWithinFt)),
      ),
  };
}

/** The lines with a further position at each cut. */
function withCuts(lines: readonly StreetLine[], cuts: readonly Cut[]): readonly StreetLine[] {
  const byLine = Map.groupBy(cuts, ({ line }) => line);
  return lines.map((street, line) => {
    const own = byLine.get(line)?.toSorted((a, b) => a.piece - b.piece || a.share - b.share);
    if (!own) return street;
    const places: number[] = [];
    let next = 0;
    for (let at = 0; at < street.places.length; at += 2) {
      places.push(street.places[at] ?? 0, street.places[at + 1] ?? 0);
      for (let cut = own[next]; cut?.piece === at / 2; cut = own[next]) {
        places.push(cut.at.longitudeDeg, cut.at.latitudeDeg);
        next += 1;
      }
    }
    return { ...street, places };
  });
}
