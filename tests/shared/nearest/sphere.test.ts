import { describe, expect, it } from 'vitest';
import {
  compassPoint,
  compassPoints,
  greatCircleFt,
  greatCircleMetres,
  initialBearingDeg,
} from '../../../shared/nearest/sphere.ts';
import { say } from '../../../shared/words/index.ts';

const at = (latitudeDeg: number, longitudeDeg: number) => ({ latitudeDeg, longitudeDeg });

/**
 * Geodesics on the WGS 84 ellipsoid, metres and azimuth in degrees.
 *
 * The first seven: PROJ 9.1.1, `geod +ellps=WGS84 -I -f %.6f -F %.4f`. Flinders Peak to Buninyong: the worked example of
 * the Geocentric Datum of Australia technical manual (54 972.271 m, 306° 52′ 05.37″), from memory, and the same by PROJ.
 * JFK to SIN: the example in GeographicLib's GeodSolve manual (15 347 628 m, 3° 18′ 29.9″), from memory, and by PROJ.
 */
const geodesics = [
  ['a block north', at(41.2, -70.1), at(41.2027, -70.1), 299.8561, 0],
  ['a block east', at(41.2, -70.1), at(41.2, -70.0964), 301.9693, 89.9988],
  ['a block northeast', at(41.2, -70.1), at(41.2019, -70.0975), 297.4867, 44.8205],
  [
    'between two hydrants of a real town',
    at(35.0623899, -85.3072231),
    at(35.0613797, -85.3049729),
    233.865,
    118.634,
  ],
  ['across the date line', at(0, 179.9995), at(0, -179.9995), 111.3195, 90],
  ['in the far north', at(64.84, -147.72), at(64.8427, -147.72), 301.0236, 0],
  ['in the south', at(25.7895, -80.198), at(25.7895, -80.195), 300.8864, 89.9993],
  [
    'Flinders Peak to Buninyong',
    at(-37.9510334166667, 144.424867888889),
    at(-37.6528211388889, 143.926495527778),
    54_972.271,
    306.86815,
  ],
  ['JFK to SIN', at(40.6397222, -73.7788889), at(1.3591667, 103.9894444), 15_347_627.66, 3.3083],
] as const;

describe('great-circle distance and bearing, beside the ellipsoid', () => {
  it.each(geodesics)('%s', (_, from, to, metres, azimuthDeg) => {
    expect(Math.abs(greatCircleMetres(from, to) / metres - 1)).toBeLessThan(0.0056);
    // The convergence of meridians differs on the ellipsoid; a compass point is 45 degrees wide.
    const turn = Math.abs(initialBearingDeg(from, to) - azimuthDeg);
    expect(Math.min(turn, 360 - turn)).toBeLessThan(0.3);
  });

  it('is a quarter of the circumference from equator to pole, and half to the antipodes', () => {
    // 2 pi R / 4 with R = 6 371 008.8 m (IUGG mean radius, Moritz 2000, Geodetic Reference System 1980).
    expect(greatCircleMetres(at(0, 0), at(90, 0))).toBeCloseTo((Math.PI / 2) * 6_371_008.8, 3);
    expect(greatCircleMetres(at(0, 0), at(0, 180))).toBeCloseTo(Math.PI * 6_371_008.8, 3);
    expect(greatCircleMetres(at(41.2, -70.1), at(41.2, -70.1))).toBe(0);
  });

  it('keeps its digits for points a foot apart', () => {
    // One foot of latitude on this sphere is 0.3048 / R radians.
    const foot = (0.3048 / 6_371_008.8) * (180 / Math.PI);
    expect(greatCircleFt(at(41.2, -70.1), at(41.2 + foot, -70.1))).toBeCloseTo(1, 5);
  });
});

describe('the eight directions', () => {
  it.each([
    [0, 'N'],
    [22.4, 'N'],
    [22.6, 'NE'],
    [90, 'E'],
    [135, 'SE'],
    [180, 'S'],
    [225, 'SW'],
    [270, 'W'],
    [337.4, 'NW'],
    [337.6, 'N'],
    [360, 'N'],
    [-45, 'NW'],
  ])('%d is %s', (degrees, point) => expect(compassPoint(degrees)).toBe(point));

  it.each(compassPoints)('%s has its word in both languages', (point) => {
    expect(say('en', `bearing.${point}`)).not.toContain('[');
    expect(say('es', `bearing.${point}`)).not.toBe(say('en', `bearing.${point}`));
  });
});
