import { describe, expect, it } from 'vitest';
import { demandFor } from '../../shared/costs/demand.ts';
import { rateBookEdition } from '../../shared/costs/rateBook.ts';
import { problemsFromZod } from '../../shared/problems/fromZod.ts';
import { amounts, bought, cost, fromStock, machine, noRates, span, stock, used } from '../support/rates.ts';

const morning = span('2026-03-04T14:00:00Z', 240);
const codes = (problems: readonly { readonly code: string }[]) => problems.map(({ code }) => code);

describe('machines', () => {
  const rates = {
    machines: [
      machine('truck', 'hour', '24.50'),
      machine('crane', 'hour', '90', '30'),
      machine('van', 'mile', '0.70'),
    ],
  };

  it('by the hour in use; standing by only where the rate has a price for it', () => {
    const standingBy = [span('2026-03-04T18:00:00Z', 60)];
    const statement = cost(
      { machines: [used('truck', [morning], { standingBy }), used('crane', [morning], { standingBy })] },
      rates,
    );
    expect(statement.lines.map(({ item, kind, amountCents }) => [item, kind, amountCents])).toEqual([
      ['crane', 'machine-hours', 360_00],
      ['crane', 'machine-standby', 30_00],
      ['truck', 'machine-hours', 98_00],
    ]);
    expect(statement.notes).toEqual([
      { code: 'standby-not-billed', path: 'r1', params: { machineCode: 'truck', time: '1 h' } },
    ]);
  });

  it('standing by never displaces use', () => {
    const statement = cost({ machines: [used('crane', [morning], { standingBy: [morning] })] }, rates);
    expect(amounts(statement, 'machines')).toEqual([360_00]);
    expect(codes(statement.problems)).toEqual(['machine-claimed-twice']);
  });

  it('by the mile', () => {
    const statement = cost({ machines: [used('van', [], { drivenMiles: 12.4 })] }, rates);
    expect(statement.lines[0]).toMatchObject({
      quantity: '12.4',
      unit: 'mile',
      amountCents: 8_68,
      arithmetic: '12.4 mi × $0.70/mi = $8.68',
    });
  });

  it('miles of a machine that is billed by the hour are noted, not billed', () => {
    const statement = cost({ machines: [used('truck', [morning], { drivenMiles: 9 })] }, rates);
    expect(amounts(statement, 'machines')).toEqual([98_00]);
    expect(codes(statement.notes)).toEqual(['miles-not-billed']);
  });

  it.each([
    ['hours where the rate is by the mile', used('van', [morning]), 'machine-needs-miles'],
    ['miles where the rate is by the hour', used('truck', [], { drivenMiles: 9 }), 'machine-needs-hours'],
    ['a machine the edition does not list', used('loader', [morning]), 'no-machine-rate'],
  ])('%s: a line without an amount', (_, entry, code) => {
    const statement = cost({ machines: [entry] }, rates);
    expect(statement).toMatchObject({ complete: false, totalCents: 0 });
    expect(statement.lines).toHaveLength(1);
    expect(statement.problems).toMatchObject([{ code, path: 'lines.machines-1' }]);
  });

  it('take the edition of the day of the strike, whenever they worked', () => {
    const old = {
      ...noRates,
      editionId: 'old',
      effectiveTo: '2026-03-03',
      machines: [machine('truck', 'hour', '20')],
    };
    const next = {
      ...noRates,
      editionId: 'new',
      effectiveFrom: '2026-03-04',
      machines: [machine('truck', 'hour', '50')],
    };
    expect(cost({ machines: [used('truck', [morning])] }, [old, next]).totalCents).toBe(80_00);
  });

  it('two entries in one record are two machines, and said; the same entry in two records is one', () => {
    const pair = cost({ machines: [used('truck', [morning]), used('truck', [morning])] }, rates);
    expect(pair.totalCents).toBe(196_00);
    expect(pair.problems).toMatchObject([
      { code: 'machine-listed-twice', path: 'r1', params: { machineCode: 'truck', times: 2, standing: 2 } },
    ]);
    // Told apart by what is written of them: nothing to ask.
    const apart = cost(
      { machines: ['14', '15'].map((description) => used('truck', [morning], { description })) },
      rates,
    );
    expect([apart.totalCents, apart.problems]).toEqual([196_00, []]);
    const twice = cost(
      [{ machines: [used('truck', [morning])] }, { machines: [used('truck', [morning])] }],
      rates,
    );
    expect(twice.totalCents).toBe(98_00);
    expect(codes(twice.problems)).toEqual(['machine-claimed-twice']);
  });

  it('nobody operates two machines at once: the same entry with one operator is one machine', () => {
    const entry = used('truck', [morning], { operatorWorkerId: 'w-1' });
    const statement = cost({ machines: [entry, entry] }, rates);
    expect(statement.totalCents).toBe(98_00);
    expect(statement.problems).toMatchObject([
      { code: 'machine-listed-again', path: 'r1', params: { machineCode: 'truck', operatorWorkerId: 'w-1' } },
    ]);
    const other = { ...entry, operatorWorkerId: 'w-2' };
    expect(cost({ machines: [entry, other] }, rates)).toMatchObject({
      totalCents: 196_00,
      problems: [{ code: 'machine-listed-twice' }],
    });
  });

  it('a stretch that is too long is a line without an amount', () => {
    const year = [span('2026-03-04T14:00:00Z', 60 * 24 * 365)];
    const statement = cost({ machines: [used('truck', year)] }, rates);
    expect(statement).toMatchObject({ complete: false, lines: [{ item: 'truck', amountCents: null }] });
    expect(codes(statement.problems)).toEqual(['stretch-too-long']);
    // Standing by has no price here, so nothing is missing from the bill.
    const stood = cost({ machines: [used('truck', [], { standingBy: year })] }, rates);
    expect(stood).toMatchObject({ complete: true, lines: [] });
    expect(codes(stood.problems)).toEqual(['stretch-too-long']);
  });
});

