import { expect, test } from 'vitest';
import { groundOf } from '../../../shared/fireCover/ground.ts';

/** 1 acre = 43,560 ft² = 0.404 686 ha (NIST Handbook 44, appendix C: 4046.856 m² for the foot of 0.3048 m). */
test('points of a grid stand for the squares around them', () => {
  // A square mile, 640 acres, is 5,280 ft by 5,280 ft: 27 878 400 squares of a foot, here 16 of 1,320 ft.
  const mile = groundOf(16, 1320);
  expect(mile.acres).toBeCloseTo(640, 9);
  expect(mile.hectares / mile.acres).toBeCloseTo(0.404_686, 6);
});
