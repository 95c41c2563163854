import type { StreetLine } from '../../../shared/layers/lines.ts';
import { seeded } from '../../support/seeded.ts';

export type Place = readonly [longitudeDeg: number, latitudeDeg: number];
const fixed = (degrees: number): number => Math.round(degrees * 1e7) / 1e7;

/** A town of bent streets on a loose grid, some blocks open, drawn by a seed. Positions have seven decimals. */
export function randomTown(
  seed: number,
  columns: number,
  rows: number,
): { lines: StreetLine[]; corners: Place[] } {
  const roll = seeded(seed);
  const step = 0.0012;
  const corner = Array.from({ length: rows }, (_, row) =>
    Array.from({ length: columns }, (_, column): Place => [
      fixed(-60.4 + (column + roll() * 0.5) * step),
      fixed(40.6 + (row + roll() * 0.5) * step),
    ]),
  );
  const lines: StreetLine[] = [];
  const join = (a: Place | undefined, b: Place | undefined): void => {
    if (!a || !b || roll() < 0.2) return;
    const bend: Place = [
      fixed((a[0] + b[0]) / 2 + (roll() - 0.5) * step * 0.3),
      fixed((a[1] + b[1]) / 2 + (roll() - 0.5) * step * 0.3),
    ];
    lines.push({
      row: lines.length + 1,
      places: roll() < 0.5 ? [...a, ...b] : [...a, ...bend, ...b],
      level: 0,
    });
  };
  for (let row = 0; row < rows; row += 1)
    for (let column = 0; column < columns; column += 1) {
      join(corner[row]?.[column], corner[row]?.[column + 1]);
      join(corner[row]?.[column], corner[row + 1]?.[column]);
    }
  return { lines, corners: corner.flat() };
}

export const positionOf = ([longitudeDeg, latitudeDeg]: Place): {
  longitudeDeg: number;
  latitudeDeg: number;
} => ({
  longitudeDeg,
  latitudeDeg,
});
