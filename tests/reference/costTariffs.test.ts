import { describe, expect, it } from 'vitest';
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
 * Published bills that take more than time and materials, computed by the engine. Source and marker stand beside each.
 * "seen": read in the document itself.
 */

const monday = '2026-03-02T14:00:00Z';

describe('A: City of Eugene worksheet, 13 Sep 2013 (seen)', () => {
  // (23.43 + 13.14) × 10 h × 1.2717 and (21.47 + 12.54) × 28 h × 1.2717: pay and benefits as one hourly rate, and the
  // overhead, which the worksheet puts on labour only, as the share on it; asphalt 46.00 × 48 + 10 %.
  const rounded = (rounding: 'line-to-cent' | 'section-to-cent') =>
    cost(
      {
        crew: [
          worked('w-1', 'first', [span(monday, 600)]),
          worked('w-2', 'second', [span(monday, 600), span('2026-03-03T12:00:00Z', 1080)]),
        ],
        parts: [fromStock('asphalt', 48)],
      },
      {
        rounding,
        labor: [labor('first', '36.57', '0.2717'), labor('second', '34.01', '0.2717')],
        stock: [stock('asphalt', '46.00')],
        materialHandling: { fraction: '0.10', authorityId: 'a' },
      },
    );

  it('rounded as a whole, labor is the printed 1,676.08 and the total the printed 4,104.88', () => {
    const statement = rounded('section-to-cent');
    expect(statement.sections.map(({ subtotalCents }) => subtotalCents)).toEqual([1_676_08, 2_428_80]);
    expect(statement.totalCents).toBe(4_104_88);
    // Printed 465.06 and 1,211.01 do not add up to the printed 1,676.08; here one line bears the cent.
    expect(amounts(statement, 'labor')).toEqual([465_06, 1_211_02]);
  });

  it('rounded by line, each line is the printed one and the total a cent less than printed', () => {
    const statement = rounded('line-to-cent');
    expect(amounts(statement, 'labor')).toEqual([465_06, 1_211_01]);
    expect(amounts(statement, 'materials')).toEqual([2_208_00, 220_80]);
    expect(statement.totalCents).toBe(4_104_88 - 1);
  });
});

describe('C: NYSEG v. Goettsche, 48 Misc. 2d 786 (1965) (seen)', () => {
  const statement = cost(
    {
      crew: [worked('w-1', 'line crew', [span(monday, 600)])],
      parts: [bought('material', 1, 41_44)],
      machines: [used('transport', [span(monday, 60)])],
    },
    {
      labor: [labor('line crew', '19.94')],
      machines: [machine('transport', 'hour', '33.75')],
      materialHandling: { fraction: '0.11', authorityId: 'a' },
      overheads: [
        {
          overheadId: 'material',
          title: 'Material overhead',
          fraction: '0.10',
          on: ['invoiced-parts'],
          onOverheads: [],
          limitUsd: null,
          authorityId: 'a',
        },
        {
          overheadId: 'fringe',
          title: 'Fringe',
          fraction: '0.2848',
          on: ['labor'],
          onOverheads: [],
          limitUsd: null,
          authorityId: 'a',
        },
        {
          overheadId: 'labor',
          title: 'Labor overhead',
          fraction: '0.10',
          on: ['labor'],
          onOverheads: [],
          limitUsd: null,
          authorityId: 'a',
        },
      ],
    },
    {
      credits: [
        { submissionId: 'c1', title: 'Joint owner of the pole', amountCents: 49_00, arithmetic: '-$49.00' },
      ],
    },
  );

  it('each printed charge', () => {
    expect(amounts(statement, 'labor')).toEqual([199_40]);
    expect(amounts(statement, 'materials')).toEqual([41_44, 4_56]);
    expect(amounts(statement, 'overhead')).toEqual([4_14, 56_79, 19_94]);
    expect(amounts(statement, 'machines')).toEqual([33_75]);
  });

  it('less the joint owner’s share, 311.02', () => {
    const charged = statement.lines
      .filter(({ section }) => section !== 'credits')
      .reduce((sum, { amountCents }) => sum + (amountCents ?? 0), 0);
    expect(charged).toBe(360_02);
    expect(statement.totalCents).toBe(311_02);
  });
});

