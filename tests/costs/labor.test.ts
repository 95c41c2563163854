import { describe, expect, it } from 'vitest';
import { splitByDay } from '../../shared/costs/days.ts';
import { amounts, cost, labor, noRates, span, worked } from '../support/rates.ts';

// Clock changes of 2026 in the United States: 8 March and 1 November at 2:00 (15 U.S.C. 260a). The expected hours are
// counted on a clock, not computed here.
const rates = { labor: [labor('crew', '30')] };
const hours = (statement: ReturnType<typeof cost>) =>
  statement.lines.map(({ hoursWorked, days }) => ({ hoursWorked, days }));

describe('hours worked', () => {
  it('are work less breaks', () => {
    const statement = cost(
      {
        crew: [worked('w', 'crew', [span('2026-03-04T14:00:00Z', 270)], [span('2026-03-04T16:00:00Z', 30)])],
      },
      rates,
    );
    expect(hours(statement)).toEqual([{ hoursWorked: '4', days: [{ date: '2026-03-04', seconds: 14_400 }] }]);
    expect(statement.totalCents).toBe(120_00);
    expect(statement.lines[0]?.arithmetic).toBe('4 h × $30/h = $120.00');
  });

  it('stand on the day of the utility, not of the server', () => {
    // 22:30 to 0:30 in Chicago is 4:30 to 6:30 UTC of the next day.
    const statement = cost({ crew: [worked('w', 'crew', [span('2026-03-05T04:30:00Z', 120)])] }, rates);
    expect(statement.lines[0]?.days).toEqual([
      { date: '2026-03-04', seconds: 5400 },
      { date: '2026-03-05', seconds: 1800 },
    ]);
    expect(statement.lines[0]?.arithmetic).toBe('1 h 30 min + 30 min = 2 h × $30/h = $60.00');
  });

  it('skip the hour that spring skips: midnight to 4:00 on 8 March is three hours', () => {
    const statement = cost(
      { crew: [worked('w', 'crew', [{ from: '2026-03-08T06:00:00Z', to: '2026-03-08T09:00:00Z' }])] },
      rates,
    );
    expect(hours(statement)).toEqual([{ hoursWorked: '3', days: [{ date: '2026-03-08', seconds: 10_800 }] }]);
  });

  it('count the hour that autumn repeats twice: midnight to 4:00 on 1 November is five hours', () => {
    const statement = cost(
      { crew: [worked('w', 'crew', [{ from: '2026-11-01T05:00:00Z', to: '2026-11-01T10:00:00Z' }])] },
      rates,
    );
    expect(hours(statement)).toEqual([{ hoursWorked: '5', days: [{ date: '2026-11-01', seconds: 18_000 }] }]);
  });

  it('cut at the day’s real start where midnight does not exist (São Paulo, 4 November 2018, IANA tz)', () => {
    const from = Date.parse('2018-11-04T01:00:00Z');
    expect(splitByDay(from, from + 4 * 3_600_000, 'America/Sao_Paulo')).toMatchObject([
      { date: '2018-11-03', ms: 2 * 3_600_000 },
      { date: '2018-11-04', ms: 2 * 3_600_000 },
    ]);
  });
});

describe('the rate is that of the day worked', () => {
  const old = { ...noRates, editionId: '2025', effectiveTo: '2026-03-04', labor: [labor('crew', '30')] };
  const next = { ...noRates, editionId: '2026', effectiveFrom: '2026-03-05', labor: [labor('crew', '40')] };
  // 22:00 to 2:00 across the night on which the edition changes.
  const night = { crew: [worked('w', 'crew', [span('2026-03-05T04:00:00Z', 240)])] };

  it('on both sides of a midnight', () => {
    const statement = cost(night, [old, next]);
    expect(
      statement.lines.map(({ editionId, rateUsd, amountCents }) => [editionId, rateUsd, amountCents]),
    ).toEqual([
      ['2025', '30', 60_00],
      ['2026', '40', 80_00],
    ]);
  });

  it('and the later edition counts where the earlier was never closed', () => {
    const open = { ...old, effectiveTo: null };
    expect(cost(night, [open, next]).totalCents).toBe(140_00);
    expect(cost(night, [next, open]).totalCents).toBe(140_00);
  });

  it('none in force: the line stands without an amount and the statement is incomplete', () => {
    const statement = cost(night, [{ ...old, effectiveTo: '2026-03-04' }]);
    expect(amounts(statement, 'labor')).toEqual([60_00, null]);
    expect(statement).toMatchObject({ complete: false, totalCents: 60_00 });
    expect(statement.problems).toEqual([
      { code: 'no-rate-edition', path: 'lines.labor-2', params: { date: '2026-03-05' } },
    ]);
  });

  it('two from the same day: neither is chosen', () => {
    const twin = { ...next, editionId: '2026b', labor: [labor('crew', '50')] };
    const statement = cost(night, [old, next, twin]);
    expect(amounts(statement, 'labor')).toEqual([60_00, null]);
    expect(statement.problems[0]).toMatchObject({
      code: 'two-rate-editions',
      params: { date: '2026-03-05', editions: '2026, 2026b' },
    });
  });

  it('a class that the edition does not list is never silently zero', () => {
    const statement = cost({ crew: [worked('w', 'diver', [span('2026-03-04T14:00:00Z', 60)])] }, rates);
    expect(statement.lines[0]).toMatchObject({ amountCents: null, rateUsd: null, description: 'diver' });
    expect(statement.complete).toBe(false);
    expect(statement.problems).toEqual([
      {
        code: 'no-labor-rate',
        path: 'lines.labor-1',
        params: { laborClass: 'diver', date: '2026-03-04', editionId: 'book' },
      },
    ]);
  });
});

