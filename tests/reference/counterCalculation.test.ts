import { describe, expect, it } from 'vitest';
import { counterCalculation } from '../../shared/costs/counterCalculation.ts';

/**
 * 23 CFR 645.117(h) (seen): a credit for accrued depreciation of a unit is (age ÷ life) × original cost; betterment and
 * salvage are credited; credits never exceed cost. The components and amounts are invented; the arithmetic is by hand.
 */
const component = {
  installedOn: '2006-03-04',
  serviceLifeYears: 50,
  originalCostCents: 1_200_00,
  salvageCents: 0,
  bettermentCents: 0,
};

describe('the counter-calculation', () => {
  it('(h)(2): 20 of 50 years of 1,200.00 is 480.00', () => {
    const found = counterCalculation(component, '2026-03-04');
    expect(found.depreciationCents).toBe(480_00);
    expect(found.arithmetic).toBe('$1200.00 × 20 / 50 = $480.00');
  });

  it('counts a year begun by its days: 73 of 365 days are a fifth of a year', () => {
    // 20.2 ÷ 50 × 1,200.00; 4 March to 16 May is 73 days, and the year to 4 March 2027 has 365.
    expect(counterCalculation(component, '2026-05-16').depreciationCents).toBe(484_80);
  });

  it('(h)(1), (h)(5): adds salvage and betterment, and never takes off more than the cost', () => {
    const more = { ...component, salvageCents: 25_00, bettermentCents: 100_00 };
    expect(counterCalculation(more, '2026-03-04').creditCents).toBe(605_00);
    expect(counterCalculation({ ...more, bettermentCents: 900_00 }, '2026-03-04').creditCents).toBe(1_200_00);
  });

  it('takes the whole cost once the life is spent, and nothing for what was not there yet', () => {
    expect(counterCalculation({ ...component, installedOn: '1960-01-01' }, '2026-03-04')).toMatchObject({
      depreciationCents: 1_200_00,
      lifeSpent: true,
    });
    expect(counterCalculation({ ...component, installedOn: '2026-03-05' }, '2026-03-04').creditCents).toBe(0);
  });
});