describe('E: Lorain OH, Ord. 72-23 (2023) (seen)', () => {
  const rates = {
    labor: [labor('crew', '40.00'), labor('paving', '50.00')],
    stock: [stock('kit', '412.00')],
    flatTariffs: [
      {
        tariffId: 'kit',
        title: 'Breakaway kit',
        damage: ['breakaway-kit' as const],
        usd: '1000',
        covers: ['labor' as const, 'machines' as const, 'materials' as const],
        extras: { laborClasses: [], machineCodes: [], partNumbers: [] },
        authorityId: 'a',
      },
      {
        tariffId: 'replacement',
        title: 'Full replacement',
        damage: ['replace-whole' as const],
        usd: '7500',
        covers: ['labor' as const, 'machines' as const, 'materials' as const],
        extras: { laborClasses: ['paving'], machineCodes: [], partNumbers: [] },
        authorityId: 'a',
      },
    ],
    jobFees: [{ feeId: 'call-out', title: 'Call-out', usd: '100', damage: [], authorityId: 'a' }],
  };

  it('breakaway kit 1,000 and call-out 100, in place of time and materials', () => {
    const statement = cost(
      { crew: [worked('w-1', 'crew', [span(monday, 240)])], parts: [fromStock('kit', 1)] },
      rates,
      { damage: ['breakaway-kit'] },
    );
    expect(statement.totalCents).toBe(1_100_00);
    // What the price stands in for is said, with what it would have come to.
    expect(
      statement.notes.map(({ code, params }) => [code, params['section'], params['amountCents']]),
    ).toEqual([
      ['covered-by-flat-price', 'labor', 160_00],
      ['covered-by-flat-price', 'materials', 412_00],
    ]);
  });

  it('full replacement 7,500 and 100, and extras at time and materials beside it', () => {
    const statement = cost(
      {
        crew: [worked('w-1', 'crew', [span(monday, 240)]), worked('w-2', 'paving', [span(monday, 120)])],
        parts: [fromStock('kit', 1)],
      },
      rates,
      { damage: ['replace-whole'] },
    );
    expect(amounts(statement, 'flat-price')).toEqual([7_500_00]);
    // The extra is invented: two hours at 50.
    expect(amounts(statement, 'labor')).toEqual([100_00]);
    expect(statement.totalCents).toBe(7_700_00);
  });
});

it('F: Pleasanton CA, Res. 92-106 (seen): (salary + fringe) × 1.15 × 1.05 × 1.3389, factor 1.6167', () => {
  const on = (overheadId: string, fraction: string, onOverheads: string[]) => ({
    overheadId,
    title: overheadId,
    fraction,
    on: ['labor' as const],
    onOverheads,
    limitUsd: null,
    authorityId: 'a',
  });
  const statement = cost(
    { crew: [worked('w-1', 'crew', [span(monday, 600)])] },
    {
      labor: [labor('crew', '100.00', '0.30')],
      overheads: [
        on('first', '0.15', []),
        on('second', '0.05', ['first']),
        on('third', '0.3389', ['first', 'second']),
      ],
    },
  );
  // 1,300.00 × 1.15 × 1.05 × 1.3389 = 2,101.738…; by the printed factor of four places 2,101.71.
  expect(statement.totalCents).toBe(2_101_74);
  expect(Math.abs(statement.totalCents / 1_300_00 - 1.6167)).toBeLessThan(0.00005);
});

it('H: Frederick Water VA, 2018 (seen): $50 administration a job beside materials at 115 % and machines', () => {
  const statement = cost(
    {
      machines: [used('heavy', [span(monday, 90)]), used('vehicle', [span(monday, 150)])],
      parts: [fromStock('part', 2)],
    },
    {
      machines: [machine('heavy', 'hour', '200'), machine('vehicle', 'hour', '35')],
      stock: [stock('part', '100.00')],
      materialHandling: { fraction: '0.15', authorityId: 'a' },
      jobFees: [{ feeId: 'admin', title: 'Administration', usd: '50', damage: [], authorityId: 'a' }],
    },
  );
  // 1.5 × 200 + 2.5 × 35 + 2 × 100 × 1.15 + 50; the job is invented, the rates are not.
  expect(statement.totalCents).toBe(667_50);
});

it('New Albany OH (seen): the total to the nearest ten dollars', () => {
  const statement = cost(
    { parts: [bought('part', 1, 1_234_56)] },
    { totalRounding: { nearestUsd: '10', toward: 'nearest', authorityId: 'a' } },
  );
  expect(statement.totalCents).toBe(1_230_00);
  expect(amounts(statement, 'adjustments')).toEqual([-4_56]);
});