describe('no moment of a worker is billed twice', () => {
  const morning = span('2026-03-04T14:00:00Z', 240);

  it('in the same repair typed by two crews', () => {
    const once = { crew: [worked('w', 'crew', [morning])] };
    const statement = cost([once, once], rates);
    expect(statement.totalCents).toBe(120_00);
    expect(statement.problems).toEqual([
      { code: 'work-claimed-twice', path: 'r1 r2', params: { workerId: 'w', time: '4 h' } },
    ]);
  });

  it('in intervals that overlap in part, under two classes', () => {
    const statement = cost(
      [
        { crew: [worked('w', 'crew', [morning])] },
        { crew: [worked('w', 'foreman', [span('2026-03-04T17:00:00Z', 120)])] },
      ],
      { labor: [labor('crew', '30'), labor('foreman', '50')] },
    );
    // 8:00–12:00 as crew, and only 12:00–13:00 as foreman.
    expect(amounts(statement, 'labor')).toEqual([120_00, 50_00]);
    expect(statement.problems[0]?.params).toEqual({ workerId: 'w', time: '1 h' });
  });

  it('a break that one record states is not billed by the other', () => {
    const statement = cost(
      [
        { crew: [worked('w', 'crew', [morning], [span('2026-03-04T15:00:00Z', 30)])] },
        { crew: [worked('w', 'crew', [morning])] },
      ],
      rates,
    );
    expect(statement.totalCents).toBe(105_00);
  });

  it('two workers at the same time are two', () => {
    const statement = cost({ crew: [worked('a', 'crew', [morning]), worked('b', 'crew', [morning])] }, rates);
    expect(statement.totalCents).toBe(240_00);
    expect(statement.problems).toEqual([]);
  });
});

describe('rounding', () => {
  it('half a cent goes up, once, on the exact amount', () => {
    // 0.5 h × 30.01 = 15.005 exactly; 50 min × 30.00 = 25 exactly; 1 min × 0.30 = half a cent.
    const amount = (minutes: number, hourlyUsd: string) =>
      cost(
        { crew: [worked('w', 'crew', [span('2026-03-04T14:00:00Z', minutes)])] },
        { labor: [labor('crew', hourlyUsd)] },
      ).totalCents;
    expect(amount(30, '30.01')).toBe(15_01);
    expect(amount(50, '30')).toBe(25_00);
    expect(amount(1, '0.30')).toBe(1);
    expect(amount(1, '0.29')).toBe(0);
  });

  it('keeps every digit of the rate', () => {
    // 1,000 h of 38.415123 would lose 12 cents at four digits.
    const statement = cost(
      { crew: [worked('w', 'crew', [span('2026-03-04T14:00:00Z', 600)])] },
      { labor: [labor('crew', '38.415123', '0.038462')] },
    );
    // 384.15123 × 1.038462 = 398.926454..., by hand with bc.
    expect(statement.totalCents).toBe(398_93);
  });

  it('an impossible stretch is a line without an amount, so that the bill does not pass for whole', () => {
    const statement = cost(
      { crew: [worked('w', 'crew', [span('2026-03-04T14:00:00Z', 60 * 24 * 32)])] },
      rates,
    );
    expect(statement).toMatchObject({ complete: false, totalCents: 0 });
    expect(statement.lines).toMatchObject([
      { item: 'w', quantity: '768', amountCents: null, submissionIds: ['r1'], days: [] },
    ]);
    expect(statement.problems).toEqual([
      { code: 'stretch-too-long', path: 'lines.labor-1', params: { item: 'w' } },
    ]);
  });
});
