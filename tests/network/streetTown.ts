import type { NetworkMeta } from '../../shared/network/edition.ts';
import type { Hydrant } from '../../shared/inventory/hydrant.ts';
import { aHydrant } from '../support/town.ts';

/** Two loops of streets with a reservoir, on a map in degrees; hydrants stand beside their junctions. */
export const streetInp = `[JUNCTIONS]
A 50 40
B 52 60
C 48 30
D 55 20
E 51 25
F 60 10

[RESERVOIRS]
R 215

[PIPES]
PR R A 800 12 130 0 Open
AB A B 500 8 120 0 Open
BC B C 500 8 110 0 Open
CD C D 500 6 100 0 Open
DA D A 700 6 100 0 Open
CE C E 400 6 110 0 Open
BE B E 600 6 105 0 Open
EF E F 300 6 100 0 Open

[OPTIONS]
UNITS GPM
HEADLOSS H-W
ACCURACY 0.000001
TRIALS 200

[COORDINATES]
A -98.400 39.200
B -98.400 39.201
C -98.400 39.202
D -98.399 39.202
E -98.401 39.202
F -98.402 39.202
[END]
`;

const at = (
  hydrantId: string,
  longitudeDeg: number,
  latitudeDeg: number,
  more: Partial<Hydrant> = {},
): Hydrant =>
  aHydrant(hydrantId, { longitudeDeg, latitudeDeg, lateralSizeIn: null, lateralLengthFt: null, ...more });

/** H-FAR stands a kilometre away from every pipe. */
export const streetHydrants: readonly Hydrant[] = [
  at('H-A', -98.4, 39.2001),
  at('H-B', -98.4, 39.2011),
  at('H-C', -98.4, 39.2021, { lateralSizeIn: 6, lateralLengthFt: 15 }),
  at('H-F', -98.402, 39.2021),
  at('H-FAR', -98.42, 39.2),
];

export const streetMeta: NetworkMeta = {
  datedOn: '2026-01-15',
  hour: 0,
  rule: { crs: 'EPSG:4326', nodeOf: {}, withinFt: 300 },
  sourceFile: 'street.inp',
  loadedAt: '2026-02-01T12:00:00.000Z',
  loadedBy: 'm-1',
};

export const streetInventory = (manifest: string) => ({
  submissionId: manifest,
  loadedAt: '2026-02-01T12:00:00.000Z',
  loadedBy: 'm-1',
  sourceFile: 'street.csv',
  sourceSha256: '0'.repeat(64),
  crs: 'EPSG:4326',
  mapping: {},
  rows: streetHydrants.length,
  accepted: streetHydrants.length,
  doubtful: 0,
  rejected: 0,
});
