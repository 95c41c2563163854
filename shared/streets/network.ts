import Flatbush from 'flatbush';
import { FEET_PER_DEGREE, greatCircleFt, type Position } from '../nearest/sphere.ts';
import { nearestOnPiece } from './plane.ts';
import { PER_DEGREE, type Streets } from './streets.ts';

/** A street network laid out for walking. Made once for a load; a million positions take about 80 MB. */
export interface StreetNetwork {
  readonly streets: Streets;
  /** Length of each street, feet: the sum of the great circles between its positions. */
  readonly lengthFt: Float64Array;
  /** Feet from its street's beginning to each position. */
  readonly alongFt: Float64Array;
  /** Where the ways out of each node begin in `ways`; one more than there are nodes. */
  readonly waysFrom: Uint32Array;
  /** Streets, out of each node in turn. */
  readonly ways: Uint32Array;
  /** The pieces between two positions; `pieceAt` is the position where a piece begins, `pieceStreet` its street. */
  readonly index: Flatbush;
  readonly pieceAt: Uint32Array;
  readonly pieceStreet: Uint32Array;
}

/** Where something stands on the network. */
export interface Snap {
  readonly street: number;
  /** Feet from the street's beginning. */
  readonly alongFt: number;
  /** Feet from the place to the street. */
  readonly offFt: number;
}

/** Lays out a network; null for one without streets, which no index can hold. */
export function layOut(streets: Streets): StreetNetwork | null {
  const { shapes, shapeFrom, fromNode, toNode, nodes } = streets;
  const count = fromNode.length;
  if (count === 0) return null;
  const positions = shapes.length / 2;
  const alongFt = new Float64Array(positions);
  const lengthFt = new Float64Array(count);
  const pieceAt = new Uint32Array(positions - count);
  const pieceStreet = new Uint32Array(positions - count);
  const index = new Flatbush(positions - count);
  let piece = 0;
  for (let street = 0; street < count; street += 1) {
    const [first = 0, end = 0] = [shapeFrom[street], shapeFrom[street + 1]];
    let along = 0;
    for (let at = first; at < end - 1; at += 1) {
      const [here, next] = [placeOf(streets, at), placeOf(streets, at + 1)];
      along += greatCircleFt(here, next);
      alongFt[at + 1] = along;
      pieceAt[piece] = at;
      pieceStreet[piece] = street;
      piece += 1;
      index.add(
        Math.min(here.longitudeDeg, next.longitudeDeg),
        Math.min(here.latitudeDeg, next.latitudeDeg),
        Math.max(here.longitudeDeg, next.longitudeDeg),
        Math.max(here.latitudeDeg, next.latitudeDeg),
      );
    }
    lengthFt[street] = along;
  }
  index.finish();

  const waysFrom = new Uint32Array(nodes + 1);
  for (const ends of [fromNode, toNode])
    for (const node of ends) waysFrom[node + 1] = (waysFrom[node + 1] ?? 0) + 1;
  for (let node = 0; node < nodes; node += 1)
    waysFrom[node + 1] = (waysFrom[node + 1] ?? 0) + (waysFrom[node] ?? 0);
  const filled = waysFrom.slice(0, nodes);
  const ways = new Uint32Array(2 * count);
  for (const ends of [fromNode, toNode])
    for (const [street, node] of ends.entries()) {
      const place = filled[node] ?? 0;
      ways[place] = street;
      filled[node] = place + 1;
    }
  return { streets, lengthFt, alongFt, waysFrom, ways, index, pieceAt, pieceStreet };
}

function placeOf({ shapes }: Streets, at: number): Position {
  return {
    longitudeDeg: (shapes[2 * at] ?? 0) / PER_DEGREE,
    latitudeDeg: (shapes[2 * at + 1] ?? 0) / PER_DEGREE,
  };
}

/** The place on the nearest street, or null where none is within the network's `snapFt`. */
export function snapTo(
  { streets, alongFt, lengthFt, index, pieceAt, pieceStreet }: StreetNetwork,
  point: Position,
): Snap | null {
  const { snapFt } = streets;
  const high = snapFt / FEET_PER_DEGREE;
  const wide = high / Math.cos((point.latitudeDeg * Math.PI) / 180);
  const { longitudeDeg, latitudeDeg } = point;
  let best: Snap | null = null;
  for (const piece of index.search(
    longitudeDeg - wide,
    latitudeDeg - high,
    longitudeDeg + wide,
    latitudeDeg + high,
  )) {
    const at = pieceAt[piece] ?? 0;
    const [here, next] = [placeOf(streets, at), placeOf(streets, at + 1)];
    const { offFt, share } = nearestOnPiece(point, {
      x0: here.longitudeDeg,
      y0: here.latitudeDeg,
      x1: next.longitudeDeg,
      y1: next.latitudeDeg,
    });
    if (offFt > snapFt || (best && offFt >= best.offFt)) continue;
    const street = pieceStreet[piece] ?? 0;
    const start = alongFt[at] ?? 0;
    const along = start + share * ((alongFt[at + 1] ?? start) - start);
    best = { street, alongFt: Math.min(along, lengthFt[street] ?? 0), offFt };
  }
  return best;
}
