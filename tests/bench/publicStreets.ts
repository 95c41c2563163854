import { buildEdition } from '../../shared/public/build.ts';
import { pointsFromBytes, pointsToBytes } from '../../shared/layers/coverPoints.ts';
import { buildStreets } from '../../shared/streets/build.ts';
import { layOut } from '../../shared/streets/network.ts';
import { streetWalk } from '../../shared/streets/walk.ts';
import { townNow, townSettings } from '../support/town.ts';
import type { BenchRow } from './row.ts';
import { cityWith, HYDRANTS, OUT } from './support/city.ts';

/** Addresses between one corner and the next: a million in all. */
const ADDRESSES = 4;

/** The streets on which the invented city's hydrants stand (`townHydrants`), and addresses along them. */
function layers() {
  const columns = Math.ceil(Math.sqrt(HYDRANTS * 1.5));
  const rows = Math.ceil(HYDRANTS / columns);
  const corner = (column: number, row: number): readonly [number, number] => [
    -98.4 + column * 0.00142,
    39.2 + row * 0.00115 + Math.sin(column / 4) * 0.0012,
  ];
  const across = Array.from({ length: columns }, (_, column) => column);
  const down = Array.from({ length: rows }, (_, row) => row);
  const lines = [
    ...down.map((row) => across.flatMap((column) => corner(column, row))),
    ...across.map((column) => down.flatMap((row) => corner(column, row))),
  ].map((places, index) => ({ row: index + 1, level: 0, places }));
  const network = layOut(buildStreets(lines, 300).streets);
  if (!network) throw new Error('no streets');
  const addresses = down.flatMap((row) =>
    across.flatMap((column) =>
      Array.from({ length: ADDRESSES }, (_, at) => corner(column + (at + 1) / 5, row)).flat(),
    ),
  );
  return { streets: streetWalk(network), mustCover: pointsFromBytes(pointsToBytes(addresses)) };
}

/**
 * The same city as `publicScale` with a million addresses and half a million streets loaded: what it costs to say all
 * distances along streets and to look for cover at every address, in the processor's own time.
 */
export function bench(): BenchRow[] {
  const city = cityWith(OUT);
  const { streets, mustCover } = layers();
  const cpuOf = (sources: typeof city): number => {
    // The second time: hydrants have been placed on their streets, as in a function that is kept warm.
    const compute = () => buildEdition(sources, townSettings, townNow.toISOString());
    compute();
    const before = process.cpuUsage();
    compute();
    const { user, system } = process.cpuUsage(before);
    return (user + system) / 1e6;
  };
  const plain = { name: 'straight lines, on a grid', value: cpuOf(city) };
  const row = (name: string, value: number): BenchRow => ({ name, value, unit: 's', beside: plain });
  return [
    row('a city: snapshot and cover at addresses, processor', cpuOf({ ...city, mustCover })),
    row('a city: along streets, on a grid, processor', cpuOf({ ...city, streets })),
    row('a city: along streets, at addresses, processor', cpuOf({ ...city, streets, mustCover })),
  ];
}
