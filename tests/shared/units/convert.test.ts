import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { conversionCards, convert, factor, sameQuantity } from '../../../shared/units/convert.ts';
import { displays } from '../../../shared/units/format.ts';
import { unitIds, units, type UnitId } from '../../../shared/units/units.ts';

/** Digits of NIST SP 811 (2008), appendix B, as printed there (second-hand for those that are not exact). */
describe('conversion factors against NIST SP 811', () => {
  it.each(conversionCards)('$from to $to is $published', ({ from, to, published, exact }) => {
    if (exact) expect(factor(from, to)).toBe(published);
    // Seven printed digits limit the comparison: half a unit in the seventh.
    else expect(factor(from, to).toPrecision(7)).toBe(published.toPrecision(7));
  });

  // Definitions, multiplied out by hand with integers: no float on the way.
  it.each<[UnitId, UnitId, bigint, bigint]>([
    // lbf = 45359237e-8 kg × 980665e-5 m/s²; in² = 64516e-8 m²; 1000 Pa a kPa.
    ['psi', 'kPa', 45_359_237n * 980_665n, 64_516n * 10n ** 8n],
    // lbf × 3048e-4 m.
    ['lbf.ft', 'N.m', 45_359_237n * 980_665n * 3048n, 10n ** 17n],
    // 231 in³ a minute; in³ = 16387064e-9 L, to litres a second.
    ['gpm', 'L/s', 231n * 16_387_064n, 60n * 10n ** 9n],
    ['gpm', 'L/min', 231n * 16_387_064n, 10n ** 9n],
    ['gal', 'm3', 231n * 16_387_064n, 10n ** 12n],
  ])('%s to %s from its definition', (from, to, over, under) => {
    const twentyDigits = (over * 10n ** 20n) / under;
    expect(factor(from, to)).toBeCloseTo(Number(twentyDigits) / 1e20, 14);
    expect(Math.abs(factor(from, to) / (Number(twentyDigits) / 1e20) - 1)).toBeLessThan(1e-15);
  });

  // 1 MGD = 1,000,000 gal over 1,440 minutes = 694.4 gpm (a printed 684.4 is a misprint).
  it('million gallons a day', () => expect(convert(1, 'MGD', 'gpm')).toBeCloseTo(694.4444444444445, 10));
  // A report printed 2,980 gpm as 908 L/min; it is 11,280.
  it('2,980 gpm is 11,280 L/min', () =>
    expect(Math.round(convert(2980, 'gpm', 'L/min') / 10) * 10).toBe(11_280));
  it('20 psi is 1.4 bar (NFPA 291 §4.2.1)', () => expect(convert(20, 'psi', 'bar')).toBeCloseTo(1.4, 1));
  it('350 m³/h is 1,541 gpm', () =>
    expect(convert(350, 'm3/h', 'gpm')).toBeCloseTo(350_000 / 60 / 3.785411784, 9));
});

describe('converting', () => {
  const unit = fc.constantFrom(...unitIds);
  const value = fc.double({ min: 1e-6, max: 1e6, noNaN: true });

  it('there and back returns', () =>
    fc.assert(
      fc.property(unit, unit, value, (from, to, amount) => {
        fc.pre(sameQuantity(from, to));
        const back = convert(convert(amount, from, to), to, from);
        expect(Math.abs(back - amount)).toBeLessThanOrEqual(Math.abs(amount) * 5e-16);
      }),
    ));

  it('by way of a third unit agrees', () =>
    fc.assert(
      fc.property(unit, unit, unit, value, (from, by, to, amount) => {
        fc.pre(sameQuantity(from, to) && sameQuantity(from, by));
        const direct = convert(amount, from, to);
        expect(Math.abs(convert(convert(amount, from, by), by, to) - direct)).toBeLessThanOrEqual(
          Math.abs(direct) * 1e-15,
        );
      }),
    ));

  it('refuses two quantities', () => expect(() => factor('psi', 'gpm')).toThrow(/measure different things/));

  it('every size is an exact integer', () => {
    for (const id of unitIds) expect(Number.isSafeInteger(units[id].size), id).toBe(true);
  });

  it('every unit shows as one of its own quantity, in the system asked for', () => {
    for (const id of unitIds)
      for (const system of ['us', 'metric'] as const) {
        expect(units[displays[id][system].unit].system, `${id} in ${system}`).toBe(system);
        expect(sameQuantity(displays[id][system].unit, id), `${id} in ${system}`).toBe(true);
      }
  });
});
