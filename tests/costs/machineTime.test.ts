import { describe, expect, it } from 'vitest';
import { fuelInRates } from '../../shared/costs/machineHolds.ts';
import type { RateBookEdition } from '../../shared/costs/rateBook.ts';
import { amounts, cost, machine, noRates, noRecord, noWork, span, used } from '../support/rates.ts';

// Rates and jobs are invented and reckoned by hand; where no rule is named it is common practice without a source.
// Chicago is UTC-6 in these weeks; 2 March 2026 is a Monday.
const at = (day: string, hour: number, minute = 0) =>
  new Date(Date.parse(`2026-03-${day}T06:00:00Z`) + (hour * 60 + minute) * 60_000).toISOString();
type Rate = RateBookEdition['machines'][number];
type Span = ReturnType<typeof span>;

const pump = (more: Partial<Rate>): { machines: Rate[] } => ({
  machines: [{ ...machine('pump', 'hour', '100'), ...more }],
});
const bill = (rates: { machines: Rate[] }, inUse: Span[], standingBy: Span[] = []) =>
  cost({ machines: [used('pump', inUse, { standingBy })] }, rates);
const told = (statement: ReturnType<typeof cost>) =>
  statement.lines.map(({ kind, hoursWorked, quantity, amountCents }) => [
    kind,
    hoursWorked,
    quantity,
    amountCents,
  ]);

describe('by the day', () => {
  const rates = pump({ unit: 'day', rateUsd: '400', standbyUsd: '10' });

  it('each calendar day with use, however long', () => {
    const statement = bill(rates, [span(at('02', 8), 60), span(at('02', 14), 60), span(at('04', 8), 30)]);
    expect(told(statement)).toEqual([['machine-days', null, '2', 800_00]]);
    expect(statement.lines[0]).toMatchObject({
      unit: 'day',
      arithmetic: '2 d × $400/d = $800.00',
      days: [
        { date: '2026-03-02', seconds: 7200 },
        { date: '2026-03-04', seconds: 1800 },
      ],
    });
  });

  it('past midnight it is on two days of the utility, not of UTC', () => {
    expect(told(bill(rates, [span(at('02', 22), 240)]))).toEqual([['machine-days', null, '2', 800_00]]);
    expect(told(bill(rates, [span(at('02', 17), 120)]))).toEqual([['machine-days', null, '1', 400_00]]);
  });

  it('standing by on a day that is billed whole is not billed again', () => {
    const statement = bill(rates, [span(at('02', 8), 60)], [span(at('02', 9), 120), span(at('03', 9), 60)]);
    expect(amounts(statement, 'machines')).toEqual([400_00, 10_00]);
    expect(statement.notes).toEqual([
      { code: 'standby-in-day-rate', path: 'r1', params: { machineCode: 'pump', time: '2 h' } },
    ]);
  });
});

describe('the least that is billed on a day of use', () => {
  it('is once a day, and on each day', () => {
    const rates = pump({ minimumHours: '2' });
    expect(told(bill(rates, [span(at('02', 8), 15), span(at('02', 10), 15)]))).toEqual([
      ['machine-hours', '0.5', '2', 200_00],
    ]);
    expect(told(bill(rates, [span(at('02', 8), 15), span(at('03', 8), 15)]))).toEqual([
      ['machine-hours', '0.5', '4', 400_00],
    ]);
    expect(told(bill(rates, [span(at('02', 8), 150)]))).toEqual([['machine-hours', '2.5', '2.5', 250_00]]);
  });

  it('one job past midnight has one', () => {
    const rates = pump({ minimumHours: '2' });
    expect(told(bill(rates, [span(at('02', 23, 30), 60)]))).toEqual([['machine-hours', '1', '2', 200_00]]);
    expect(told(bill(rates, [span(at('02', 23, 30), 30), span(at('03', 0), 30)]))).toEqual([
      ['machine-hours', '1', '2', 200_00],
    ]);
  });

  it('time standing by does not fill it', () => {
    const rates = pump({ minimumHours: '1', standbyUsd: '10' });
    expect(told(bill(rates, [span(at('02', 8), 30)], [span(at('02', 8, 30), 60)]))).toEqual([
      ['machine-hours', '0.5', '1', 100_00],
      ['machine-standby', '1', '1', 10_00],
    ]);
  });
});

it('steps of each run or of the day, before the minimum', () => {
  const inUse = [span(at('02', 8), 20), span(at('02', 10), 20)];
  const half = { minutes: 30, toward: 'up' as const };
  expect(told(bill(pump({ increment: { ...half, of: 'call' } }), inUse))).toEqual([
    ['machine-hours', '0.6667', '1', 100_00],
  ]);
  expect(
    told(bill(pump({ increment: { ...half, of: 'day' } }), [span(at('02', 8), 20), span(at('02', 10), 5)])),
  ).toEqual([['machine-hours', '0.4167', '0.5', 50_00]]);
  expect(
    bill(pump({ increment: { ...half, of: 'call' }, minimumHours: '2' }), inUse).lines[0]?.arithmetic,
  ).toBe(
    '40 min + 10 min (20 min → 1 × 30 min) + 10 min (20 min → 1 × 30 min) + 1 h (1 h < 2 h) = 2 h × $100/h = $200.00',
  );
});

describe('what a rate holds', () => {
  const work = (machineCode: string, more: Partial<ReturnType<typeof used>> = {}) => ({
    ...noWork,
    records: [{ ...noRecord, machines: [used(machineCode, [span(at('02', 8), 60)], more)] }],
  });
  const editions = [
    {
      ...noRates,
      machines: [
        { ...machine('loader', 'hour', '60'), includes: ['fuel' as const] },
        machine('pump', 'hour', '20'),
      ],
    },
  ];

  it('fuel: which machines of the job hold it', () => {
    expect(fuelInRates(work('loader'), editions)).toEqual(['loader']);
    expect(fuelInRates(work('pump'), editions)).toEqual([]);
    // It was on the yard and did nothing.
    expect(fuelInRates(work('loader', { inUse: [] }), editions)).toEqual([]);
  });
});
