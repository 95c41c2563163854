import type { SourceRow } from '../read/source.ts';
import { wktPoint } from '../mapping/fits.ts';
import { remark, type Remark } from '../check/finding.ts';
import { readNumber } from '../values/quantity.ts';
import { isDegrees } from './crs.ts';
import { isPlausible, type PlaceDecision } from './decide.ts';

export interface Point {
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
}

export type PointReading =
  | { readonly point: Point; readonly remark: Remark | null }
  /** `swapped` is where the point would be with its axes exchanged, when that is somewhere a hydrant can be. */
  | { readonly point: null; readonly remark: Remark; readonly swapped: Point | null };

/** Seven decimals of a degree are about a centimetre; projected input would otherwise drag noise digits along. */
const toCentimetre = (degrees: number): number => Math.round(degrees * 1e7) / 1e7;
const pointAt = (longitudeDeg: number, latitudeDeg: number): Point => ({
  latitudeDeg: toCentimetre(latitudeDeg),
  longitudeDeg: toCentimetre(longitudeDeg),
});

/** The texts of a row's coordinates from its columns, or from one column that holds both. */
export function coordinateTexts(
  row: SourceRow,
  places: { readonly x: number; readonly y: number; readonly point: number },
): { x: string; y: string } | null {
  if (places.point >= 0) {
    const match = wktPoint.exec(row.values[places.point] ?? '');
    return match ? { x: match[1] ?? '', y: match[2] ?? '' } : null;
  }
  const [x, y] = [row.values[places.x] ?? '', row.values[places.y] ?? ''];
  return x === '' && y === '' ? null : { x, y };
}

/** A row's place on WGS 84, or why it has none. */
export function readPoint(
  { crs, commaIsDecimal }: Pick<PlaceDecision, 'crs' | 'commaIsDecimal'>,
  texts: { x: string; y: string } | null,
): PointReading {
  if (!texts) return { point: null, remark: remark('inventory-no-coordinates'), swapped: null };
  const [x, y] = [readNumber(texts.x, commaIsDecimal), readNumber(texts.y, commaIsDecimal)];
  if (x === null || y === null)
    return { point: null, remark: remark('inventory-not-a-coordinate'), swapped: null };
  const place = crs.toWgs84(x, y);
  // Within some 100 m of (0, 0) in degrees, or exactly zero in a projection: an empty form, not a place.
  if ((x === 0 && y === 0) || (place !== null && Math.abs(place[0]) < 0.001 && Math.abs(place[1]) < 0.001)) {
    return { point: null, remark: remark('inventory-at-zero'), swapped: null };
  }
  const inDegrees = crs.kind === 'projected' || isDegrees(x, y);
  if (place && inDegrees && isPlausible(crs, ...place)) return { point: pointAt(...place), remark: null };
  const other = crs.kind === 'projected' || isDegrees(y, x) ? crs.toWgs84(y, x) : null;
  if (other && isPlausible(crs, ...other)) {
    const swapped = pointAt(...other);
    return {
      point: null,
      remark: remark('inventory-swapped-axes', {
        latitude: swapped.latitudeDeg,
        longitude: swapped.longitudeDeg,
      }),
      swapped,
    };
  }
  // In a file of degrees one figure out of its range is a slip of the pen; both together are another system.
  const [wideX, wideY] = [Math.abs(x) > 180, Math.abs(y) > 90];
  if (crs.kind !== 'projected' && wideX !== wideY)
    return {
      point: null,
      remark: wideY
        ? remark('inventory-latitude-range', { latitude: y })
        : remark('inventory-longitude-range', { longitude: x }),
      swapped: null,
    };
  if (!inDegrees) return { point: null, remark: remark('inventory-not-in-degrees'), swapped: null };
  const [longitude, latitude] = place ?? [NaN, NaN];
  return {
    point: null,
    remark: remark('inventory-row-outside-area', {
      crs: crs.label,
      latitude: latitude.toFixed(4),
      longitude: longitude.toFixed(4),
    }),
    swapped: null,
  };
}
