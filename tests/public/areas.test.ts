import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { areaPath, areasOf, LIST_MOST, partOf, partsOf } from '../../shared/public/areas.ts';

/** A town at the equator, where a degree is as long either way: corners and middles of eight by four squares. */
const corner = (longitudeDeg: number, latitudeDeg: number, place: string | null = null) => ({
  latitudeDeg,
  longitudeDeg,
  place,
});
const town = [
  corner(0, 0),
  corner(0.16, 0),
  corner(0, 0.08),
  corner(0.16, 0.08),
  // In the second square from the west, the third from the north: its middle is 0.03 east and 0.03 north.
  corner(0.031, 0.031, 'Oak St at Third Ave'),
  corner(0.039, 0.039, 'Elm St at Third Ave'),
];
const out = (count: number, longitudeDeg: number, latitudeDeg: number) =>
  Array.from({ length: count }, () => ({ position: { longitudeDeg, latitudeDeg } }));

describe('a list that fits on one page', () => {
  test('has no areas', () => {
    expect(LIST_MOST).toBe(100);
    expect(areasOf(town, town, out(100, 0.03, 0.03))).toBeNull();
    expect(areasOf(town, town, [])).toBeNull();
  });
});

describe('a longer list', () => {
  test('has squares with letters from the west and numbers from the north, named after what stands in their middle', () => {
    const areas = areasOf(town, town, [...out(100, 0.03, 0.03), ...out(1, 0.15, 0.075)])!;
    expect(areas).toMatchObject({ columns: 8, rows: 4 });
    expect(areas.areas.map(({ code, hydrants, out: { length } }) => [code, hydrants, length])).toEqual([
      ['A1', 1, 0],
      ['H1', 1, 1],
      ['B3', 2, 100],
      ['A4', 1, 0],
      ['H4', 1, 0],
    ]);
    expect(areas.areas.find(({ code }) => code === 'B3')).toMatchObject({ around: 'Oak St at Third Ave' });
    expect(areas.areas.find(({ code }) => code === 'A1')).toMatchObject({ around: null });
  });

  test('puts what has no place, or none in this town, on a page of its own', () => {
    const areas = areasOf(town, town, [...out(101, 0.03, 0.03), ...out(1, 40, 40), { position: null }])!;
    expect(areas.areas.at(-1)).toEqual({ code: 'elsewhere', around: null, hydrants: 0, out: [101, 102] });
  });

  test('without an inventory is parted by the places that were reported', () => {
    const reported = [...out(60, 0, 0), ...out(60, 0.1, 0)];
    expect(areasOf([], [], reported)!.areas.map(({ code, hydrants }) => [code, hydrants])).toEqual([
      ['A1', 0],
      ['H1', 0],
    ]);
  });

  test('goes on in parts of a hundred, each with its own address', () => {
    const area = areasOf(town, town, out(201, 0.03, 0.03))!.areas.find(({ code }) => code === 'B3')!;
    expect(partsOf(area)).toBe(3);
    expect([1, 2, 3].map((part) => partOf(area, part).length)).toEqual([100, 100, 1]);
    expect([1, 2].map((part) => areaPath('B3', part))).toEqual(['areas/b3/', 'areas/b3/2/']);
    expect(partsOf({ ...area, out: [] })).toBe(1);
  });

  const degrees = fc.record({
    latitudeDeg: fc.double({ min: -89, max: 89, noNaN: true }),
    longitudeDeg: fc.double({ min: -180, max: 180, noNaN: true }),
  });
  const places = fc.array(
    degrees.map((position) => ({ ...position, place: null })),
    { maxLength: 40 },
  );
  test('has every entry exactly once, every hydrant once, and each code once, wherever anything stands', () => {
    fc.assert(
      fc.property(
        places,
        fc.array(fc.option(degrees), { minLength: 101, maxLength: 130 }),
        (serving, positions) => {
          const { areas } = areasOf(
            serving,
            serving,
            positions.map((position) => ({ position })),
          )!;
          const listed = areas.flatMap((area) =>
            Array.from({ length: partsOf(area) }, (_, index) => partOf(area, index + 1)).flat(),
          );
          expect(listed.toSorted((a, b) => a - b)).toEqual(positions.map((_, index) => index));
          for (const { out: list } of areas) expect(list).toEqual(list.toSorted((a, b) => a - b));
          expect(new Set(areas.map(({ code }) => code)).size).toBe(areas.length);
          const counted = areas.reduce((sum, { hydrants }) => sum + hydrants, 0);
          expect(counted).toBeLessThanOrEqual(serving.length);
          if (areas.some(({ code }) => code === 'elsewhere')) expect(counted).toBe(serving.length);
        },
      ),
    );
  });

  test('has the same squares whatever is out', () => {
    const codes = (list: ReturnType<typeof out>): string[] =>
      areasOf(town, town, list)!.areas.map(({ code, hydrants }) => `${code} ${String(hydrants)}`);
    expect(codes(out(101, 0.01, 0.01))).toEqual(codes(out(500, 0.01, 0.01)));
    // One that its inventory calls inactive counts only once it is reported out, and moves no border by that.
    const some = areasOf(town, town.slice(1), out(101, 0.03, 0.03))!;
    expect(some.areas.map(({ code }) => code)).toEqual(['A1', 'H1', 'B3', 'H4']);
  });
});
