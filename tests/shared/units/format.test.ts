import { describe, expect, it } from 'vitest';
import { formatParams, formatQuantity, unitName } from '../../../shared/units/format.ts';
import { unitIds, type UnitId } from '../../../shared/units/units.ts';

const us = { system: 'us', locale: 'en' } as const;
const metric = { system: 'metric', locale: 'en' } as const;
const usSpanish = { system: 'us', locale: 'es' } as const;

// Converted figures by hand from the NIST factors; the rounding is our own rule, stated at `formatQuantity`.
describe('quantities as they are read', () => {
  it.each<[number, UnitId, string, string]>([
    [20, 'psi', '20 psi', '138 kPa'],
    [7.5, 'psi', '7.5 psi', '52 kPa'],
    [999.6, 'gpm', '1,000 gpm', '3,784 L/min'],
    [982.4, 'gpm', '982 gpm', '3,719 L/min'],
    [2.5, 'in', '2.5 in', '63.5 mm'],
    [2.469, 'in', '2.469 in', '62.7 mm'],
    [450, 'ft', '450 ft', '137.2 m'],
    [12_345.4, 'gal', '12,345 gal', '46,732 L'],
    [200, 'lbf.ft', '200 lbf·ft', '271.2 N·m'],
    [3, 'mi', '3 mi', '4.8 km'],
    [-0.01, 'psi', '0 psi', '0 kPa'],
  ])('%d %s', (value, unit, inUs, inMetric) => {
    expect(formatQuantity(value, unit, us)).toBe(inUs);
    expect(formatQuantity(value, unit, metric)).toBe(inMetric);
  });

  it('Spanish keeps the number as it is written in the United States', () => {
    expect(formatQuantity(1234.5, 'ft', usSpanish)).toBe('1,234.5 pies');
    expect(formatQuantity(2.5, 'in', usSpanish)).toBe('2.5 pulg');
  });

  it('a missing value is never shown as a number', () => {
    expect(() => formatQuantity(Number.NaN, 'gpm', us)).toThrow(RangeError);
    expect(() => formatQuantity(Infinity, 'gpm', us)).toThrow(RangeError);
  });

  it('every unit has a sign and a name in both languages', () => {
    for (const unit of unitIds)
      for (const locale of ['en', 'es'] as const) {
        expect(unitName(unit, locale)).not.toContain('[');
        expect(formatQuantity(1, unit, { system: 'us', locale })).not.toContain('[');
      }
  });

  it('parameters named by their unit are written out; others pass', () => {
    expect(formatParams({ dropPsi: 5, flowGpm: 100, diameterIn: 4, outlet: 2, name: 'x' }, metric)).toEqual({
      dropPsi: '34 kPa',
      flowGpm: '379 L/min',
      diameterIn: '101.6 mm',
      outlet: 2,
      name: 'x',
    });
  });
});
