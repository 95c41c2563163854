import { problem, type Problem } from '../../problems/problem.ts';
import type { ImportChoices } from '../choices.ts';
import { wktPoint } from '../mapping/fits.ts';
import { median, type Profile } from '../mapping/profile.ts';
import type { Proposal } from '../mapping/propose.ts';
import { usesDecimalComma } from '../mapping/units.ts';
import { ImportRefused } from '../refused.ts';
import { readNumber } from '../values/quantity.ts';
import { isDegrees, isInside, resolveCrs, wgs84, type Crs } from './crs.ts';

/** Where the coordinates stand and what they are measured in. */
export interface PlaceDecision {
  readonly from: 'points' | 'columns' | 'one-column';
  readonly crs: Crs;
  readonly why: 'stated' | 'file' | 'format' | 'values';
  readonly commaIsDecimal: boolean;
  readonly remarks: readonly Problem[];
}

export interface Sample {
  readonly xs: readonly number[];
  readonly ys: readonly number[];
}

/** No one keeps hydrants south of 60° S; a "latitude" of -78 is a longitude in the wrong column. */
const southernmostDeg = -60;
const northernmostDeg = 84;
const isInhabited = (longitudeDeg: number, latitudeDeg: number): boolean =>
  Math.abs(longitudeDeg) <= 180 && latitudeDeg >= southernmostDeg && latitudeDeg <= northernmostDeg;

/** True where a point can be a hydrant's at all, in the system it was stated in. */
export const isPlausible = (crs: Crs, longitudeDeg: number, latitudeDeg: number): boolean =>
  isInhabited(longitudeDeg, latitudeDeg) &&
  (crs.area === null || isInside(crs.area, longitudeDeg, latitudeDeg));

const share = ({ xs, ys }: Sample, test: (x: number, y: number) => boolean): number => {
  let passing = 0;
  xs.forEach((x, place) => {
    if (test(x, ys[place] ?? NaN)) passing += 1;
  });
  return xs.length === 0 ? 0 : passing / xs.length;
};

/**
 * Decides the coordinate system, or refuses: projected coordinates with none stated, one stated for degrees, axes the
 * wrong way round, a system whose area the points are not in. A datum is never guessed.
 *
 * @throws ImportRefused
 */
export function decidePlace(profile: Profile, proposal: Proposal, choices: ImportChoices): PlaceDecision {
  const { sample, from, commaIsDecimal } = sampleOf(profile, proposal);
  const { crs, why, remarks } = chooseCrs(profile.statedCrs, from !== 'points', choices.crs);
  assertLands(crs, sample);
  return { from, crs, why, commaIsDecimal, remarks };
}

/**
 * Looks whether coordinates can be what they are said to be. `sample` is enough of them to tell (its numbers are
 * spread into calls, so at most some ten thousand).
 *
 * @throws ImportRefused for axes the wrong way round, projected numbers read as degrees or the other way, a system whose
 *   area they are not in
 */
export function assertLands(crs: Crs, sample: Sample): void {
  const away = {
    xs: sample.xs.filter((x, place) => x !== 0 || sample.ys[place] !== 0),
    ys: sample.ys.filter((y, place) => y !== 0 || sample.xs[place] !== 0),
  };
  // Every point at zero is said row by row.
  const points = away.xs.length > 0 ? away : sample;
  if (points.xs.length === 0) throw new ImportRefused(problem('inventory-no-numbers-for-coordinates'));

  const inDegrees = share(points, isDegrees);
  const ranges = {
    xFrom: Math.min(...points.xs),
    xTo: Math.max(...points.xs),
    yFrom: Math.min(...points.ys),
    yTo: Math.max(...points.ys),
  };
  if (crs.kind === 'degrees' && inDegrees < 0.5) {
    const swapped = share(points, (x, y) => isDegrees(y, x)) > 0.9;
    throw new ImportRefused(
      problem(swapped ? 'inventory-axes-swapped' : 'inventory-projected', 'crs', ranges),
    );
  }
  if (crs.kind === 'projected' && inDegrees > 0.5) {
    throw new ImportRefused(problem('inventory-already-degrees', 'crs', { crs: crs.label, ...ranges }));
  }
  const lands = (x: number, y: number): boolean => {
    const place = crs.toWgs84(x, y);
    return place !== null && isPlausible(crs, ...place);
  };
  if (share(points, lands) < 0.5) {
    if (share(points, (x, y) => lands(y, x)) > 0.9)
      throw new ImportRefused(problem('inventory-axes-swapped', 'crs', ranges));
    const [longitude, latitude] = crs.toWgs84(median(points.xs), median(points.ys)) ?? [NaN, NaN];
    throw new ImportRefused(
      problem('inventory-outside-area', 'crs', {
        crs: crs.label,
        latitude: latitude.toFixed(3),
        longitude: longitude.toFixed(3),
        area: crs.area?.join(', ') ?? '',
      }),
    );
  }
}

/**
 * The coordinate system of a file: the one that the person states, else the one that the file states, else WGS 84.
 *
 * @param isTable a table says nothing of its system, so that WGS 84 is assumed is said; RFC 7946 and OSM say WGS 84
 * @throws ImportRefused when what is stated cannot be read
 */
export function chooseCrs(
  inFile: string | null,
  isTable: boolean,
  stated: string | null,
): Pick<PlaceDecision, 'crs' | 'why'> & { remarks: Problem[] } {
  if (stated !== null) {
    const crs = resolveCrs(stated);
    return {
      crs,
      why: 'stated',
      remarks:
        inFile === null
          ? []
          : [problem('inventory-crs-overrides-file', 'crs', { file: inFile, crs: crs.label })],
    };
  }
  if (inFile !== null) return { crs: resolveCrs(inFile), why: 'file', remarks: [] };
  if (!isTable) return { crs: wgs84, why: 'format', remarks: [] };
  return { crs: wgs84, why: 'values', remarks: [problem('inventory-datum-assumed', 'crs')] };
}

function sampleOf(
  profile: Profile,
  proposal: Proposal,
): { sample: Sample; from: PlaceDecision['from']; commaIsDecimal: boolean } {
  const column = (field: string) => proposal.uses.find((use) => use.field === field)?.columns[0];
  const [x, y, one] = [column('longitudeDeg'), column('latitudeDeg'), column('point')];
  if (one) {
    const pairs = [...one.values.keys()].flatMap((text) => {
      const match = wktPoint.exec(text);
      return match ? [[Number(match[1]), Number(match[2])] as const] : [];
    });
    return {
      sample: { xs: pairs.map(([east]) => east), ys: pairs.map(([, north]) => north) },
      from: 'one-column',
      commaIsDecimal: false,
    };
  }
  if (x && y) {
    const commaIsDecimal = usesDecimalComma(x) || usesDecimalComma(y);
    const numbers = (of: typeof x): number[] =>
      [...of.values.keys()].map((text) => readNumber(text, commaIsDecimal)).filter((value) => value !== null);
    const [xs, ys] = [numbers(x), numbers(y)];
    // The two columns remember different values, so the pairs are only the first of each, which the file gave together.
    const length = Math.min(xs.length, ys.length);
    return { sample: { xs: xs.slice(0, length), ys: ys.slice(0, length) }, from: 'columns', commaIsDecimal };
  }
  if (profile.points) return { sample: profile.points, from: 'points', commaIsDecimal: false };
  throw new ImportRefused(
    problem('inventory-no-coordinate-columns', '', {
      columns: profile.columns.map(({ name }) => name).join(', '),
    }),
  );
}
