import { greatCircleFt } from '../../../shared/nearest/sphere.ts';
import type { NetworkMeta } from '../../../shared/network/edition.ts';
import { townInventoryCsv } from './town.ts';

/** Where an invented hydrant's junction lies beside it: the main runs under the street, not under the curb. */
const offsetDeg = 0.00005;

interface Junction {
  readonly id: string;
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
  readonly place: string;
}

function junctions(): Junction[] {
  const [, ...rows] = townInventoryCsv().trim().split('\r\n');
  return rows.map((row) => {
    const [number = '', latitude, longitude, place = ''] = row.split(',');
    return {
      id: number.replace('TH-', 'J-'),
      latitudeDeg: Number(latitude) + offsetDeg,
      longitudeDeg: Number(longitude),
      place,
    };
  });
}

type Pair = readonly [from: Junction, to: Junction, diameterIn: number];

/** Trunk mains of the town; every other street has old 6 in. */
const trunks = /^(Fifth St|Larkspur Ave|Mill Pond Rd|Quarry Hill Rd)$/;
const sizeOf = (road: string): number => (trunks.test(road) ? 12 : 6);

/** Each street's and avenue's junctions, in their order along it: crossings, and what stands between two of them. */
function chains(all: readonly Junction[]): Map<string, Junction[]> {
  const roads = new Map<string, Junction[]>();
  const put = (road: string, junction: Junction): void => {
    roads.set(road, [...(roads.get(road) ?? []), junction]);
  };
  for (const junction of all) {
    const [first = '', second] = junction.place.split(' & ');
    if (second === undefined) put(first.replace(/^\d+ /, ''), junction);
    else {
      put(first, junction);
      put(second, junction);
    }
  }
  // Streets run one way and avenues the other, so one of the two coordinates orders each of them.
  for (const [road, along] of roads) {
    const by = /(Ave|Quarry Hill Rd)$/.test(road)
      ? (one: Junction) => one.latitudeDeg
      : (one: Junction) => one.longitudeDeg;
    roads.set(
      road,
      along.toSorted((a, b) => by(a) - by(b)),
    );
  }
  return roads;
}

const nearestOf = (to: Junction, among: readonly Junction[]): Junction | undefined =>
  among.toSorted((a, b) => greatCircleFt(to, a) - greatCircleFt(to, b))[0];

function pipes(all: readonly Junction[], roads: ReadonlyMap<string, Junction[]>): Pair[] {
  const pairs: Pair[] = [];
  for (const [road, along] of roads)
    for (const [index, from] of along.entries()) {
      const to = along[index + 1];
      if (to) pairs.push([from, to, sizeOf(road)]);
    }
  // The roads out of town hang on the crossing where they leave it.
  const crossings = all.filter(({ place }) => place.includes(' & '));
  for (const [road, end] of [
    ['Mill Pond Rd', -1],
    ['Quarry Hill Rd', 0],
    ['Gull Point Dr', 0],
  ] as const) {
    const last = roads.get(road)?.at(end);
    const crossing = last && nearestOf(last, crossings);
    if (last && crossing) pairs.push([last, crossing, sizeOf(road)]);
  }
  return pairs;
}

/** The ground rises from the harbour, ft; invented like everything here. */
function elevationFt({ latitudeDeg }: Junction, harborDeg: number): number {
  const northFt = (latitudeDeg - harborDeg) * 364_567;
  return Math.max(8, 12 + northFt * 0.008);
}

/**
 * Tansy Harbor's invented network as an EPANET file: a junction at every hydrant, mains along the streets, the works at
 * the end of Mill Pond Road and a tank at the end of Quarry Hill Road. Always the same.
 */
export function townNetworkInp(): string {
  const all = junctions();
  const roads = chains(all);
  const harborDeg = Math.min(...all.map(({ latitudeDeg }) => latitudeDeg));
  const works = roads.get('Mill Pond Rd')?.[0];
  const tank = roads.get('Quarry Hill Rd')?.at(-1);
  if (!works || !tank) throw new Error('the town has lost a road');
  const number = (id: string): string => id.replace('J-', '');
  const sections: readonly (readonly [string, readonly string[]])[] = [
    ['TITLE', ['Tansy Harbor, an invented town: mains of 6 and 12 in, morning demand']],
    ['JUNCTIONS', all.map((one) => `${one.id} ${elevationFt(one, harborDeg).toFixed(1)} 2.4 DAY`)],
    ['RESERVOIRS', ['R-WORKS 222']],
    ['TANKS', ['T-QUARRY 182 18 4 26 90 0']],
    [
      'PIPES',
      [
        `P-WORKS R-WORKS ${works.id} 300 16 130 0 Open`,
        `P-TANK T-QUARRY ${tank.id} 250 12 130 0 Open`,
        ...pipes(all, roads).map(
          ([from, to, diameterIn]) =>
            `P-${number(from.id)}-${number(to.id)} ${from.id} ${to.id} ${Math.max(20, Math.round(greatCircleFt(from, to)))} ${diameterIn} ${diameterIn === 12 ? 125 : 100} 0 Open`,
        ),
      ],
    ],
    ['PATTERNS', ['DAY 0.5 0.5 0.5 0.6 0.8 1.2 1.6 1.8', 'DAY 1.5 1.2 1.1 1.0 1.0 1.0 1.0 1.1']],
    ['OPTIONS', ['UNITS GPM', 'HEADLOSS H-W', 'ACCURACY 0.00001', 'TRIALS 200']],
    ['TIMES', ['DURATION 24:00', 'HYDRAULIC TIMESTEP 1:00', 'PATTERN TIMESTEP 1:00']],
    [
      'COORDINATES',
      all.map((one) => `${one.id} ${one.longitudeDeg.toFixed(6)} ${one.latitudeDeg.toFixed(6)}`),
    ],
  ];
  return `${sections.map(([name, lines]) => `[${name}]\n${lines.join('\n')}\n`).join('\n')}\n[END]\n`;
}

/** How the demo's model is loaded: degrees on its map, read at seven in the morning. */
export const townNetworkMeta = {
  datedOn: '2025-11-01',
  hour: 7,
  sourceFile: 'tansy-harbor.inp',
  loadedBy: 'm-401',
  rule: { crs: 'EPSG:4326', nodeOf: {}, withinFt: 300 },
} satisfies Partial<NetworkMeta>;
