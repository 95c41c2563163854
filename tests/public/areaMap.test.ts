import { describe, expect, test } from 'vitest';
import { areaMap } from '../../shared/public/areaMap.ts';
import type { PublicAreaDrawing } from '../../shared/public/coverSchema.ts';

/** Feet of one degree of latitude on the mean earth (2πR/360 with R = 6 371 008.8 m, IUGG): 364,811. */
const PER_DEGREE = (2 * Math.PI * 6_371_008.8) / 0.3048 / 360;
const place = { latitudeDeg: 39.2, longitudeDeg: -98.4 };
const east = (ft: number): number =>
  place.longitudeDeg + ft / (PER_DEGREE * Math.cos((39.2 * Math.PI) / 180));
const row = (
  northFt: number,
  fromFt: number,
  toFt: number,
  lost: 'none' | 'short',
): PublicAreaDrawing['rows'][number] => ({
  latitudeDeg: place.latitudeDeg + northFt / PER_DEGREE,
  westDeg: east(fromFt),
  eastDeg: east(toFt),
  lost,
});
const drawn = (more: Partial<PublicAreaDrawing>, stepFt: number | null = 250) =>
  areaMap({ rows: [], inService: [], out: [], ...more }, stepFt, 'us');
/** Corners of every block of a path. */
const blocks = (path: string) =>
  [...path.matchAll(/M([\d.]+) ([\d.]+)H([\d.]+)V([\d.]+)H\1Z/g)].map(([, left, top, right, bottom]) => ({
    width: Number(right) - Number(left),
    height: Number(bottom) - Number(top),
  }));

describe('the drawing of an area', () => {
  test('gives every point the ground that it stands for, in its own kind of filling', () => {
    const map = drawn({ rows: [row(0, 0, 500, 'none'), row(250, 0, 0, 'short')] })!;
    const perFoot = map.scale.length / map.scale.feet;
    // Three points 250 ft apart are 750 ft of ground, one is 250 ft.
    const [none] = blocks(map.none);
    const [short] = blocks(map.short);
    expect(none!.width / perFoot).toBeCloseTo(750, -1);
    expect(none!.height / perFoot).toBeCloseTo(250, -1);
    expect(short!.width / perFoot).toBeCloseTo(250, -1);
  });

  test('holds the ground, what is out, and what is in service beside it', () => {
    const map = drawn({
      rows: [row(0, 0, 0, 'none')],
      out: [{ number: 7, position: { ...place, longitudeDeg: east(900) } }],
      inService: [
        { ...place, longitudeDeg: east(-100) },
        { ...place, longitudeDeg: east(9000) },
      ],
    })!;
    expect(map.out).toMatchObject([{ index: 7 }]);
    for (const { x, y } of map.out) {
      expect(x).toBeGreaterThan(0);
      expect(x).toBeLessThan(map.width);
      expect(y).toBeLessThan(map.footAt);
    }
    // One lies miles off and is no part of the picture.
    expect(map.inService).toHaveLength(1);
  });

  test('a place that stands by itself is drawn as one, and nothing lost is no drawing', () => {
    expect(blocks(drawn({ rows: [row(0, 0, 0, 'none'), row(400, 0, 0, 'none')] }, null)!.none)).toHaveLength(
      2,
    );
    expect(drawn({})).toBeNull();
  });
});