describe('materials', () => {
  const rates = {
    stock: [stock('kit', '412.00'), stock('gasket', '3.335')],
    materialHandling: { fraction: '0.05', authorityId: 'a' },
  };

  it('one line a part, rounded once; handling on the lines as they print', () => {
    const statement = cost(
      {
        parts: [
          fromStock('kit', 1),
          fromStock('gasket', 1),
          fromStock('gasket', 2),
          bought('stem', 1, 10_010),
        ],
      },
      rates,
    );
    expect(statement.lines.map(({ item, quantity, amountCents }) => [item, quantity, amountCents])).toEqual([
      ['gasket', '3', 10_01], // 10.005
      ['kit', '1', 412_00],
      ['stem', '1', 100_10],
      ['', '522.11', 26_11], // 5 % of 522.11 is 26.1055
    ]);
    expect(statement.lines.at(-1)?.arithmetic).toBe('$522.11 × 0.05 = $26.11');
  });

  it('decimals add as decimals', () => {
    // 0.1 + 0.2 is 0.3 of a part, not 0.30000000000000004.
    expect(cost({ parts: [fromStock('kit', 0.1), fromStock('kit', 0.2)] }, rates).lines[0]?.quantity).toBe(
      '0.3',
    );
  });

  it('no handling where the book charges none, and none on nothing', () => {
    expect(cost({ parts: [fromStock('kit', 1)] }, { ...rates, materialHandling: null }).lines).toHaveLength(
      1,
    );
    expect(cost({ parts: [] }, rates).lines).toEqual([]);
  });

  it('the same slip or invoice line in two records is billed once, and said', () => {
    const parts = [fromStock('kit', 1, 'S-1'), bought('stem', 1, 100_00)];
    const statement = cost([{ parts }, { parts }], rates);
    expect(amounts(statement, 'materials')).toEqual([412_00, 100_00, 25_60]);
    expect(codes(statement.problems)).toEqual(['part-recorded-twice', 'part-recorded-twice']);
    expect(statement.lines[0]?.submissionIds).toEqual(['r1', 'r2']);
  });

  it('stock without a slip counts as often as it is listed: nothing says that it is the same', () => {
    expect(
      cost([{ parts: [fromStock('kit', 1)] }, { parts: [fromStock('kit', 1)] }], rates).lines[0]?.quantity,
    ).toBe('2');
  });

  it('a discount above the price never pays for the rest of the bill', () => {
    const part = bought('stem', 1, 100);
    if (part.source.from !== 'invoice') throw new Error('not bought');
    const tooMuch = { ...part, source: { ...part.source, discountCents: 5_000_00, taxCents: 8 } };
    const statement = cost({ parts: [tooMuch, fromStock('kit', 1)] }, { ...rates, materialHandling: null });
    expect(statement.totalCents).toBe(412_08);
    expect(statement.problems).toMatchObject([
      { code: 'invoice-discount-above-price', params: { partNumber: 'stem' } },
    ]);
  });

  it('a part without a price is a line without an amount', () => {
    const statement = cost({ parts: [fromStock('bonnet', 1)] }, rates);
    expect(statement).toMatchObject({ complete: false });
    expect(statement.problems).toMatchObject([{ code: 'no-stock-price', path: 'lines.materials-1' }]);
    expect(statement.lines).toHaveLength(1);
  });
});

describe('contractors', () => {
  const invoice = {
    contractor: 'Paver',
    invoiceNumber: '77',
    invoicedOn: '2026-03-20',
    work: 'sidewalk panel',
    amountCents: 1_250_00,
    invoiceSha256: null,
  };

  it('at cost, with the invoice as authority', () => {
    expect(cost({ contractors: [invoice] }, {}).lines).toMatchObject([
      {
        amountCents: 1_250_00,
        authority: { kind: 'invoice', title: 'Paver', edition: '77' },
        dateBasis: { rule: 'invoice', dates: ['2026-03-20'] },
      },
    ]);
  });

  it('once when two records hold it; both, and said, when they differ', () => {
    const same = cost([{ contractors: [invoice] }, { contractors: [invoice] }], {});
    expect([same.totalCents, codes(same.problems)]).toEqual([1_250_00, ['invoice-recorded-twice']]);
    const listed = cost({ contractors: [invoice, invoice] }, {});
    expect([listed.totalCents, listed.problems]).toMatchObject([
      1_250_00,
      [{ code: 'invoice-listed-twice', path: 'r1', params: { contractor: 'Paver', invoiceNumber: '77' } }],
    ]);
    const items = ['panel 1', 'panel 2'].map((work) => ({ ...invoice, work }));
    expect(cost({ contractors: items }, {})).toMatchObject({ totalCents: 2_500_00, problems: [] });
    const other = cost(
      [{ contractors: [invoice] }, { contractors: [{ ...invoice, amountCents: 1_300_00 }] }],
      {},
    );
    expect([other.totalCents, codes(other.problems)]).toEqual([2_550_00, ['invoice-with-two-amounts']]);
  });
});

