import { expect, test } from 'vitest';
import { paced } from '../../shared/public/toldDistance.ts';

/** 1 ft = 0.3048 m exactly (NIST SP 811, B.8). The second figure is that of the first, as it is printed. */
test.each([
  [17, 20, 6], // 20 ft = 6.096 m, although 17 ft = 5.18 m
  [344, 340, 104], // 103.6 m
  [4, 0, 0],
])('%d ft is paced as %d ft (%d m)', (feet, ft, m) => {
  expect([paced(feet, 'us', 'us'), paced(feet, 'metric', 'us')]).toEqual([ft, m]);
});
test.each([
  [17, 5, 16], // 5 m = 16.40 ft
  [344, 105, 344], // 104.85 m
])('%d ft is paced as %d m (%d ft)', (feet, m, ft) => {
  expect([paced(feet, 'metric', 'metric'), paced(feet, 'us', 'metric')]).toEqual([m, ft]);
});
