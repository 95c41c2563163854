import { describe, expect, it } from 'vitest';
import { footingProblems } from '../../shared/costs/footing.ts';
import { amounts, bought, cost, fromStock, stock } from '../support/rates.ts';

/**
 * Published bills, computed by the engine. Source and marker stand beside each. "seen": read in the document itself.
 * Rows A, C, E, F and H take more than time and materials: costTariffs.test.ts. Row G and what is paid by the clock:
 * costPay.test.ts.
 */

it('B: City of Eugene sign blanks (seen): 12.43 × 4 + 10 % = 54.69', () => {
  const statement = cost(
    { parts: [fromStock('blank', 4)] },
    { stock: [stock('blank', '12.43')], materialHandling: { fraction: '0.1', authorityId: 'a' } },
  );
  expect(amounts(statement, 'materials')).toEqual([49_72, 4_97]);
  expect(statement.totalCents).toBe(54_69);
});

describe("D: Curt's Trucking v. Anchorage, 578 P.2d 975 (Alaska 1978) (seen)", () => {
  const line = (amountCents: number) => ({ section: 'costs', amountCents });

  it('the printed total of 5,349.23 does not foot and is refused', () => {
    expect(footingProblems({ lines: [line(4_457_72), line(891_54)], totalCents: 5_349_23 })).toEqual([
      { code: 'does-not-foot', path: 'totalCents', params: { printedCents: 5_349_23, sumCents: 5_349_26 } },
    ]);
  });

  it('20 % of it is the printed 891.54, and the engine makes the sum that was meant: 5,349.26', () => {
    const statement = cost(
      { parts: [bought('direct cost', 1, 4_457_72)] },
      { materialHandling: { fraction: '0.2', authorityId: 'a' } },
    );
    expect(amounts(statement, 'materials')).toEqual([4_457_72, 891_54]);
    expect(statement.totalCents).toBe(5_349_26);
  });

  it('at the 13 % that was allowed it foots: 4,457.72 + 579.50 = 5,037.22', () => {
    expect(footingProblems({ lines: [line(4_457_72), line(579_50)], totalCents: 5_037_22 })).toEqual([]);
    // 13 % of the direct cost by the engine, as a share on a bought part of that price.
    const statement = cost(
      { parts: [bought('direct cost', 1, 4_457_72)] },
      { materialHandling: { fraction: '0.13', authorityId: 'a' } },
    );
    expect(amounts(statement, 'materials')).toEqual([4_457_72, 579_50]);
    expect(statement.totalCents).toBe(5_037_22);
  });
});

it('23 CFR 645.117(e)(4) (seen): handling at 5 percent where no actual or approved average is shown', () => {
  const statement = cost(
    { parts: [fromStock('part', 1)] },
    { stock: [stock('part', '412.00')], materialHandling: { fraction: '0.05', authorityId: 'a' } },
  );
  expect(amounts(statement, 'materials')).toEqual([412_00, 20_60]);
});
