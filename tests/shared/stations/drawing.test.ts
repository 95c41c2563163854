import { describe, expect, it } from 'vitest';
import { roundedPosition, type PublicPosition } from '../../../shared/public/position.ts';
import { publicStations } from '../../../shared/stations/build.ts';
import { stationDrawing } from '../../../shared/stations/drawing.ts';
import type { Station } from '../../../shared/stations/stations.ts';
import { seeded } from '../../support/seeded.ts';
import { aHydrant } from '../../support/town.ts';
import { box, station } from './areas.ts';

const area = station('Home', [box(0, 0, 0.01, 0.01)]);
const drawn = (dots: readonly PublicPosition[], out = 0, of: Station = area) =>
  stationDrawing(
    of,
    dots,
    Array.from({ length: out }, (_, entry) => ({
      entry,
      position: { longitudeDeg: 0.005, latitudeDeg: 0.005 },
    })),
    'us',
  );
const somewhere = (count: number): PublicPosition[] => {
  const roll = seeded(41);
  return Array.from({ length: count }, () => ({ longitudeDeg: roll() * 0.01, latitudeDeg: roll() * 0.01 }));
};
const marks = (path: string): number => path.match(/M/g)?.length ?? 0;

describe('the drawing of a station’s area', () => {
  it('is true to its scale', () => {
    const { outline, scale } = drawn([]);
    const across = [...outline.matchAll(/[ML](\S+) /g)].map(([, x]) => Number(x));
    const width = Math.max(...across) - Math.min(...across);
    // A hundredth of a degree at the equator: 2πR / 36,000 with R = 6 371 008.8 m (IUGG), 3,648.1 ft.
    expect(scale.length / width).toBeCloseTo(scale.feet / 3648.1, 3);
    // A round length, and no longer than a third of the picture.
    expect([500, 1000]).toContain(scale.feet);
  });

  it('keeps the corners of a border, and not those that nobody could tell apart', () => {
    const circle = (corners: number): number[] =>
      Array.from({ length: corners + 1 }, (_, index) => (2 * Math.PI * (index % corners)) / corners).flatMap(
        (turn) => [0.005 * Math.cos(turn), 0.005 * Math.sin(turn)],
      );
    const corners = (count: number): number =>
      drawn([], 0, station('Round', [circle(count)])).outline.match(/[ML]/g)?.length ?? 0;
    expect(corners(24)).toBe(24);
    // A circle of 440 units across is 1,382 units around: at 0.7 units a corner that is 1,975 of them at most.
    expect(corners(20_000)).toBeLessThan(2100);
    expect(corners(20_000)).toBeGreaterThan(500);
  });

  it('has forty signs at most; the list has them all', () => {
    expect(drawn([], 60).signs.map(({ entry }) => entry)).toEqual(Array.from({ length: 40 }, (_, n) => n));
  });

  it('has a dot for each hydrant, and of very many no more than a raster holds', () => {
    expect(marks(drawn(somewhere(1000)).dots)).toBeGreaterThan(990);
    // Four cells to each of 3,000: 12,000 over a square as wide as the picture, and this one is less.
    expect(marks(drawn(somewhere(40_000)).dots)).toBeLessThan(12_000);
  });

  it('shows every place as the public may know it, of what is in service and of what is out', () => {
    // Two hundredths of a degree are a fifth of the picture; the places are published to a hundredth.
    const at = (degrees: number) => ({ longitudeDeg: degrees, latitudeDeg: degrees });
    const drawingOf = (more: number) =>
      publicStations({
        stations: [station('Home', [box(0, 0, 0.1, 0.1)])],
        hydrants: [aHydrant('A', at(0.02 + more)), aHydrant('B', at(0.06 + more))],
        serves: () => true,
        isOut: ({ hydrantId }) => hydrantId === 'B',
        classOf: () => null,
        classes: [],
        out: [at(0.06 + more)],
        rounded: (position) => roundedPosition(position, 2),
        system: 'us',
      })[0]?.drawing;
    expect(drawingOf(0.004)).toEqual(drawingOf(0));
    expect(drawingOf(0.01)).not.toEqual(drawingOf(0));
  });
});
