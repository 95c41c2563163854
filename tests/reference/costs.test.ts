import { describe, expect, it } from 'vitest';
import { footingProblems } from '../../shared/costs/footing.ts';
import {
  amounts,
  bought,
  cost,
  fromStock,
  labor,
  machine,
  span,
  stock,
  used,
  worked,
} from '../support/rates.ts';

/**
 * Published bills, computed by the engine. Source and marker stand beside each. "seen": read in the document itself.
 * What takes more than time and materials is in costTariffs.test.ts and costPay.test.ts.
 */

const monday = '2026-03-02T12:00:00Z';

describe('A: City of Eugene worksheet, 13 Sep 2013 (seen)', () => {
  // (23.43 + 13.14) × 10 h × 1.2717 and (21.47 + 12.54) × 28 h × 1.2717: pay and benefits as one hourly rate, and the
  // overhead, which the worksheet puts on labour only, as the share on it.
  const statement = cost(
    {
      crew: [
        worked('w-1', 'first', [span(monday, 600)]),
        worked('w-2', 'second', [span(monday, 600), span('2026-03-03T12:00:00Z', 1080)]),
      ],
      parts: [fromStock('asphalt', 48)],
    },
    {
      labor: [labor('first', '36.57', '0.2717'), labor('second', '34.01', '0.2717')],
      stock: [stock('asphalt', '46.00')],
      materialHandling: { fraction: '0.10', authorityId: 'a' },
    },
  );

  it('each labor line to the cent', () => {
    expect(amounts(statement, 'labor')).toEqual([465_06, 1_211_01]);
  });

  it('asphalt with 10 % handling', () => {
    expect(amounts(statement, 'materials')).toEqual([2_208_00, 220_80]);
    expect(2_208_00 + 220_80).toBe(2_428_80);
  });

  it('the total is a cent less than printed, because the worksheet rounds labor once and this book each line', () => {
    // Printed: labour 1,676.08 (the sum of the unrounded lines), total 4,104.88. Rounding by class is part 3's.
    expect(statement.totalCents).toBe(4_104_88 - 1);
  });
});

it('B: City of Eugene sign blanks (seen): 12.43 × 4 + 10 % = 54.69', () => {
  const statement = cost(
    { parts: [fromStock('blank', 4)] },
    { stock: [stock('blank', '12.43')], materialHandling: { fraction: '0.1', authorityId: 'a' } },
  );
  expect(amounts(statement, 'materials')).toEqual([49_72, 4_97]);
  expect(statement.totalCents).toBe(54_69);
});

describe('C: NYSEG v. Goettsche, 48 Misc. 2d 786 (1965) (seen), the charges with one share each', () => {
  it('fringe 28.48 % of wages 199.40 is 56.79', () => {
    // The printed sum is 199.40 + 56.79.
    const statement = cost(
      { crew: [worked('w-1', 'line crew', [span(monday, 600)])] },
      { labor: [labor('line crew', '19.94', '0.2848')] },
    );
    expect(statement.totalCents).toBe(199_40 + 56_79);
  });

  it('stores charge 11 % of 41.44 is 4.56', () => {
    const statement = cost(
      { parts: [bought('material', 1, 41_44)] },
      { materialHandling: { fraction: '0.11', authorityId: 'a' } },
    );
    expect(amounts(statement, 'materials')).toEqual([41_44, 4_56]);
  });
});

describe("D: Curt's Trucking v. Anchorage, 578 P.2d 975 (Alaska 1978) (seen)", () => {
  const line = (amountCents: number) => ({ section: 'costs', amountCents });

  it('the printed total of 5,349.23 does not foot and is refused', () => {
    expect(footingProblems({ lines: [line(4_457_72), line(891_54)], totalCents: 5_349_23 })).toEqual([
      { code: 'does-not-foot', path: 'totalCents', params: { printedCents: 5_349_23, sumCents: 5_349_26 } },
    ]);
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

it('E: Lorain OH, Ord. 72-23 (2023) (seen): breakaway kit 1,000 and call-out 100, as prices for each', () => {
  // A tariff that replaces time and materials is part 3's; its figures are prices for each.
  const statement = cost(
    { parts: [fromStock('breakaway kit', 1), fromStock('call-out', 1)] },
    { stock: [stock('breakaway kit', '1000'), stock('call-out', '100')] },
  );
  expect(statement.totalCents).toBe(1_100_00);
});

it('G: Olmsted Falls OH, Ord. 6-93 (seen): 35/h in working hours, 75/h a piece of equipment, supplies at cost', () => {
  // Two people and a backhoe for 4 h: 2 × 4 × 35 + 4 × 75 + 212.50 (the job is invented, the rates are not).
  const statement = cost(
    {
      crew: [worked('w-1', 'crew', [span(monday, 240)]), worked('w-2', 'crew', [span(monday, 240)])],
      machines: [used('backhoe', [span(monday, 240)])],
      parts: [bought('supplies', 1, 212_50)],
    },
    { labor: [labor('crew', '35')], machines: [machine('backhoe', 'hour', '75')] },
  );
  expect(amounts(statement, 'labor')).toEqual([140_00, 140_00]);
  expect(amounts(statement, 'machines')).toEqual([300_00]);
  expect(statement.totalCents).toBe(792_50);
});

it('H: Frederick Water VA, 2018 (seen): materials at 115 %, heavy equipment 200/h, service vehicle 35/h', () => {
  const statement = cost(
    {
      machines: [used('heavy', [span(monday, 90)]), used('vehicle', [span(monday, 150)])],
      parts: [fromStock('part', 2)],
    },
    {
      machines: [machine('heavy', 'hour', '200'), machine('vehicle', 'hour', '35')],
      stock: [stock('part', '100.00')],
      materialHandling: { fraction: '0.15', authorityId: 'a' },
    },
  );
  expect(amounts(statement, 'machines')).toEqual([300_00, 87_50]);
  expect(amounts(statement, 'materials')).toEqual([200_00, 30_00]);
});

it('23 CFR 645.117(e)(4) (seen): handling at 5 percent where no actual or approved average is shown', () => {
  const statement = cost(
    { parts: [fromStock('part', 1)] },
    { stock: [stock('part', '412.00')], materialHandling: { fraction: '0.05', authorityId: 'a' } },
  );
  expect(amounts(statement, 'materials')).toEqual([412_00, 20_60]);
});
