import { expect, it } from 'vitest';
import { wgs84 } from '../../shared/inventory/place/crs.ts';
import { readPoint } from '../../shared/inventory/place/point.ts';
import { sayProblem } from '../../shared/words/index.ts';
import { problem } from '../../shared/problems/problem.ts';

/** Latitude is from -90 to 90 degrees and longitude from -180 to 180 (ISO 6709). */
const remarkOf = (x: string, y: string) => readPoint({ crs: wgs84, commaIsDecimal: false }, { x, y }).remark;
const said = (x: string, y: string) => {
  const { code = '', params = {} } = remarkOf(x, y) ?? {};
  return sayProblem('en', problem(code, '', params));
};

it('a figure out of its range is named, with the range', () => {
  expect(said('-70.1', '999')).toContain('latitude 999: latitude must be from −90 to 90');
  expect(said('-270.125', '41.2')).toContain('longitude -270.125: longitude must be from −180 to 180');
});

it('both out of range are another system', () => {
  expect(remarkOf('985000.5', '191000.2')?.code).toBe('inventory-not-in-degrees');
});
