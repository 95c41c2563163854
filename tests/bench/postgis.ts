import { performance } from 'node:perf_hooks';
import {
  nearestIndex,
  nearestInService,
  type Findable,
  type Neighbour,
} from '../../shared/nearest/nearest.ts';
import { greatCircleFt, type Position } from '../../shared/nearest/sphere.ts';
import type { BenchRow, LeftOut } from './row.ts';
import { seeded } from './support/inventoryFile.ts';
import { postgisServer, type PostgisServer } from './support/postgis.ts';

const HYDRANTS = 250_000;
const OUTAGES = 1000;
const NEIGHBOURS = 3;
/** So many of the outages are searched the plain way, which takes long. */
const PART = 10;
/** One hydrant in a hundred is out, as in a bad winter. */
const outEvery = 100;

/**
 * `npm run bench -- postgis`: the nearest search beside the nearest-neighbour index of PostGIS (`<->` on geography,
 * GiST) and beside looking at every hydrant, on the same hydrants in the same run. Where PostGIS is not installed it says so and measures nothing.
 */
export async function bench(): Promise<BenchRow[] | LeftOut> {
  const server = await postgisServer();
  if (server === null)
    return { leftOut: 'PostGIS is not installed (Debian: postgresql and postgresql-15-postgis-3)' };
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
  const plain = outages.slice(0, PART).map((outage) => everyOne(hydrants, outage, inService));
  const looked = performance.now();
  plain.forEach((ids, outage) => {
    if (ids.join(' ') !== idsOf(found[outage]))
      throw new Error(`another is nearer to outage ${outage} when every hydrant is looked at`);
  });

  await load(server, hydrants, outages, inService);
  const indexing = performance.now();
  await server.run('create index on hydrants using gist (place); analyze hydrants;');
  const indexed = performance.now();
  const theirs = await search(server);
  outages.forEach((_, outage) => {
    if (theirs.found.get(outage) !== idsOf(found[outage]))
      throw new Error(`PostGIS finds others near outage ${outage}`);
  });
  return [
    {
      name: `nearest ${NEIGHBOURS} in service, ${OUTAGES} outages, ${HYDRANTS} hydrants`,
      value: searched - built,
      unit: 'ms',
      beside: { name: 'PostGIS, in the server', value: theirs.ms },
    },
    {
      name: 'the same',
      value: searched - built,
      unit: 'ms',
      beside: {
        name: `every hydrant looked at, ${PART} × ${OUTAGES / PART}`,
        value: (looked - searched) * (OUTAGES / PART),
      },
    },
    {
      name: `index of ${HYDRANTS} hydrants`,
      value: built - building,
      unit: 'ms',
      beside: { name: 'PostGIS, GiST', value: indexed - indexing },
    },
  ];
}

const idsOf = (found: readonly Neighbour[] | undefined): string =>
  (found ?? []).map(({ hydrant }) => hydrant.hydrantId).join(' ');

/** What anybody would write first: the distance to every hydrant, and the least of them. */
function everyOne(
  hydrants: readonly Findable[],
  outage: Position,
  inService: (hydrant: Findable) => boolean,
): readonly string[] {
  return hydrants
    .filter(inService)
    .map((hydrant) => ({ id: hydrant.hydrantId, ft: greatCircleFt(outage, hydrant) }))
    .sort((a, b) => a.ft - b.ft)
    .slice(0, NEIGHBOURS)
    .map(({ id }) => id);
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
