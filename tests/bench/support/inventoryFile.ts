import { createWriteStream } from 'node:fs';
import { once } from 'node:events';

/** A small generator with a fixed seed (mulberry32), so that every run measures the same file. */
export function seeded(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

const header = [
  'OBJECTID',
  'HYDRANTID',
  'LATITUDE',
  'LONGITUDE',
  'ADDRESS',
  'TYPE',
  'STATUS',
  'MANUFACTURER',
  'MODEL',
  'INSTALLDATE',
  'MAIN_SIZE',
  'LATERAL_SIZE',
  'BURY_DEPTH',
  'OUTLETS',
  'OWNER',
  'FLOW',
  'LAST_INSPECTED',
  'VALVEID',
];
const makers = ['Anvil & Bell', 'ANVIL AND BELL', 'Anvil&Bell Co.', 'Northgate', 'NORTHGATE MFG', 'Northgat'];
const streets = ['Alder', 'Birch', 'Cedar', 'Dogwood', 'Elm', 'Fir', 'Gum', 'Hickory'];

/**
 * Writes an invented inventory of `rows` hydrants of one large city, about 200 bytes a row, with the slips of a real
 * one: a duplicate id in 500, a point at zero in 1,000, an impossible date in 250, a unit in words in 100.
 */
export async function writeInventoryCsv(path: string, rows: number): Promise<void> {
  const random = seeded(250_000);
  const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)]!;
  const file = createWriteStream(path);
  file.write(`${header.join(',')}\r\n`);
  for (let row = 1; row <= rows; row += 1) {
    const zero = row % 1000 === 0;
    const id = row % 500 === 0 ? row - 1 : row;
    const values = [
      row,
      `H-${String(id).padStart(6, '0')}`,
      zero ? 0 : (40 + random() * 0.4).toFixed(7),
      zero ? 0 : (-75.3 + random() * 0.4).toFixed(7),
      `"${1 + Math.floor(random() * 9900)} ${pick(streets)} Street, Unit ${row % 40}"`,
      pick(['Dry Barrel', 'Dry Barrel', 'DRY BARREL', 'Wet Barrel']),
      pick(['Active', 'Active', 'Active', 'In Service', 'Abandoned']),
      pick(makers),
      `A-${100 + (row % 7)}`,
      row % 250 === 0
        ? '2603-04-05'
        : `${1 + Math.floor(random() * 12)}/${1 + Math.floor(random() * 28)}/${1950 + Math.floor(random() * 70)}`,
      row % 100 === 0 ? '8 inches' : pick([6, 8, 8, 12, 16]),
      6,
      pick([4, 4.5, 5, 5.5]),
      '"2 x 2.5, 1 x 4.5"',
      'Invented Water District',
      pick([500, 750, 1000, 1250, 1500]),
      `${2015 + Math.floor(random() * 10)}-06-15`,
      `V-${row}`,
    ];
    if (!file.write(`${values.join(',')}\r\n`)) await once(file, 'drain');
  }
  file.end();
  await once(file, 'finish');
}
