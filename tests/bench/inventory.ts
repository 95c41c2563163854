import { spawn } from 'node:child_process';
import { createReadStream } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { performance } from 'node:perf_hooks';
import geographiclib from 'geographiclib-geodesic';
import Papa from 'papaparse';
import { nearestIndex, nearestInService, type Findable } from '../../shared/nearest/nearest.ts';
import { greatCircleFt, type Position } from '../../shared/nearest/sphere.ts';
import type { BenchRow } from './row.ts';
import { seeded, writeInventoryCsv } from './support/inventoryFile.ts';

const HYDRANTS = 250_000;
const OUTAGES = 1000;
const NEIGHBOURS = 3;
/** One hydrant in a hundred is out, as in a bad winter. */
const outEvery = 100;

const inService = ({ hydrantId }: Findable): boolean => Number(hydrantId.slice(2)) % outEvery !== 0;

/** `npm run bench -- inventory`: the nearest search beside looking at every hydrant, and the import beside a bare parse. */
export async function bench(): Promise<BenchRow[]> {
  return [...nearest(), distances(), ...(await importing())];
}

function nearest(): BenchRow[] {
  const random = seeded(1);
  const somewhere = (): Position => ({
    latitudeDeg: 40 + random() * 0.4,
    longitudeDeg: -75.3 + random() * 0.4,
  });
  const hydrants = Array.from({ length: HYDRANTS }, (_, row) => ({ hydrantId: `H-${row}`, ...somewhere() }));
  const outages = Array.from({ length: OUTAGES }, somewhere);

  const building = performance.now();
  const index = nearestIndex(hydrants);
  const built = performance.now();
  const found = outages.map((outage) => nearestInService(index, outage, NEIGHBOURS, inService));
  const searched = performance.now();

  // Brute force on a part, because all of it takes a minute; the answers of that part must be the same.
  const part = outages.slice(0, OUTAGES / 20);
  const plainFrom = performance.now();
  const plain = part.map((outage) => bruteForce(hydrants, outage));
  const plainMs = (performance.now() - plainFrom) * (OUTAGES / part.length);
  plain.forEach((distances, place) => {
    const same = found[place]?.every(
      ({ distanceFt }, rank) => Math.abs(distanceFt - (distances[rank] ?? 0)) < 0.01,
    );
    if (!same) throw new Error(`the index and brute force differ for outage ${place}`);
  });
  return [
    {
      name: `nearest ${NEIGHBOURS} in service, ${OUTAGES} outages, ${HYDRANTS} hydrants`,
      value: searched - built,
      unit: 'ms',
      beside: { name: 'brute force', value: plainMs },
    },
    { name: `index of ${HYDRANTS} hydrants`, value: built - building, unit: 'ms' },
  ];
}

/** Great-circle distances beside the geodesics of the ellipsoid, which `tests/reference/geodesic.test.ts` compares. */
function distances(): BenchRow {
  const random = seeded(2);
  const somewhere = (): Position => ({
    latitudeDeg: 40 + random() * 0.4,
    longitudeDeg: -75.3 + random() * 0.4,
  });
  const pairs = Array.from({ length: 100_000 }, () => [somewhere(), somewhere()] as const);
  const began = performance.now();
  let ours = 0;
  for (const [one, other] of pairs) ours += greatCircleFt(one, other) * 0.3048;
  const between = performance.now();
  let theirs = 0;
  for (const [one, other] of pairs)
    theirs +=
      geographiclib.Geodesic.WGS84.Inverse(
        one.latitudeDeg,
        one.longitudeDeg,
        other.latitudeDeg,
        other.longitudeDeg,
      ).s12 ?? 0;
  const ended = performance.now();
  if (Math.abs(ours / theirs - 1) > 0.005615) throw new Error('the distances differ by more than they may');
  return {
    name: `${pairs.length} great-circle distances`,
    value: between - began,
    unit: 'ms',
    beside: { name: 'geographiclib-geodesic', value: ended - between },
  };
}

function bruteForce(hydrants: readonly Findable[], outage: Position): number[] {
  const best: number[] = [];
  for (const hydrant of hydrants) {
    if (!inService(hydrant)) continue;
    const distanceFt = greatCircleFt(outage, hydrant);
    if (best.length === NEIGHBOURS && distanceFt >= (best.at(-1) ?? 0)) continue;
    best.push(distanceFt);
    best.sort((one, other) => one - other);
    best.length = Math.min(best.length, NEIGHBOURS);
  }
  return best;
}

async function importing(): Promise<BenchRow[]> {
  const folder = await mkdtemp(join(tmpdir(), 'bench-inventory-'));
  try {
    const file = join(folder, 'inventory.csv');
    await writeInventoryCsv(file, HYDRANTS);
    const child = await inOwnProcess(file, join(folder, 'data'));
    const from = performance.now();
    const rows = await bareParse(file);
    const parseS = (performance.now() - from) / 1000;
    if (rows !== HYDRANTS + 1) throw new Error(`the bare parse found ${rows} rows`);
    return [
      {
        name: `import of ${HYDRANTS} rows: read, checked, in force`,
        value: child.seconds,
        unit: 's',
        beside: { name: 'bare CSV parse of the file', value: parseS },
      },
      {
        name: `import of ${HYDRANTS} rows: peak memory`,
        value: child.peakMb,
        unit: 'MB',
        beside: { name: 'limit', value: 500 },
      },
    ];
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

/** The real command in a process of its own, because the peak of memory is a process's. */
async function inOwnProcess(file: string, dataDir: string): Promise<{ seconds: number; peakMb: number }> {
  const command = join(import.meta.dirname, '..', '..', 'infra', 'local', 'commands', 'import.ts');
  const measured = `await import(${JSON.stringify(command)}); process.stderr.write('peak ' + process.resourceUsage().maxRSS);`;
  const from = performance.now();
  // The command reads its arguments from the third on.
  const child = spawn(process.execPath, ['--input-type=module', '-e', measured, '--', 'import', file], {
    env: { ...process.env, DATA_DIR: dataDir },
    stdio: ['ignore', 'ignore', 'pipe'],
  });
  let said = '';
  child.stderr.setEncoding('utf8').on('data', (text: string) => (said += text));
  const code = await new Promise<number | null>((resolve) => child.once('close', resolve));
  const peakKb = Number(/peak (\d+)/.exec(said)?.[1]);
  if (code !== 0 || !Number.isFinite(peakKb)) throw new Error(`the import failed: ${said.trim()}`);
  return { seconds: (performance.now() - from) / 1000, peakMb: peakKb / 1024 };
}

function bareParse(file: string): Promise<number> {
  return new Promise((resolve, reject) => {
    let rows = 0;
    Papa.parse(createReadStream(file), {
      skipEmptyLines: true,
      step: () => {
        rows += 1;
      },
      complete: () => resolve(rows),
      error: reject,
    });
  });
}
