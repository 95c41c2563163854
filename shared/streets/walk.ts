import FlatQueue from 'flatqueue';
import { FARTHEST_FT } from '../fireCover/distanceCredit.ts';
import { greatCircleFt, type Position } from '../nearest/sphere.ts';
import { snapTo, type Snap, type StreetNetwork } from './network.ts';

/** Shortest ways along the streets. Holds what it found from the last place asked of: ask all of one place, then the next. */
export interface StreetWalk {
  /** Feet from a place to another within `mostFt`, as the cover asks for (`WalkFt`); null where no street leads there. */
  readonly walkFt: (from: Position, to: Position, mostFt: number) => number | null;
}

/**
 * Shortest ways on a network, by Dijkstra's method (E. W. Dijkstra, "A note on two problems in connexion with graphs",
 * Numerische Mathematik 1, 1959) as far as is asked for. A way goes straight from the place to the nearest street, along
 * streets, and straight from the street to the hydrant; null where an end is farther from every street than the
 * network's `snapFt`. Never less than the straight line.
 */
export function streetWalk(network: StreetNetwork): StreetWalk {
  const { streets, lengthFt, waysFrom, ways } = network;
  const { fromNode, toNode, nodes } = streets;
  const distance = new Float64Array(nodes);
  /** The run in which a node was last reached: what an earlier run left there counts for nothing. */
  const reached = new Uint32Array(nodes);
  let run = 0;
  const queue = new FlatQueue();
  // Hydrants are the same objects from one publication to the next; where one stands is found once.
  const snaps = new WeakMap<Position, { readonly snap: Snap | null }>();
  let last: { readonly from: Position; readonly snap: Snap | null; readonly reachFt: number } | null = null;

  const reach = (node: number, feet: number, reachFt: number): void => {
    if (feet > reachFt || (reached[node] === run && (distance[node] ?? 0) <= feet)) return;
    reached[node] = run;
    distance[node] = feet;
    queue.push(node, feet);
  };

  function spread({ street, alongFt, offFt }: Snap, reachFt: number): void {
    run += 1;
    queue.clear();
    reach(fromNode[street] ?? 0, offFt + alongFt, reachFt);
    reach(toNode[street] ?? 0, offFt + (lengthFt[street] ?? 0) - alongFt, reachFt);
    for (let feet = queue.peekValue(); feet !== undefined; feet = queue.peekValue()) {
      const node = queue.pop() ?? 0;
      // A node that was reached by a shorter way in the meantime was passed on from there.
      if (feet > (distance[node] ?? 0)) continue;
      const end = waysFrom[node + 1] ?? 0;
      for (let way = waysFrom[node] ?? 0; way < end; way += 1) {
        const next = ways[way] ?? 0;
        const other = fromNode[next] === node ? (toNode[next] ?? 0) : (fromNode[next] ?? 0);
        reach(other, feet + (lengthFt[next] ?? 0), reachFt);
      }
    }
  }

  function snapOf(place: Position): Snap | null {
    let known = snaps.get(place);
    if (!known) snaps.set(place, (known = { snap: snapTo(network, place) }));
    return known.snap;
  }

  function startAt(from: Position, mostFt: number): Snap | null {
    const isLast =
      last !== null &&
      (last.from === from ||
        (last.from.latitudeDeg === from.latitudeDeg && last.from.longitudeDeg === from.longitudeDeg));
    if (last !== null && isLast && last.reachFt >= mostFt) return last.snap;
    const reachFt = Math.max(mostFt, FARTHEST_FT);
    const snap = last !== null && isLast ? last.snap : snapTo(network, from);
    if (snap) spread(snap, reachFt);
    last = { from, snap, reachFt };
    return snap;
  }

  const atNode = (node: number | undefined, further: number): number =>
    node !== undefined && reached[node] === run ? (distance[node] ?? 0) + further : Infinity;

  return {
    walkFt: (from, to, mostFt) => {
      const start = startAt(from, mostFt);
      const end = start && snapOf(to);
      if (!start || !end) return null;
      const { street, alongFt, offFt } = end;
      const alongOne = street === start.street ? start.offFt + Math.abs(alongFt - start.alongFt) : Infinity;
      const feet =
        offFt +
        Math.min(
          alongOne,
          atNode(fromNode[street], alongFt),
          atNode(toNode[street], (lengthFt[street] ?? 0) - alongFt),
        );
      return feet <= mostFt ? Math.max(feet, greatCircleFt(from, to)) : null;
    },
  };
}
