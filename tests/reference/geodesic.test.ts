import fc from 'fast-check';
import geographiclib from 'geographiclib-geodesic';
import { describe, expect, test } from 'vitest';
import { greatCircleMetres, initialBearingDeg } from '../../shared/nearest/sphere.ts';

/**
 * Distances on the ellipsoid WGS 84 by C. F. F. Karney's own code (geographiclib-geodesic; "Algorithms for geodesics",
 * J. Geodesy 87, 2013), which is exact to nanometres.
 */
const wgs84 = geographiclib.Geodesic.WGS84;
const place = fc.record({
  latitudeDeg: fc.double({ min: -80, max: 80, noNaN: true }),
  longitudeDeg: fc.double({ min: -180, max: 180, noNaN: true }),
});

describe('great-circle distances beside geodesics of the ellipsoid', () => {
  test('are within the 0.561 % that the function names, over any distance', () => {
    fc.assert(
      fc.property(place, place, (a, b) => {
        const exact = wgs84.Inverse(a.latitudeDeg, a.longitudeDeg, b.latitudeDeg, b.longitudeDeg).s12 ?? 0;
        fc.pre(exact > 1);
        expect(Math.abs(greatCircleMetres(a, b) / exact - 1)).toBeLessThan(0.005615);
      }),
      { numRuns: 2000 },
    );
  });

  test('are within 6 ft and 0.2° of bearing over a hose lay of 1,000 ft, in any direction', () => {
    fc.assert(
      fc.property(place, fc.double({ min: 0, max: 360, noNaN: true }), (from, bearing) => {
        const to = wgs84.Direct(from.latitudeDeg, from.longitudeDeg, bearing, 304.8);
        const there = { latitudeDeg: to.lat2 ?? 0, longitudeDeg: to.lon2 ?? 0 };
        expect(Math.abs(greatCircleMetres(from, there) - 304.8)).toBeLessThan(6 * 0.3048);
        const apart = Math.abs(initialBearingDeg(from, there) - bearing) % 360;
        expect(Math.min(apart, 360 - apart)).toBeLessThan(0.2);
      }),
      { numRuns: 2000 },
    );
  });
});
