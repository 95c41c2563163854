import { performance } from 'node:perf_hooks';
import { UndirectedGraph } from 'graphology';
import { dijkstra } from 'graphology-shortest-path';
import type { StreetLine } from '../../shared/layers/lines.ts';
import { greatCircleFt, type Position } from '../../shared/nearest/sphere.ts';
import { nearestIndex } from '../../shared/nearest/nearest.ts';
import { hydrantsWithin } from '../../shared/nearest/within.ts';
import { buildStreets } from '../../shared/streets/build.ts';
import { streetsFromBytes, streetsToBytes } from '../../shared/streets/file.ts';
import { layOut } from '../../shared/streets/network.ts';
import { streetWalk } from '../../shared/streets/walk.ts';
import type { BenchRow } from './row.ts';
import { seeded } from './support/inventoryFile.ts';

/** A city of blocks of 400 ft: half a million streets, a hydrant at each corner. */
const SIDE = 500;
const [STEP_X, STEP_Y] = [0.00142, 0.0011];
const OUTAGES = 2000;
const FT = 1000;
/** So many of the outages are asked of the general library, whose search of each takes long. */
const PART = 40;

const corner = (column: number, row: number): readonly [number, number] => [
  Number((-75 + column * STEP_X).toFixed(7)),
  Number((40 + row * STEP_Y).toFixed(7)),
];

/** `npm run bench -- streets`: ways along the streets of a city to everything around 2,000 outages, beside a general graph library. */
export function bench(): BenchRow[] {
  const random = seeded(3);
  const along = Array.from({ length: SIDE }, (_, at) => at);
  const lines: StreetLine[] = along.flatMap((each) => [
    { row: 2 * each + 1, level: 0, places: along.flatMap((column) => corner(column, each)) },
    { row: 2 * each + 2, level: 0, places: along.flatMap((row) => corner(each, row)) },
  ]);
  const hydrants = along.flatMap((row) =>
    along.map((column) => {
      const [longitudeDeg, latitudeDeg] = corner(column, row);
      return { hydrantId: `H-${row * SIDE + column}`, longitudeDeg, latitudeDeg };
    }),
  );
  const index = nearestIndex(hydrants);
  const outages = Array.from(
    { length: OUTAGES },
    () => hydrants[Math.floor(random() * hydrants.length)] ?? hydrants[0],
  ).filter((outage) => outage !== undefined);

  const bytes = streetsToBytes(buildStreets(lines, 300).streets);
  const reading = performance.now();
  const network = layOut(streetsFromBytes(bytes));
  if (!network) throw new Error('no streets');
  const read = performance.now();
  const walk = streetWalk(network);
  const ours = outages.map((outage) =>
    hydrantsWithin(index, outage, FT).map(({ hydrant }) => walk.walkFt(outage, hydrant, FT)),
  );
  const walked = performance.now();

  const graph = graphOf(lines);
  const plainFrom = performance.now();
  for (const [number, outage] of outages.slice(0, PART).entries())
    for (const [rank, { hydrant }] of hydrantsWithin(index, outage, FT).entries()) {
      const way: readonly string[] = dijkstra.bidirectional(graph, keyOf(outage), keyOf(hydrant), 'ft');
      const feet = way.slice(1).reduce((sum, node, at) => {
        const piece: unknown = graph.getEdgeAttribute(way[at] ?? '', node, 'ft');
        return sum + Number(piece);
      }, 0);
      const own = ours[number]?.[rank] ?? null;
      if (own === null ? feet < FT : Math.abs(own - feet) > 0.01)
        throw new Error(
          `the library walks ${feet} ft from ${outage.hydrantId} to ${hydrant.hydrantId}, not ${own}`,
        );
    }
  const plainMs = (performance.now() - plainFrom) * (OUTAGES / PART);
  const pairs = ours.reduce((sum, { length }) => sum + length, 0);
  return [
    {
      name: `${pairs} ways from ${OUTAGES} outages, ${network.streets.fromNode.length} streets`,
      value: walked - read,
      unit: 'ms',
      beside: { name: 'graphology dijkstra, each pair', value: plainMs },
    },
    { name: 'streets read and laid out', value: read - reading, unit: 'ms' },
  ];
}

const keyOf = ({ longitudeDeg, latitudeDeg }: Position): string => `${longitudeDeg},${latitudeDeg}`;

function graphOf(lines: readonly StreetLine[]): UndirectedGraph {
  const graph = new UndirectedGraph();
  for (const { places } of lines)
    for (let at = 2; at < places.length; at += 2) {
      const a = { longitudeDeg: places[at - 2] ?? 0, latitudeDeg: places[at - 1] ?? 0 };
      const b = { longitudeDeg: places[at] ?? 0, latitudeDeg: places[at + 1] ?? 0 };
      graph.mergeNode(keyOf(a));
      graph.mergeNode(keyOf(b));
      graph.mergeEdge(keyOf(a), keyOf(b), { ft: greatCircleFt(a, b) });
    }
  return graph;
}
