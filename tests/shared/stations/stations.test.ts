import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { standardBands } from '../../../shared/hydraulics/hydrantClass.ts';
import type { Hydrant } from '../../../shared/inventory/hydrant.ts';
import { pointsFromBytes, pointsToBytes } from '../../../shared/layers/coverPoints.ts';
import { roundedPosition } from '../../../shared/public/position.ts';
import { buildEdition } from '../../../shared/public/build.ts';
import { publicStations, type StationInput } from '../../../shared/stations/build.ts';
import { areasHolding } from '../../../shared/stations/inArea.ts';
import { publicStation } from '../../../shared/stations/page.ts';
import { slugOf } from '../../../shared/stations/stations.ts';
import { buildStreets } from '../../../shared/streets/build.ts';
import { layOut } from '../../../shared/streets/network.ts';
import { streetWalk } from '../../../shared/streets/walk.ts';
import { aHydrant, townHydrants, townNow, townSettings, townSources } from '../../support/town.ts';
import { box, station } from './areas.ts';

const at = (longitudeDeg: number, latitudeDeg: number) => ({ longitudeDeg, latitudeDeg });

describe('which area holds a place', () => {
  const holding = areasHolding([
    station('With a hole', [box(0, 0, 10, 10), box(4, 4, 6, 6)]),
    station('In two parts', [box(20, 0, 30, 10)], [box(40, 0, 50, 10)]),
    station('Over both', [box(9, 0, 21, 10)]),
  ]);

  it.each([
    ['inside', 2, 2, [0]],
    ['in a hole', 5, 5, []],
    ['in the second part', 45, 5, [1]],
    ['between the parts', 35, 5, []],
    ['where two overlap', 9.5, 5, [0, 2]],
    ['on a border that two have', 20, 5, [1, 2]],
    ['on the edge of a hole', 4, 5, [0]],
    ['on a corner', 0, 0, [0]],
    ['outside', -1, 5, []],
  ])('%s', (_, x, y, areas) => {
    expect(holding(at(x, y))).toEqual(areas);
  });

  // Franklin's crossing count (W. R. Franklin, PNPOLY), written anew here, on places that lie on no edge.
  it('as by counting crossings, for stars of any shape', () => {
    const star = fc.array(fc.double({ min: 0.2, max: 1, noNaN: true }), { minLength: 3, maxLength: 24 });
    const place = fc.tuple(
      fc.double({ min: -1, max: 1, noNaN: true }),
      fc.double({ min: -1, max: 1, noNaN: true }),
    );
    fc.assert(
      fc.property(star, place, (radii, [x, y]) => {
        const corners = radii.map((radius, index): [number, number] => {
          const turn = (2 * Math.PI * index) / radii.length;
          return [radius * Math.cos(turn), radius * Math.sin(turn)];
        });
        let inside = false;
        for (const [index, [ax, ay]] of corners.entries()) {
          const [bx, by] = corners[(index + 1) % corners.length] ?? [0, 0];
          if (ay > y !== by > y && x < ((bx - ax) * (y - ay)) / (by - ay) + ax) inside = !inside;
        }
        const ring = [...corners, ...corners.slice(0, 1)].flat();
        expect(areasHolding([station('Star', [ring])])(at(x, y))).toEqual(inside ? [0] : []);
      }),
      { numRuns: 300 },
    );
  });
});

describe('addresses of pages', () => {
  it.each([
    ['Station 1, Harbor', 'station-1-harbor'],
    ['  ESTACIÓN   Nº 12 ', 'estacion-no-12'],
    ['--', ''],
    ['x'.repeat(80), 'x'.repeat(60)],
    ['a'.repeat(59) + ' b', 'a'.repeat(59)],
  ])('%s: %s', (name, slug) => {
    expect(slugOf(name)).toBe(slug);
  });
});

