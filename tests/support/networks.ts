import { seeded } from './seeded.ts';

/**
 * Invented networks as EPANET input files, written by code. Nothing here is anybody's town.
 */
export interface Town {
  readonly rows: number;
  readonly columns: number;
  readonly seed: number;
  /** A tank on the far side, which fills while a pump runs. */
  readonly tank?: boolean;
  readonly demandGpm?: number;
  readonly diameterIn?: number;
  readonly options?: string;
  readonly times?: string;
  readonly controls?: string;
}

const node = (row: number, column: number): string => `J${row}-${column}`;

/** A town of streets at right angles, 500 ft apart, with a pump at one corner and a tank at the other. */
export function townInp({
  rows,
  columns,
  seed,
  tank = true,
  demandGpm = 12,
  diameterIn = 8,
  options = '',
  times = '',
  controls = '',
}: Town): string {
  const random = seeded(seed);
  const junctions = ['S 50 0'];
  const pipes: string[] = [];
  const places: string[] = [];
  for (let row = 0; row < rows; row++)
    for (let column = 0; column < columns; column++) {
      const name = node(row, column);
      junctions.push(
        `${name} ${(40 + 30 * random()).toFixed(1)} ${(demandGpm * (0.5 + random())).toFixed(1)}`,
      );
      places.push(`${name} ${column * 500} ${row * 500}`);
      const pipe = (to: string): string =>
        `P:${name}:${to} ${name} ${to} 500 ${diameterIn} ${100 + Math.round(40 * random())} 0 Open`;
      if (column + 1 < columns) pipes.push(pipe(node(row, column + 1)));
      if (row + 1 < rows) pipes.push(pipe(node(row + 1, column)));
    }
  const last = node(rows - 1, columns - 1);
  return `[TITLE]
Invented town

[JUNCTIONS]
${junctions.join('\n')}

[RESERVOIRS]
R 60

[TANKS]
${tank ? 'T 190 12 2 30 60 0' : ''}

[PIPES]
PR R S 50 24 130 0 Open
${pipes.join('\n')}
${tank ? `PT ${last} T 800 12 120 0 Open` : ''}

[PUMPS]
PU S ${node(0, 0)} HEAD C1

[CURVES]
C1 ${(rows * columns * demandGpm * 1.5).toFixed(0)} 160

[CONTROLS]
${controls}

[OPTIONS]
UNITS GPM
HEADLOSS H-W
ACCURACY 0.00001
TRIALS 200
${options}

[TIMES]
DURATION 24:00
HYDRAULIC TIMESTEP 1:00
${times}

[COORDINATES]
${places.join('\n')}
[END]
`;
}

/** One reservoir, one main of 3,000 ft, one hydrant, and a street that hangs on a valve. */
export const smallInp = `[JUNCTIONS]
M 50 0
H 50 100
D 55 20

[RESERVOIRS]
R 230

[PIPES]
P1 R M 1500 10 120 0 Open
P2 M H 1500 8 120 0 Open
P3 H D 400 6 120 0 Open

[OPTIONS]
UNITS GPM
HEADLOSS H-W
ACCURACY 0.00001
DEMAND MULTIPLIER 0.5

[COORDINATES]
M 0 0
H 1500 0
D 1900 0
[END]
`;

/** The same in litres a second, metres and millimetres. */
export const smallMetricInp = `[JUNCTIONS]
M ${50 * 0.3048} 0
H ${50 * 0.3048} ${100 * 0.0630901964}
D ${55 * 0.3048} ${20 * 0.0630901964}

[RESERVOIRS]
R ${230 * 0.3048}

[PIPES]
P1 R M ${1500 * 0.3048} 254 120 0 Open
P2 M H ${1500 * 0.3048} 203.2 120 0 Open
P3 H D ${400 * 0.3048} 152.4 120 0 Open

[OPTIONS]
UNITS LPS
HEADLOSS H-W
ACCURACY 0.00001
DEMAND MULTIPLIER 0.5

[COORDINATES]
M 0 0
H 1500 0
D 1900 0
[END]
`;
