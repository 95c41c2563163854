import { writeFile } from 'node:fs/promises';
import { measuredFile, type Measurements } from '../../infra/aws/costs/measured.ts';
import { memoryMb } from '../../infra/aws/memory.ts';
import { routes } from '../../shared/deployment/routes.ts';
import { partitions } from '../../shared/projections/items.ts';
import { streamOf } from '../../shared/submissions/envelope.ts';
import type { BenchRow } from './row.ts';
import { allItems, type KeptItem } from './support/keptBytes.ts';
import { charge, meteredWorld, type MeteredWorld } from './support/meteredWorld.ts';
import { publishedAt, publishingOf } from './support/publishing.ts';
import { together, type Spent } from './support/spent.ts';
import { foundTown, liveStrike, type Life } from './support/strikeLife.ts';

/** Publishing for a large utility alone takes minutes where others work beside it. */
export const limitS = 1200;

/** Of the sizes that the page of costs reckons for, with the strikes of one year; one of them with six years' more. */
const utilities = [
  { hydrants: 500, out: 1, past: 20 },
  { hydrants: 60_000, out: 40, past: 800 },
  { hydrants: 60_000, out: 40, past: 5_600 },
  { hydrants: 250_000, out: 200, past: 4_000 },
];

const plain = (of: ReadonlyMap<string, Spent>): Record<string, Spent> => Object.fromEntries(of);

/** Asks once for everything that a screen asks for. */
async function view(world: MeteredWorld, life: Life): Promise<Map<string, Spent>> {
  const views = new Map<string, Spent>();
  const values: Record<string, string> = {
    '{strikeId}': life.strikeId,
    '{hydrantId}': 'TH-0071',
    '{claimId}': life.claimId,
    '{letter}': 'follow-up',
  };
  const questions: Record<string, string> = { '/api/hydrants': '?find=TH-0071' };
  // Of a network model nothing is loaded, a photo's address is asked for by its hash, and a job is over.
  const left = /network|evidence|packet-jobs|\{file\}/;
  for (const { method, path, family } of routes) {
    if (method !== 'GET' || left.test(path)) continue;
    const filled = path.replaceAll(/\{\w+\}/g, (name) => values[name] ?? name);
    charge(views, family, (await world.ask('GET', filled + (questions[path] ?? ''))).spent);
  }
  charge(views, 'records', (await world.ask('POST', '/api/search', { find: 'TNS 1185' })).spent);
  return views;
}

async function tick(world: MeteredWorld): Promise<Map<string, Spent>> {
  const ticks = new Map<string, Spent>();
  for (const name of ['dispatchSend', 'outgoing', 'digest'] as const) {
    // What a first waking has to do once is not what one costs.
    await world.call(name, {});
    charge(ticks, name, (await world.call(name, {})).spent);
  }
  return ticks;
}

const sum = (items: readonly KeptItem[]): number => items.reduce((total, { bytes }) => total + bytes, 0);

/** What the tables hold more than before. */
function keptOf(before: readonly KeptItem[], after: readonly KeptItem[], life: Life): Measurements['kept'] {
  const published: readonly string[] = [partitions.strike, partitions.hydrant, partitions.claim];
  const stream = streamOf({ type: 'strike', strikeId: life.strikeId });
  return {
    tables: Object.fromEntries(
      [...Map.groupBy(after, ({ table }) => table)].map(([table, items]) => [
        table,
        sum(items) - sum(before.filter((one) => one.table === table)),
      ]),
    ),
    publishedRows: sum(
      after.filter(
        ({ table, item }) => table === 'projections' && published.includes(item['partition']?.S ?? ''),
      ),
    ),
    strikeStream: sum(
      after.filter(({ table, item }) => table === 'submissions' && item['stream']?.S === stream),
    ),
  };
}

/**
 * `npm run bench -- capacity`: the life of one strike, told to the deployed functions, in the units in which it is billed.
 * With `UPDATE_DOCS=1` it writes what the page of costs is reckoned from.
 */
export async function bench(): Promise<readonly BenchRow[]> {
  const world = await meteredWorld();
  let measured: Measurements;
  try {
    await foundTown(world);
    const before = await allItems(world.dynamodb);
    const life = await liveStrike(world);
    const kept = keptOf(before, await allItems(world.dynamodb), life);
    const views = await view(world, life);
    const ticks = await tick(world);
    const publishing: Measurements['publishing'] = [];
    for (const utility of utilities) {
      const { cpuMs, puts, gets, putBytes } = await publishingOf(utility);
      publishing.push({
        hydrants: utility.hydrants,
        events: utility.out + utility.past,
        cpuMs,
        puts,
        gets,
        putBytes,
      });
    }
    measured = {
      measuredOn: new Date().toISOString().slice(0, 10),
      submissionsAStrike: life.submissions,
      photosAStrike: life.photos,
      life: plain(life.byFunction),
      views: plain(views),
      ticks: plain(ticks),
      functions: world.functions(),
      kept,
      measuredAt: publishedAt,
      publishing,
    };
  } finally {
    await world.close();
  }
  if (process.env['UPDATE_DOCS'] === '1')
    await writeFile(measuredFile, `${JSON.stringify(rounded(measured), null, 2)}\n`);
  return rowsOf(measured);
}

/** To three places: more is noise. */
const rounded = (of: unknown): unknown =>
  JSON.parse(JSON.stringify(of), (_, value: unknown) =>
    typeof value === 'number' ? Number(value.toFixed(3)) : value,
  );

function rowsOf({ life, views, ticks, functions, kept, publishing, ...measured }: Measurements): BenchRow[] {
  const whole = together(Object.values(life));
  const tables = Object.values(kept.tables).reduce((total, bytes) => total + bytes, 0);
  const per = { name: 'submissions', value: measured.submissionsAStrike };
  return [
    { name: 'a strike’s life: written', value: whole.writeUnits, unit: 'write units', beside: per },
    { name: 'a strike’s life: read', value: whole.readUnits, unit: 'read units', beside: per },
    { name: 'a strike’s life: objects put', value: whole.puts + whole.lists, unit: 'requests', beside: per },
    { name: 'a strike’s life: objects got', value: whole.gets, unit: 'requests', beside: per },
    { name: 'a strike’s life: kept in tables', value: tables / 1000, unit: 'kB' },
    ...Object.entries(life).map(([name, { calls, cpuMs }]) => ({
      name: `${name}: processor a call`,
      value: cpuMs / calls,
      unit: 'ms',
      beside: { name: 'to start', value: functions[name]?.loadedCpuMs ?? Number.NaN },
    })),
    ...Object.entries(functions).map(([name, { peakMb }]) => ({
      name: `${name}: most memory`,
      value: peakMb,
      unit: 'MB',
      beside: { name: 'it gets', value: memoryMb[name as keyof typeof memoryMb] },
    })),
    ...[['every screen once', views] as const, ['what the clock wakes, once', ticks] as const].map(
      ([name, of]) => ({
        name: `${name}: read`,
        value: together(Object.values(of)).readUnits,
        unit: 'read units',
      }),
    ),
    ...publishing.map(({ hydrants, events, puts }) => ({
      name: `published again, ${hydrants} hydrants, ${events} with a page`,
      value: puts,
      unit: 'files written',
      beside: { name: 'with a page', value: events },
    })),
  ];
}