describe('what the public is told of an area', () => {
  const hydrants: Hydrant[] = [
    aHydrant('AA', { ...at(1, 1), ratedFlowGpm: 1600 }),
    aHydrant('A', { ...at(2, 1), ratedFlowGpm: 1200 }),
    aHydrant('A2', { ...at(2, 2), ratedFlowGpm: 1100 }),
    aHydrant('OUT', { ...at(3, 3), ratedFlowGpm: 1600 }),
    aHydrant('NONE', at(4, 4)),
    aHydrant('GONE', { ...at(5, 5), service: 'abandoned' }),
    aHydrant('FAR', at(20, 20)),
  ];
  const classes = standardBands;
  const input: StationInput = {
    stations: [station('Home', [box(0, 0, 10, 10)]), station('Empty', [box(50, 50, 60, 60)])],
    hydrants,
    serves: ({ service }) => service !== 'abandoned',
    isOut: ({ hydrantId }) => hydrantId === 'OUT',
    classOf: ({ ratedFlowGpm }) => (ratedFlowGpm === null ? null : ratedFlowGpm >= 1500 ? 'AA' : 'A'),
    classes,
    out: [at(20, 20), at(3, 3), null, at(3.0000004, 3.0000004)],
    rounded: (position) => roundedPosition(position, 4),
    system: 'us',
  };

  it('counts in service by class, what is out, and every report that lies in it', () => {
    const [home, empty] = publicStations(input);
    expect(home).toMatchObject({
      slug: 'home',
      hydrants: 5,
      outOfService: 1,
      inService: [
        { hydrantClass: 'AA', count: 1 },
        { hydrantClass: 'A', count: 2 },
        { hydrantClass: null, count: 1 },
      ],
      out: [1, 3],
    });
    expect(home?.drawing.signs.map(({ entry }) => entry)).toEqual([1, 3]);
    expect(home?.drawing.dots.match(/M/g)).toHaveLength(4);
    expect(empty).toMatchObject({ hydrants: 0, outOfService: 0, inService: [], out: [] });
    expect(publicStation.array().parse(publicStations(input))).toHaveLength(2);
  });

  it('the border leaves as a drawing: no coordinate of the layer is in it', () => {
    const secret = 7.123456789;
    const polygons = [[[...box(0, 0, 10, 10).slice(0, 6), secret, secret, ...box(0, 0, 10, 10).slice(6)]]];
    const [home] = publicStations({ ...input, stations: [station('Home', ...polygons)] });
    expect(JSON.stringify(home)).not.toContain(String(secret).slice(0, 6));
  });

  it('stands in the edition of a town, and every hydrant of it once', () => {
    const sources = townSources();
    const lon = townHydrants().map(({ longitudeDeg }) => longitudeDeg);
    const [west, east] = [Math.min(...lon) - 0.01, Math.max(...lon) + 0.01];
    const middle = -98.3831234;
    const stations = [
      station('West', [box(west, 39, middle, 40)]),
      station('East', [box(middle, 39, east, 40)]),
    ];
    const edition = buildEdition({ ...sources, stations }, townSettings, townNow.toISOString());
    const { inventory, outOfService } = edition.snapshot;
    const sum = (of: (one: (typeof edition.stations)[number]) => number): number =>
      edition.stations.reduce((total, one) => total + of(one), 0);
    expect(sum(({ hydrants: count }) => count)).toBe(inventory?.hydrants);
    expect(sum((one) => one.outOfService)).toBe(inventory?.outOfService);
    expect(edition.stations.flatMap(({ out }) => out).toSorted((a, b) => a - b)).toEqual(
      outOfService.flatMap(({ position }, index) => (position ? [index] : [])),
    );
    expect(buildEdition(sources, townSettings, townNow.toISOString()).stations).toEqual([]);
  });

  it('nothing of the layers is in the edition but names, drawings, and distances along streets', () => {
    // Digits that no rounded place of the town has.
    const [secretX, secretY] = [-98.3912345678, 39.2087654321];
    const hydrants = townHydrants();
    const path = hydrants
      .slice(0, 25)
      .flatMap(({ longitudeDeg, latitudeDeg }) => [longitudeDeg, latitudeDeg]);
    const network = layOut(
      buildStreets([{ row: 1, level: 0, places: [...path, secretX, secretY] }], 300).streets,
    );
    if (!network) throw new Error('no streets');
    const around = pointsFromBytes(pointsToBytes([secretX, secretY]));
    const border = box(-99, 39, -98, 40);
    const edition = buildEdition(
      {
        ...townSources(),
        streets: streetWalk(network),
        mustCover: around,
        stations: [station('Named', [[...border.slice(0, 6), secretX, secretY, ...border.slice(6)]])],
      },
      townSettings,
      townNow.toISOString(),
    );
    const text = JSON.stringify(edition);
    expect(text).toContain('"name":"Named"');
    expect(text).not.toMatch(/98\.391234|39\.208765/);
  });
});