describe('water and flow tests', () => {
  const rates = {
    water: { per1000GalUsd: '6.15', authorityId: 'a' },
    flowTest: { eachUsd: '85', authorityId: 'a' },
  };
  const waterLost = { gallons: 12_345, basis: 'meter' };

  it('water by thousands of gallons, exactly', () => {
    const statement = cost({}, rates, { waterLost });
    // 12.345 × 6.15 = 75.92175
    expect(statement.lines).toMatchObject([{ quantity: '12.345', unit: '1000-gal', amountCents: 75_92 }]);
    expect(statement.water).toEqual({ state: 'recorded', gallons: 12_345, basis: 'meter' });
  });

  it('nobody measured: no line, and it says so', () => {
    const statement = cost({}, rates);
    expect(statement.lines).toEqual([]);
    expect(statement.water.state).toBe('not-measured');
  });

  it('the main valve held: none was lost, and a figure recorded all the same is not billed', () => {
    const statement = cost({}, rates, { waterLost, mainValveHeld: true });
    expect(statement.lines).toEqual([]);
    expect(statement.water.state).toBe('valve-held');
    expect(codes(statement.problems)).toEqual(['water-though-valve-held']);
  });

  it('water without a price makes the statement incomplete', () => {
    const statement = cost({}, {}, { waterLost });
    expect(statement.complete).toBe(false);
    expect(codes(statement.problems)).toEqual(['no-water-rate']);
  });

  it('a fee for each test after the repair, and for no other', () => {
    const test = (submissionId: string, purpose: 'after-repair' | 'routine') => ({
      submissionId,
      purpose,
      // Two of one moment would be one test told twice.
      testedAt: `2026-03-05T14:0${submissionId.slice(1)}:00Z`,
    });
    const flowTests = [test('t1', 'after-repair'), test('t2', 'routine'), test('t3', 'after-repair')];
    const statement = cost({}, rates, { flowTests });
    expect(statement.lines).toMatchObject([
      { quantity: '2', amountCents: 170_00, submissionIds: ['t1', 't3'] },
    ]);
    expect(statement.notes).toMatchObject([{ code: 'flow-test-not-billed', path: 't2' }]);
    expect(codes(cost({}, {}, { flowTests }).notes)).toEqual(['no-flow-test-fee', 'flow-test-not-billed']);
  });
});

describe('the rate book itself', () => {
  it('is refused with every reason at once', () => {
    const parsed = rateBookEdition.safeParse(
      {
        ...noRates,
        effectiveFrom: '2026-02-01',
        effectiveTo: '2026-01-01',
        stock: [stock('kit', '1'), stock('kit', '2')],
        water: { per1000GalUsd: '6', authorityId: 'nobody' },
      },
      { reportInput: true },
    );
    expect(problemsFromZod(parsed.error?.issues ?? [])).toEqual([
      { code: 'edition-ends-before-start', path: 'effectiveTo', params: {} },
      { code: 'listed-twice', path: 'stock.1.partNumber', params: { code: 'kit' } },
      { code: 'authority-not-listed', path: 'water.authorityId', params: { authorityId: 'nobody' } },
    ]);
  });
});

describe('what claims may demand', () => {
  const statement = { totalCents: 1_000_00, complete: true };
  const other = (demandCents: number) => ({ claimNumber: '2026-0001', demandCents });

  it.each([
    ['all of it', [], null, 1_000_00],
    ['what another claim leaves', [other(600_00)], null, 400_00],
    ['less, when asked', [other(600_00)], 100_00, 100_00],
  ])('%s', (_, others, askedCents, demandCents) => {
    expect(demandFor({ statement, others, askedCents })).toEqual({ ok: true, demandCents });
  });

  it.each([
    ['more than is left', statement, [other(600_00)], 400_01, 'demand-above-statement'],
    ['when nothing is left', statement, [other(1_000_00)], null, 'nothing-left-to-demand'],
    ['nothing', { ...statement, totalCents: 0 }, [], null, 'nothing-to-demand'],
    ['an incomplete statement', { ...statement, complete: false }, [], null, 'statement-incomplete'],
  ])('never %s', (_, of, others, askedCents, code) => {
    expect(demandFor({ statement: of, others, askedCents })).toMatchObject({
      ok: false,
      problems: [{ code }],
    });
  });
});
