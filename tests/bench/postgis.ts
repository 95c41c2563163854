import { performance } from 'node:perf_hooks';
import { nearestIndex, nearestInService, type Findable } from '../../shared/nearest/nearest.ts';
import type { Position } from '../../shared/nearest/sphere.ts';
import type { BenchRow } from './row.ts';
import { seeded } from './support/inventoryFile.ts';
import { postgisServer, type PostgisServer } from './support/postgis.ts';

const HYDRANTS = 250_000;
const OUTAGES = 1000;
const NEIGHBOURS = 3;
/** One hydrant in a hundred is out, as in a bad winter. */
const outEvery = 100;

/**
 * `npm run bench -- postgis`: the nearest search beside the nearest-neighbour index of PostGIS (`<->` on geography,
 * GiST), on the same hydrants in the same run. Where PostGIS is not installed it says so and measures nothing.
 */
export async function bench(): Promise<BenchRow[]> {
  const server = await postgisServer();
  if (server === null) {
    console.error(
      'postgis: left out, because it is not installed (Debian: postgresql and postgresql-15-postgis-3)',
    );
    return [];
  }
  try {
    return await beside(server);
  } finally {
    await server.close();
  }
}

async function beside(server: PostgisServer): Promise<BenchRow[]> {
  const random = seeded(1);
  const somewhere = (): Position => ({
    latitudeDeg: 40 + random() * 0.4,
    longitudeDeg: -75.3 + random() * 0.4,
  });
  const hydrants = Array.from({ length: HYDRANTS }, (_, row) => ({ hydrantId: `H-${row}`, ...somewhere() }));
  const outages = Array.from({ length: OUTAGES }, somewhere);
  const inService = ({ hydrantId }: Findable): boolean => Number(hydrantId.slice(2)) % outEvery !== 0;

  const building = performance.now();
  const index = nearestIndex(hydrants);
  const built = performance.now();
  const found = outages.map((outage) => nearestInService(index, outage, NEIGHBOURS, inService));
  const searched = performance.now();

  await load(server, hydrants, outages, inService);
  const indexing = performance.now();
  await server.run('create index on hydrants using gist (place); analyze hydrants;');
  const indexed = performance.now();
  const theirs = await search(server);
  outages.forEach((_, outage) => {
    const ours = found[outage]?.map(({ hydrant }) => hydrant.hydrantId).join(' ');
    if (theirs.found.get(outage) !== ours) throw new Error(`PostGIS finds others near outage ${outage}`);
  });
  return [
    {
      name: `nearest ${NEIGHBOURS} in service, ${OUTAGES} outages, ${HYDRANTS} hydrants`,
      value: searched - built,
      unit: 'ms',
      beside: { name: 'PostGIS, in the server', value: theirs.ms },
    },
    {
      name: `index of ${HYDRANTS} hydrants`,
      value: built - building,
      unit: 'ms',
      beside: { name: 'PostGIS, GiST', value: indexed - indexing },
    },
  ];
}

async function load(
  server: PostgisServer,
  hydrants: readonly Findable[],
  outages: readonly Position[],
  inService: (hydrant: Findable) => boolean,
): Promise<void> {
  const point = ({ longitudeDeg, latitudeDeg }: Position): string =>
    `SRID=4326;POINT(${longitudeDeg} ${latitudeDeg})`;
  await server.run(
    [
      'create extension postgis;',
      'create table hydrants (id text, serves boolean, place geography(point, 4326));',
      'create table outages (id int, place geography(point, 4326));',
      'copy hydrants from stdin;',
      ...hydrants.map((one) => `${one.hydrantId}\t${inService(one)}\t${point(one)}`),
      '\\.',
      'copy outages from stdin;',
      ...outages.map((one, id) => `${id}\t${point(one)}`),
      '\\.',
      '',
    ].join('\n'),
  );
}

/** One statement for all outages: no way to and fro is counted, which is the most that can be said for it. */
async function search(
  server: PostgisServer,
): Promise<{ readonly ms: number; readonly found: Map<number, string> }> {
  const text = await server.run(
    [
      'create table timing (at timestamptz);',
      'insert into timing values (clock_timestamp());',
      'create table answers as select o.id, n.id as hydrant, n.away from outages o cross join lateral',
      `(select h.id, h.place <-> o.place as away from hydrants h where h.serves order by 2 limit ${NEIGHBOURS}) n;`,
      'select extract(epoch from clock_timestamp() - at) * 1000 from timing;',
      "select id, string_agg(hydrant, ' ' order by away) from answers group by id;",
    ].join('\n'),
  );
  const [ms = '', ...lines] = text.trim().split('\n');
  const rows = lines.map((line) => line.split('\t'));
  return { ms: Number(ms), found: new Map(rows.map(([id, ids = '']) => [Number(id), ids])) };
}
