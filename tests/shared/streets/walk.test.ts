import geodesic from 'geographiclib-geodesic';
import { UndirectedGraph } from 'graphology';
import { dijkstra } from 'graphology-shortest-path';
import { describe, expect, it } from 'vitest';
import type { StreetLine } from '../../../shared/layers/lines.ts';
import { greatCircleFt, type Position } from '../../../shared/nearest/sphere.ts';
import { buildStreets } from '../../../shared/streets/build.ts';
import { streetsFromBytes, streetsToBytes } from '../../../shared/streets/file.ts';
import { layOut, snapTo, type StreetNetwork } from '../../../shared/streets/network.ts';
import { streetWalk, type StreetWalk } from '../../../shared/streets/walk.ts';
import { seeded } from '../../support/seeded.ts';
import { positionOf, randomTown, type Place } from './town.ts';

const networkOf = (lines: readonly StreetLine[], snapFt = 300): StreetNetwork => {
  // By way of the file, so that what is walked is what is kept.
  const network = layOut(streetsFromBytes(streetsToBytes(buildStreets(lines, snapFt).streets)));
  if (!network) throw new Error('no streets');
  return network;
};
const walkOf = (lines: readonly StreetLine[], snapFt?: number): StreetWalk =>
  streetWalk(networkOf(lines, snapFt));

const { WGS84 } = geodesic.Geodesic;
/** On the ellipsoid, by C. F. F. Karney's method, whose authors' own library this is. */
const ellipsoidFt = (a: Position, b: Position): number =>
  (WGS84.Inverse(a.latitudeDeg, a.longitudeDeg, b.latitudeDeg, b.longitudeDeg).s12 ?? NaN) / 0.3048;

/** The lines as a graph of a general library: a node for each position, an edge for each piece. */
function graphOf(
  lines: readonly StreetLine[],
  lengthFt: (a: Position, b: Position) => number,
): UndirectedGraph {
  const graph = new UndirectedGraph();
  const key = ({ longitudeDeg, latitudeDeg }: Position): string =>
    `${longitudeDeg.toFixed(7)},${latitudeDeg.toFixed(7)}`;
  for (const { places } of lines)
    for (let at = 2; at < places.length; at += 2) {
      const a = { longitudeDeg: places[at - 2] ?? 0, latitudeDeg: places[at - 1] ?? 0 };
      const b = { longitudeDeg: places[at] ?? 0, latitudeDeg: places[at + 1] ?? 0 };
      graph.mergeNode(key(a));
      graph.mergeNode(key(b));
      graph.mergeEdge(key(a), key(b), { ft: lengthFt(a, b) });
    }
  return graph;
}
const keyOf = ([longitude, latitude]: Place): string => `${longitude.toFixed(7)},${latitude.toFixed(7)}`;

/** A general library's answer, feet; null where there is no way. */
function libraryFt(graph: UndirectedGraph, from: Place, to: Place): number | null {
  if (!graph.hasNode(keyOf(from)) || !graph.hasNode(keyOf(to))) return null;
  const way = dijkstra.bidirectional(graph, keyOf(from), keyOf(to), 'ft') as string[] | null;
  if (!way) return null;
  return way.slice(1).reduce((sum, node, index) => {
    const attribute = graph.getEdgeAttribute(way[index] ?? '', node, 'ft') as number;
    return sum + attribute;
  }, 0);
}

describe('shortest ways, beside those of graphology-shortest-path 2.1.0', () => {
  it.each([1, 2, 3, 4, 5])('from corner to corner of a random town (seed %d)', (seed) => {
    const { lines, corners } = randomTown(seed, 7, 6);
    const graph = graphOf(lines, greatCircleFt);
    const walk = walkOf(lines, 1);
    let [walked, none] = [0, 0];
    for (const from of corners)
      for (const to of corners) {
        const theirs = libraryFt(graph, from, to);
        const ours = walk.walkFt(positionOf(from), positionOf(to), 20_000);
        if (theirs === null) {
          // A corner that every street left out stands on no street, and two of them at no distance from themselves.
          none += 1;
          if (keyOf(from) !== keyOf(to) || !graph.hasNode(keyOf(from))) expect(ours).toBeNull();
          continue;
        }
        walked += 1;
        // Corners have seven decimals and so has the network: what differs is the order of adding up.
        expect(ours).toBeCloseTo(theirs, 6);
      }
    expect(walked).toBeGreaterThan(1000);
    expect(none).toBeLessThan(walked);
  });

  it('are within 0.6 % of the same ways on the ellipsoid (geographiclib-geodesic 2.2.0)', () => {
    const { lines, corners } = randomTown(6, 7, 6);
    const graph = graphOf(lines, ellipsoidFt);
    const walk = walkOf(lines, 1);
    const from = corners.find((corner) => graph.hasNode(keyOf(corner))) ?? [0, 0];
    let compared = 0;
    for (const to of corners) {
      const theirs = libraryFt(graph, from, to);
      if (theirs === null || theirs === 0) continue;
      compared += 1;
      const ours = walk.walkFt(positionOf(from), positionOf(to), 20_000) ?? NaN;
      expect(Math.abs(ours / theirs - 1)).toBeLessThan(0.006);
    }
    expect(compared).toBeGreaterThan(20);
  });
});

