import { readNumber } from '../values/quantity.ts';
import type { ImportField } from './fields.ts';
import { wktPoint } from './fits.ts';
import { median, shareOf, type ColumnProfile } from './profile.ts';

/**
 * Coordinates found by what columns hold, when no name says so: a column of `POINT (…)`, or exactly two columns of
 * decimal degrees of which one can only be a longitude (beyond ±90). Empty when it takes a guess.
 */
export function coordinatesByShape(columns: readonly ColumnProfile[]): [ImportField, ColumnProfile][] {
  const point = columns.find((column) => shareOf(column, (text) => wktPoint.test(text)) > 0.8);
  if (point) return [['point', point]];
  const decimal = columns.filter(
    (column) => shareOf(column, (text) => /^-?\d{1,3}\.\d{3,}$/.test(text)) > 0.8,
  );
  const [one, other] = decimal;
  if (decimal.length !== 2 || !one || !other) return [];
  const beyond = (column: ColumnProfile): boolean => {
    const middle = Math.abs(
      median([...column.values.keys()].map((text) => readNumber(text) ?? NaN).filter(Number.isFinite)),
    );
    return middle > 90 && middle <= 180;
  };
  if (beyond(one) === beyond(other)) return [];
  const [longitude, latitude] = beyond(one) ? [one, other] : [other, one];
  return [
    ['latitudeDeg', latitude],
    ['longitudeDeg', longitude],
  ];
}