describe('23 CFR 645.117 (seen)', () => {
  it('(h)(5): credits never exceed cost', () => {
    const statement = cost(
      { parts: [bought('part', 1, 100_00)] },
      {},
      {
        credits: [{ submissionId: 'c1', title: 'Salvage', amountCents: 150_00, arithmetic: '-$150.00' }],
      },
    );
    expect(statement.totalCents).toBe(0);
    expect(statement.problems.map(({ code }) => code)).toContain('credit-above-cost');
  });

  it('(d): an additive shows its total, rate and base, and takes none of what is no base of it', () => {
    const statement = cost(
      { crew: [worked('w-1', 'crew', [span(monday, 60)])], parts: [bought('part', 1, 100_00)] },
      {
        labor: [labor('crew', '40.00')],
        overheads: [
          {
            overheadId: 'general',
            title: 'General',
            fraction: '0.13',
            on: ['labor'],
            onOverheads: [],
            limitUsd: null,
            authorityId: 'a',
          },
        ],
      },
    );
    const line = statement.lines.find(({ section }) => section === 'overhead');
    expect(line).toMatchObject({ quantity: '40.00', fraction: '0.13', amountCents: 5_20 });
    expect(line?.authority?.title).toBe('Resolution');
  });
});

it("Curt's Trucking v. Anchorage, 578 P.2d 975 (Alaska 1978) (seen): time on the claim is no damage", () => {
  const claimHandling = [
    {
      submissionId: 'h1',
      issuedOn: '2026-03-03',
      crew: [worked('w-9', 'clerk', [span(monday, 120)])],
      machines: [],
      parts: [],
      contractors: [],
    },
  ];
  const rates = { labor: [labor('clerk', '30.00')] };
  const off = cost({ parts: [bought('part', 1, 100_00)] }, rates, { claimHandling });
  expect(off.totalCents).toBe(100_00);
  expect(off.notes.map(({ code }) => code)).toEqual(['claim-handling-not-billed']);
  // Where an ordinance is named it is billed, in a section of its own.
  const on = cost(
    { parts: [bought('part', 1, 100_00)] },
    { ...rates, claimHandling: { authorityId: 'a' } },
    { claimHandling },
  );
  expect(amounts(on, 'claim-handling')).toEqual([60_00]);
});

it('water by the unit of the price: 7,480.52 gal is 10 × 100 ft³ (1,728 in³ in a cubic foot, 231 in a gallon)', () => {
  const at = (per: '100-ft3' | 'm3', usd: string, gallons: number) =>
    cost(
      {},
      { water: { usd, per, basis: 'retail', authorityId: 'a' } },
      {
        waterLost: { gallons, basis: 'meter' },
      },
    ).totalCents;
  expect(at('100-ft3', '4.00', 7_480.52)).toBe(40_00);
  // 1,000 gal is 3.785 412 m³ (NIST SP 811).
  expect(at('m3', '100.00', 1_000)).toBe(378_54);
});

it('23 CFR 645.117(e)(1) (seen): actual cost delivered, less discounts; tax as the invoice has it', () => {
  const part = bought('part', 2, 100_00);
  if (part.source.from !== 'invoice') throw new Error('not bought');
  const statement = cost(
    { parts: [{ ...part, source: { ...part.source, discountCents: 10_00, taxCents: 11_40 } }] },
    { salesTax: { fraction: '0.06', on: ['invoiced-parts'], authorityId: 'a' } },
  );
  // 2 × 100.00 − 10.00, and 6 % of that as the invoice charged it: not taxed a second time.
  expect(amounts(statement, 'materials')).toEqual([190_00, 11_40]);
});

it('the least charge: brings a smaller bill up to it, and no bill out of nothing', () => {
  // Common practice, no source.
  const rates = { minimumCharge: { usd: '250.00', authorityId: 'a' } };
  const small = cost({ parts: [bought('part', 1, 100_00)] }, rates);
  expect(small.totalCents).toBe(250_00);
  expect(cost({ parts: [bought('part', 1, 300_00)] }, rates).totalCents).toBe(300_00);
  expect(cost({}, rates).totalCents).toBe(0);
});

it('sales tax on stated classes of materials', () => {
  // 6 % on 200.00, handling outside of it (common practice, no source).
  const statement = cost(
    { parts: [fromStock('part', 2)] },
    {
      stock: [stock('part', '100.00')],
      materialHandling: { fraction: '0.05', authorityId: 'a' },
      salesTax: { fraction: '0.06', on: ['stock'], authorityId: 'a' },
    },
  );
  expect(amounts(statement, 'materials')).toEqual([200_00, 10_00, 12_00]);
});