describe('from and to anywhere beside the streets, by Floyd and Warshall on every pair', () => {
  it.each([11, 12, 13])('a random town with places on both sides of the streets (seed %d)', (seed) => {
    const { lines } = randomTown(seed, 4, 4);
    const roll = seeded(seed);
    const places: Position[] = Array.from({ length: 12 }, () => ({
      longitudeDeg: -60.4 + roll() * 0.0045,
      latitudeDeg: 40.6 + roll() * 0.0045,
    }));
    const network = networkOf(lines, 400);
    const snapped = places.map((place) => snapTo(network, place));
    const walk = streetWalk(network);

    // Every position and every place's foot is a node; a piece is cut at the feet that stand on it.
    const nodes: Position[] = [];
    const nodeOf = (position: Position): number => {
      const found = nodes.findIndex(
        ({ longitudeDeg, latitudeDeg }) =>
          Math.abs(longitudeDeg - position.longitudeDeg) < 1e-12 &&
          Math.abs(latitudeDeg - position.latitudeDeg) < 1e-12,
      );
      return found >= 0 ? found : nodes.push(position) - 1;
    };
    const edges: [number, number, number][] = [];
    const feet = new Map<number, Position>();
    for (const { places: line } of lines)
      for (let at = 2; at < line.length; at += 2) {
        const a = { longitudeDeg: line[at - 2] ?? 0, latitudeDeg: line[at - 1] ?? 0 };
        const b = { longitudeDeg: line[at] ?? 0, latitudeDeg: line[at + 1] ?? 0 };
        for (const [number, place] of places.entries()) {
          // The nearest of a thousand places along each piece: an inch or two from the true foot.
          for (let step = 0; step <= 1000; step += 1) {
            const on = {
              longitudeDeg: a.longitudeDeg + ((b.longitudeDeg - a.longitudeDeg) * step) / 1000,
              latitudeDeg: a.latitudeDeg + ((b.latitudeDeg - a.latitudeDeg) * step) / 1000,
            };
            const best = feet.get(number);
            if (!best || greatCircleFt(place, on) < greatCircleFt(place, best)) feet.set(number, on);
          }
        }
        edges.push([nodeOf(a), nodeOf(b), greatCircleFt(a, b)]);
      }
    for (const foot of feet.values()) {
      const own = nodeOf(foot);
      for (const [from, to, ft] of [...edges]) {
        const [a, b] = [nodes[from], nodes[to]];
        if (!a || !b) continue;
        const [first, second] = [greatCircleFt(a, foot), greatCircleFt(foot, b)];
        if (Math.abs(first + second - ft) < 0.001) edges.push([from, own, first], [own, to, second]);
      }
    }
    const far = nodes.map(() => nodes.map(() => Infinity));
    nodes.forEach((_, node) => ((far[node] ?? [])[node] = 0));
    for (const [from, to, ft] of edges) {
      const [row, column] = [far[from] ?? [], far[to] ?? []];
      row[to] = Math.min(row[to] ?? Infinity, ft);
      column[from] = Math.min(column[from] ?? Infinity, ft);
    }
    for (const by of nodes.keys())
      for (const from of nodes.keys())
        for (const to of nodes.keys()) {
          const row = far[from] ?? [];
          row[to] = Math.min(row[to] ?? Infinity, (row[by] ?? Infinity) + (far[by]?.[to] ?? Infinity));
        }

    let compared = 0;
    for (const [one, from] of places.entries())
      for (const [other, to] of places.entries()) {
        if (one === other) continue;
        const [a, b] = [feet.get(one), feet.get(other)];
        if (!a || !b) continue;
        const [offA, offB] = [greatCircleFt(from, a), greatCircleFt(to, b)];
        const onStreets = far[nodeOf(a)]?.[nodeOf(b)] ?? Infinity;
        const theirs = Math.max(offA + onStreets + offB, greatCircleFt(from, to));
        const ours = walk.walkFt(from, to, 5000);
        if (snapped[one] === null || snapped[other] === null || theirs > 5000) {
          expect(ours).toBeNull();
          continue;
        }
        compared += 1;
        // A thousandth of a block is the step with which the brute way looks for feet.
        expect(Math.abs((ours ?? NaN) - theirs)).toBeLessThan(1);
      }
    expect(compared).toBeGreaterThan(40);
  });
});

