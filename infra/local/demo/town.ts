/** Draws the invented town: a street grid by a harbour, two roads out, about 400 hydrants, as the CSV a GIS would export. */

const origin = { latitudeDeg: 40.62, longitudeDeg: -60.41 };
const feetPerDegreeLatitude = 364_567;
const feetPerDegreeLongitude = feetPerDegreeLatitude * Math.cos((origin.latitudeDeg * Math.PI) / 180);
/** The grid lies askew to north, as harbour towns do. */
const turn = (14 * Math.PI) / 180;

/** A place of the town by its own plane: feet along the streets from Pumphouse Avenue, feet across them from Harbor Street. */
export function placeInTown(
  alongFt: number,
  acrossFt: number,
): { latitudeDeg: number; longitudeDeg: number } {
  const eastFt = alongFt * Math.cos(turn) - acrossFt * Math.sin(turn);
  const northFt = alongFt * Math.sin(turn) + acrossFt * Math.cos(turn);
  return {
    latitudeDeg: origin.latitudeDeg + northFt / feetPerDegreeLatitude,
    longitudeDeg: origin.longitudeDeg + eastFt / feetPerDegreeLongitude,
  };
}

export const avenues = [
  'Pumphouse',
  'Cordwain',
  'Sailmaker',
  'Thimble',
  'Larkspur',
  'Quince',
  'Tidewrack',
  'Ferrier',
  'Ropewalk',
  'Almoner',
  'Bellfounder',
  'Osier',
];
export const streets = [
  'Harbor',
  'First',
  'Second',
  'Third',
  'Fourth',
  'Fifth',
  'Sixth',
  'Seventh',
  'Eighth',
  'Ninth',
];
export const blockFt = { along: 430, across: 520 };

/** The harbour bites into the south-east corner. */
export const inHarbor = (row: number, column: number): boolean => row < 2 && column > 8;

/** Two roads out of town and one to the point, where hydrants are far apart and losing one matters: step by step. */
export const roads = {
  'Mill Pond Rd': (step: number) => [-step * 390, 4.2 * blockFt.across + step * 60],
  'Quarry Hill Rd': (step: number) => [
    6 * blockFt.along + 1900 * Math.sin(step / 7),
    9.4 * blockFt.across + step * 190,
  ],
  'Gull Point Dr': (step: number) => [
    11.5 * blockFt.along + step * 240,
    (3 + Math.sin(step / 4)) * blockFt.across,
  ],
} as const satisfies Record<string, (step: number) => readonly [alongFt: number, acrossFt: number]>;
export const roadSteps = { 'Mill Pond Rd': 34, 'Quarry Hill Rd': 30, 'Gull Point Dr': 24 } as const;
/** Feet of house numbers in a step of each road. */
const numbers = { 'Mill Pond Rd': 120, 'Quarry Hill Rd': 110, 'Gull Point Dr': 60 } as const;

/** The generator of Numerical Recipes' "quick and dirty" kind: the town is the same on every machine. */
function dice(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
}

interface Spot {
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
  readonly place: string;
}

function* spots(roll: () => number): Generator<Spot> {
  const inGrid = (alongFt: number, acrossFt: number, place: string): Spot => {
    const jitter = (): number => (roll() - 0.5) * 60;
    return { ...placeInTown(alongFt + jitter(), acrossFt + jitter()), place };
  };
  for (const [row, street] of streets.entries())
    for (const [column, avenue] of avenues.entries()) {
      if (inHarbor(row, column)) continue;
      yield inGrid(column * blockFt.along, row * blockFt.across, `${street} St & ${avenue} Ave`);
      if (column < avenues.length - 1)
        yield inGrid(
          (column + 0.5) * blockFt.along,
          row * blockFt.across,
          `${100 * (column + 1) + 46} ${street} St`,
        );
      if (row < streets.length - 1)
        yield inGrid(
          column * blockFt.along,
          (row + 0.5) * blockFt.across,
          `${100 * (row + 1) + 21} ${avenue} Ave`,
        );
    }
  for (const road of ['Mill Pond Rd', 'Quarry Hill Rd', 'Gull Point Dr'] as const)
    for (let step = 1; step <= roadSteps[road]; step += 1)
      yield inGrid(...roads[road](step), `${step * numbers[road]} ${road}`);
}

const columns = [
  'HYD_NO',
  'LATITUDE',
  'LONGITUDE',
  'LOCATION',
  'TYPE',
  'MODEL',
  'INSTALL_DATE',
  'NUM_HOSE',
  'HOSE_SIZE_IN',
  'NUM_PUMPER',
  'PUMPER_SIZE_IN',
  'MAIN_SIZE_IN',
  'LATERAL_SIZE_IN',
  'LATERAL_LENGTH_FT',
  'BURY_FT',
  'VALVE_NO',
  'OWNER',
  'STATUS',
  'RATED_FLOW_GPM',
  'LAST_INSPECTED',
] as const;

/** The town's inventory as CSV text, header included. Always the same. */
export function townInventoryCsv(): string {
  const roll = dice(20_260_304);
  const rows = [...spots(roll)].map((spot, index) => {
    const wet = roll() < 0.04;
    const old = roll() < 0.35;
    const model = wet ? 'LM-W3' : old ? 'BW-D45' : 'BW-D51';
    const year = old ? 1968 + Math.floor(roll() * 25) : 1996 + Math.floor(roll() * 28);
    const month = String(1 + Math.floor(roll() * 12)).padStart(2, '0');
    const day = String(1 + Math.floor(roll() * 28)).padStart(2, '0');
    const inspected = `2025-${String(4 + Math.floor(roll() * 6)).padStart(2, '0')}-${String(1 + Math.floor(roll() * 28)).padStart(2, '0')}`;
    const number = String(index + 1).padStart(4, '0');
    return [
      `TH-${number}`,
      spot.latitudeDeg.toFixed(6),
      spot.longitudeDeg.toFixed(6),
      spot.place,
      wet ? 'Wet barrel' : 'Dry barrel',
      model,
      `${year}-${month}-${day}`,
      2,
      2.5,
      1,
      wet ? 4 : 4.5,
      roll() < 0.6 ? 8 : roll() < 0.5 ? 6 : 12,
      6,
      Math.round(6 + roll() * 22),
      old ? 4.5 : 5,
      `V-${number}`,
      roll() < 0.03 ? 'Private' : 'Tansy Harbor',
      'In service',
      // The town has tested most of its hydrants once; the ledger's own tests stand above these.
      roll() < 0.8 ? Math.round((old ? 420 : 780) + roll() * (old ? 700 : 950)) : '',
      inspected,
    ].map((cell) => (String(cell).includes(',') ? `"${cell}"` : String(cell)));
  });
  return [columns.join(','), ...rows.map((row) => row.join(','))].join('\r\n') + '\r\n';
}
