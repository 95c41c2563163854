import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fitFrame, unproject } from '../../shared/public/mapFrame.ts';
import { cornerOf, tileAt } from '../../shared/public/tileGrid.ts';
import {
  around,
  dragged,
  toPicture,
  toWorld,
  whole,
  zoomed,
  type View,
} from '../../site/src/public/map/view.ts';
import { tilesFor } from '../../site/src/public/map/tiles.ts';

const world = { width: 720, height: 480, mostScale: 40 };
const picture = { width: 600, height: 400 };
const number = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });
const aView: fc.Arbitrary<View> = fc.record({ x: number(0, 720), y: number(0, 480), scale: number(1, 30) });
const aPoint = fc.record({ x: number(0, 600), y: number(0, 400) });

describe('what the map looks at', () => {
  test('the whole fits, in the middle', () => {
    expect(whole(world, picture)).toEqual({ x: 360, y: 240, scale: 400 / 480 });
  });

  test('a place goes to the picture and back', () => {
    fc.assert(
      fc.property(aView, aPoint, (view, at) => {
        const back = toPicture(view, toWorld(view, at, picture), picture);
        expect(back.x).toBeCloseTo(at.x, 6);
        expect(back.y).toBeCloseTo(at.y, 6);
      }),
    );
  });

  test('zooming keeps what is under the finger under it, as long as the map need not be held', () => {
    fc.assert(
      fc.property(number(1.1, 3), aPoint, (factor, at) => {
        const view = { x: 360, y: 240, scale: 2 };
        const before = toWorld(view, at, picture);
        const after = toWorld(zoomed(view, factor, at, world, picture), at, picture);
        expect(after.x).toBeCloseTo(before.x, 6);
        expect(after.y).toBeCloseTo(before.y, 6);
      }),
    );
  });

  test('whatever is done, something of the map stays in sight, and no nearer than allowed', () => {
    fc.assert(
      fc.property(aView, number(0.01, 100), aPoint, number(-5000, 5000), (view, factor, at, by) => {
        const moved = zoomed(dragged(view, { x: by, y: -by }, world, picture), factor, at, world, picture);
        expect(moved.x).toBeGreaterThanOrEqual(0);
        expect(moved.x).toBeLessThanOrEqual(world.width);
        expect(moved.scale).toBeLessThanOrEqual(world.mostScale);
        expect(moved.scale).toBeGreaterThanOrEqual(whole(world, picture).scale);
      }),
    );
  });

  test('what was found is all in sight, with the point in the middle', () => {
    const places = [
      { x: 300, y: 200 },
      { x: 310, y: 205 },
      { x: 280, y: 190 },
    ];
    const view = around(places, world, picture);
    expect(toPicture(view, places[0]!, picture)).toEqual({ x: 300, y: 200 });
    for (const place of places) {
      const { x, y } = toPicture(view, place, picture);
      expect(Math.min(x, y, picture.width - x, picture.height - y)).toBeGreaterThanOrEqual(47.9);
    }
    expect(around([], world, picture)).toEqual(whole(world, picture));
  });
});

describe('tiles', () => {
  // Corners of the Web Mercator square, OGC 17-083r4 annex D: ±20 037 508.342 789 2 m, which is ±85.051 128 78°.
  test('the square ends where it is defined to end', () => {
    expect(tileAt({ latitudeDeg: 85.051_128_779, longitudeDeg: -180 }, 0).y).toBeCloseTo(0, 8);
    expect(cornerOf({ z: 0, x: 0, y: 0 })).toMatchObject({ longitudeDeg: -180 });
    expect(cornerOf({ z: 0, x: 0, y: 0 }).latitudeDeg).toBeCloseTo(85.051_128_78, 7);
    expect(cornerOf({ z: 1, x: 1, y: 1 })).toEqual({ latitudeDeg: 0, longitudeDeg: 0 });
  });

  test('a corner is where its tile begins', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 18 }), number(0, 1), number(0, 1), (z, across, down) => {
        const [x, y] = [Math.floor(across * (2 ** z - 1)), Math.floor(down * (2 ** z - 1))];
        const at = tileAt(cornerOf({ z, x, y }), z);
        expect(at.x).toBeCloseTo(x, 5);
        expect(at.y).toBeCloseTo(y, 5);
      }),
    );
  });

  test('cover what is seen, at a zoom that draws them at about their own size, and are never a crowd', () => {
    const frame = fitFrame(
      { south: 39.2, north: 39.22, west: -98.4, east: -98.36 },
      { width: 720, least: 420, greatest: 640, margin: 30 },
    );
    for (const scale of [1, 4, 20]) {
      const view = { x: 360, y: 240, scale };
      const tiles = tilesFor(view, picture, frame.projection, 18);
      expect(tiles.length).toBeGreaterThan(0);
      expect(tiles.length).toBeLessThanOrEqual(60);
      const z = tiles[0]!.z;
      const tilePx = (frame.projection.perDegreeEast * scale * 360) / 2 ** z;
      if (z < 18) expect(Math.abs(Math.log2(tilePx / 256))).toBeLessThanOrEqual(0.5);
      for (const corner of [
        { x: 0, y: 0 },
        { x: 599, y: 399 },
      ]) {
        const { x, y } = tileAt(unproject(frame.projection, toWorld(view, corner, picture)), z);
        expect(tiles).toContainEqual({ z, x: Math.floor(x), y: Math.floor(y) });
      }
    }
    expect(tilesFor({ x: 360, y: 240, scale: 5000 }, picture, frame.projection, 18)[0]!.z).toBe(18);
  });
});