describe('a way', () => {
  // One degree of latitude on the sphere is 364,813 ft: 0.001° is 364.8 ft.
  const street = (...places: Place[]): StreetLine => ({ row: 1, places: places.flat(), level: 0 });
  const at = (longitudeDeg: number, latitudeDeg: number): Position => ({ longitudeDeg, latitudeDeg });

  it('goes around a river that has one bridge, and straight along one street', () => {
    const west = street([-60, 40], [-60, 40.003]);
    const east = street([-59.9995, 40], [-59.9995, 40.003]);
    const bridge = street([-60, 40.003], [-59.9995, 40.003]);
    const walk = walkOf([west, east, bridge], 50);
    const across = greatCircleFt(at(-60, 40.003), at(-59.9995, 40.003));
    const up = greatCircleFt(at(-60, 40.001), at(-60, 40.003));
    expect(walk.walkFt(at(-60, 40.001), at(-59.9995, 40.001), 5000)).toBeCloseTo(2 * up + across, 1);
    expect(walk.walkFt(at(-60, 40.001), at(-60, 40.002), 5000)).toBeCloseTo(up / 2, 1);
    expect(walk.walkFt(at(-60, 40.001), at(-59.9995, 40.001), 1000)).toBeNull();
  });

  it('does not lead from one street to another that crosses it without a common position', () => {
    const lines = [street([-60, 40], [-60, 40.002]), street([-60.001, 40.001], [-59.999, 40.001])];
    expect(walkOf(lines, 50).walkFt(at(-60, 40.0015), at(-59.9995, 40.001), 5000)).toBeNull();
    const joined = [
      street([-60, 40], [-60, 40.001], [-60, 40.002]),
      street([-60.001, 40.001], [-60, 40.001], [-59.999, 40.001]),
    ];
    expect(walkOf(joined, 50).walkFt(at(-60, 40.0015), at(-59.9995, 40.001), 5000)).not.toBeNull();
  });

  it('is none from farther off every street than the layer says', () => {
    const walk = walkOf([street([-60, 40], [-60, 40.002])], 100);
    const off = (ft: number): Position => at(-60 + ft / (364_813 * Math.cos((40 * Math.PI) / 180)), 40.001);
    expect(walk.walkFt(off(95), at(-60, 40.001), 1000)).toBeCloseTo(95, 0);
    expect(walk.walkFt(off(105), at(-60, 40.001), 1000)).toBeNull();
    expect(walk.walkFt(at(-60, 40.001), off(105), 1000)).toBeNull();
    // 80 ft beyond the end of the street and 80 ft beside it: 113 ft by Pythagoras.
    const beyond = { ...off(80), latitudeDeg: 40.002 + 80 / 364_813 };
    expect(walk.walkFt(at(-60, 40.001), beyond, 1000)).toBeNull();
  });

  it('is the same both ways, and longer reaches are found after shorter ones from the same place', () => {
    const { lines, corners } = randomTown(21, 6, 6);
    const walk = walkOf(lines, 300);
    for (const from of corners.slice(0, 12))
      for (const to of corners) {
        const near = walk.walkFt(positionOf(from), positionOf(to), 1000);
        const far = walk.walkFt(positionOf(from), positionOf(to), 4000);
        if (near !== null) expect(near).toBe(far);
        else if (far !== null) expect(far).toBeGreaterThan(1000);
        const back = walk.walkFt(positionOf(to), positionOf(from), 4000);
        if (far === null) expect(back).toBeNull();
        else expect(back).toBeCloseTo(far, 6);
      }
  });
});
