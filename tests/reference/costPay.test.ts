import { describe, expect, it } from 'vitest';
import { amounts, bought, cost, labor, machine, span, used, worked } from '../support/rates.ts';
import { plainRules, ruledRates } from '../support/payRules.ts';

/**
 * Published pay and machine rules, computed by the engine. Source and marker stand beside each. "seen": read in the
 * document itself. Chicago is six hours behind UTC in these weeks of winter; 2 March 2026 is a Monday.
 */
const chicago = (day: string, hour: number, minute = 0) =>
  new Date(Date.parse(`2026-03-${day}T06:00:00Z`) + (hour * 60 + minute) * 60_000).toISOString();
const told = (statement: ReturnType<typeof cost>) =>
  statement.lines
    .filter(({ section }) => section === 'labor')
    .map(({ time, hoursWorked, quantity, amountCents }) => [time?.as, hoursWorked, quantity, amountCents]);

describe('29 CFR 778.221(b) (seen): 12 an hour; Monday 9 h, Tuesday to Friday 8 h, a call of 2 h with a minimum of 3', () => {
  const days = ['03', '04', '05', '06'].map((day) => span(chicago(day, 7, 30), 480));
  const call = span(chicago('06', 20), 120);
  const crew = (mondayMinutes: number) => [
    worked('w', 'crew', [span(chicago('02', 7, 30), mondayMinutes), ...days, call]),
  ];
  const otherHours = { multiplier: '1.5', minimumHours: '3', minimumWhenAdjoining: false };
  const week = { startsOn: 1, overHours: '40', multiplier: '1.5' };

  it('480 regular + 18 + 54 = 552, where the ninth hour of Monday is past the hours of the week', () => {
    const statement = cost(
      { crew: crew(540) },
      ruledRates(
        { otherHours, week, workingHours: [{ days: [1, 2, 3, 4, 5], from: '07:30', to: '16:30' }] },
        '12',
      ),
    );
    expect(told(statement)).toEqual([
      ['working-hours', '40', '40', 480_00],
      ['other-hours', '2', '3', 54_00],
      ['week-overtime', '1', '1', 18_00],
    ]);
    expect(statement.totalCents).toBe(552_00);
    expect(statement.lines[1]?.arithmetic).toBe('2 h + 1 h (2 h < 3 h) = 3 h × $12/h × 1.5 = $54.00');
  });

  it('and the same where it is outside the schedule, and its premium is credited against the week', () => {
    // 43 hours are worked, three past 40, and all three are paid at one and a half already.
    const statement = cost(
      { crew: crew(540) },
      ruledRates(
        { otherHours, week, workingHours: [{ days: [1, 2, 3, 4, 5], from: '07:30', to: '15:30' }] },
        '12',
      ),
    );
    expect(told(statement)).toEqual([
      ['working-hours', '40', '40', 480_00],
      ['other-hours', '3', '4', 72_00],
    ]);
    expect(statement.totalCents).toBe(552_00);
  });

  it('the 43 hours worked count towards the week, not the 44 paid', () => {
    // 37 h elsewhere, a call of 2 h and one of 1 h, each paid 3 h at one and a quarter: the fortieth hour is the last.
    const statement = cost(
      { crew: [worked('w', 'crew', [call, span(chicago('07', 8), 60)])] },
      ruledRates({ otherHours: { ...otherHours, multiplier: '1.25' }, week }, '12'),
      { weekHours: [{ workerId: 'w', weekStartsOn: '2026-03-02', hours: '37' }] },
    );
    expect(told(statement)).toEqual([['other-hours', '3', '6', 90_00]]);
    expect(statement.lines[0]?.arithmetic).toBe(
      '2 h + 1 h + 1 h (2 h < 3 h) + 2 h (1 h < 3 h) = 6 h × $12/h × 1.25 = $90.00',
    );
  });
});

describe('29 CFR 778.103 (seen): all hours of the workweek are totaled, though two or more unrelated assignments were performed', () => {
  // The rule is published, the job is invented: 34 h on the payroll before, then two stretches of 4 h, one of them under
  // a flat price. 42 h, two past 40, whichever of the stretches they fall in. How a job is billed changes no hour of pay.
  const flat = (laborClasses: string[]) => ({
    tariffId: 'kit',
    title: 'Kit',
    damage: ['breakaway-kit' as const],
    usd: '1000',
    covers: ['labor' as const],
    extras: { laborClasses, machineCodes: [], partNumbers: [] },
    authorityId: 'a',
  });
  const rates = {
    labor: [
      { ...labor('repair', '40'), payRulesId: 'rules' },
      { ...labor('paving', '30'), payRulesId: 'rules' },
    ],
    payRules: [{ ...plainRules, week: { startsOn: 1, overHours: '40', multiplier: '1.5' } }],
  };
  const priced = (first: string, second: string, flatTariffs: ReturnType<typeof flat>[]) =>
    cost(
      {
        crew: [
          worked('w', first, [span(chicago('06', 7, 30), 240)]),
          worked('w', second, [span(chicago('06', 11, 30), 240)]),
        ],
      },
      { ...rates, flatTariffs },
      {
        damage: ['breakaway-kit'],
        weekHours: [{ workerId: 'w', weekStartsOn: '2026-03-02', hours: '34' }],
      },
    );

  it('the extra after the flat price has the hours past 40: 2 × 30 + 2 × 30 × 1.5 = 150', () => {
    const statement = priced('repair', 'paving', [flat(['paving'])]);
    expect(told(statement)).toEqual([
      ['working-hours', '2', '2', 60_00],
      ['week-overtime', '2', '2', 90_00],
    ]);
    // What the price stands in for: 4 × 40.
    expect(statement.notes.map(({ params }) => params['amountCents'])).toEqual([160_00]);
  });

  it('the extra before it has none, and what the price stands in for has them: 2 × 40 + 2 × 40 × 1.5 = 200', () => {
    const statement = priced('paving', 'repair', [flat(['paving'])]);
    expect(told(statement)).toEqual([['working-hours', '4', '4', 120_00]]);
    expect(statement.notes.map(({ params }) => params['amountCents'])).toEqual([200_00]);
  });

  it('billed and covered together are what the same work is without a flat price', () => {
    for (const [first, second] of [
      ['repair', 'paving'],
      ['paving', 'repair'],
    ] as const) {
      const split = priced(first, second, [flat(['paving'])]);
      const covered = Number(split.notes[0]?.params['amountCents']);
      expect(split.totalCents - 1000_00 + covered).toBe(priced(first, second, []).totalCents);
    }
  });

  it('a worker who is wholly under the price draws no question about hours', () => {
    const statement = priced('repair', 'repair', [flat(['paving'])]);
    expect(told(statement)).toEqual([]);
    expect(statement.problems).toEqual([]);
  });
});

describe('G: Olmsted Falls OH, Ord. 6-93 (seen)', () => {
  // Monday to Friday 7:30 to 16:00 at 35 an hour, 1 h at least; other hours 52.50, 3 h at least; a piece of equipment 75
  // an hour, 1 h at least; supplies at cost. The jobs are invented.
  const rates = {
    ...ruledRates(
      {
        workingMinimumHours: '1',
        otherHours: { multiplier: '1.5', minimumHours: '3', minimumWhenAdjoining: false },
      },
      '35',
    ),
    machines: [{ ...machine('backhoe', 'hour', '75'), minimumHours: '1' }],
  };
  const job = (day: string, hour: number, minutes: number, machineMinutes: number) =>
    cost(
      {
        crew: [worked('w', 'crew', [span(chicago(day, hour), minutes)])],
        machines: [used('backhoe', [span(chicago(day, hour), machineMinutes)])],
        parts: [bought('supplies', 1, 212_50)],
      },
      rates,
    );

  it.each([
    // 4 × 35, 2 × 75
    ['four working hours', '02', 8, 240, 120, [140_00, 150_00]],
    // 1 × 35, 1 × 75
    ['a quarter of an hour in working hours', '02', 8, 15, 15, [35_00, 75_00]],
    // 3 × 52.50, 1 × 75
    ['an hour at night', '02', 22, 60, 30, [157_50, 75_00]],
    // 4 × 52.50, 4 × 75
    ['four hours on a Sunday', '01', 8, 240, 240, [210_00, 300_00]],
  ] as const)('%s', (_, day, hour, minutes, machineMinutes, [crewCents, machineCents]) => {
    const statement = job(day, hour, minutes, machineMinutes);
    expect(amounts(statement, 'labor')).toEqual([crewCents]);
    expect(amounts(statement, 'machines')).toEqual([machineCents]);
    expect(statement.totalCents).toBe(crewCents + machineCents + 212_50);
  });

  it('says hours in use and hours billed of a machine', () => {
    expect(job('02', 22, 60, 30).lines.find(({ item }) => item === 'backhoe')).toMatchObject({
      hoursWorked: '0.5',
      quantity: '1',
      arithmetic: '30 min + 30 min (30 min < 1 h) = 1 h × $75/h = $75.00',
    });
  });
});

it('F: Pleasanton CA, Res. 92-106 (seen): no fringe on overtime', () => {
  // 2 h of 30.00 with fringe of a third of it, 1 h at one and a half without: 80.00 and 45.00.
  const statement = cost(
    { crew: [worked('w', 'crew', [span(chicago('02', 14), 180)])] },
    ruledRates({}, '30', { fringe: { regular: { usdPerHour: '10.00' }, premium: { share: '0' } } }),
  );
  expect(amounts(statement, 'labor')).toEqual([80_00, 45_00]);
  expect(statement.lines.map(({ arithmetic }) => arithmetic)).toEqual([
    '2 h × ($30/h + $10.00/h) = $80.00',
    '1 h × $30/h × 1.5 = $45.00',
  ]);
});

it("a state's worksheet for labor (Pennsylvania, seen): fringe on overtime is a rate of its own, and lower", () => {
  // The rates are invented, the steps are the worksheet's: vacation 80/2080 and holidays 64/2080 of the year are in the
  // regular rate only; 7.65 % for social security is in both.
  expect((80 / 2080).toFixed(4)).toBe('0.0385');
  expect((64 / 2080).toFixed(4)).toBe('0.0308');
  const statement = cost(
    { crew: [worked('w', 'crew', [span(chicago('02', 14), 180)])] },
    ruledRates({}, '30', { fringe: { regular: { share: '0.1458' }, premium: { share: '0.0765' } } }),
  );
  // 2 × 30 × 1.1458 = 68.748; 1 × 30 × 1.5 × 1.0765 = 48.4425
  expect(amounts(statement, 'labor')).toEqual([68_75, 48_44]);
});

describe('FEMA IS-1000 (seen): standing by counts only on a day of use for more than half of its working hours', () => {
  const rates = {
    machines: [{ ...machine('pump', 'hour', '20', '20'), standbyOnlyIfUsedOverHalfOfHours: '8' }],
  };
  const day = (useMinutes: number) =>
    cost(
      {
        machines: [
          used('pump', [span(chicago('02', 8), useMinutes)], { standingBy: [span(chicago('02', 14), 120)] }),
        ],
      },
      rates,
    );

  it('more than four of eight hours: in use 5 h and standing by 2 h', () => {
    expect(amounts(day(300), 'machines')).toEqual([100_00, 40_00]);
  });

  it('half of the day is not more than half', () => {
    const statement = day(240);
    expect(amounts(statement, 'machines')).toEqual([80_00]);
    expect(statement.notes).toEqual([
      {
        code: 'standby-under-half-day',
        path: 'r1',
        params: { machineCode: 'pump', time: '2 h', dates: '2026-03-02', hours: '8' },
      },
    ]);
  });

  it('each day for itself', () => {
    const statement = cost(
      {
        machines: [
          used('pump', [span(chicago('02', 8), 360)], {
            standingBy: [span(chicago('02', 14), 60), span(chicago('03', 8), 60)],
          }),
        ],
      },
      rates,
    );
    expect(amounts(statement, 'machines')).toEqual([120_00, 20_00]);
    expect(statement.notes.map(({ params }) => params['dates'])).toEqual(['2026-03-03']);
  });
});

describe('a published equipment schedule (FEMA 2025, seen)', () => {
  it('holds fuel and overhead, and leaves out the operator', () => {
    // 23 CFR 645.117(f) bills the machine; 44 CFR 206.228 the schedule. The rate is invented.
    const statement = cost(
      {
        crew: [worked('w', 'crew', [span(chicago('02', 8), 120)])],
        machines: [used('loader', [span(chicago('02', 8), 120)], { operatorWorkerId: 'w' })],
      },
      {
        ...ruledRates(),
        payRules: [plainRules],
        machines: [{ ...machine('loader', 'hour', '60'), includes: ['fuel', 'overhead'] }],
        overheads: [
          {
            overheadId: 'general',
            title: 'General',
            fraction: '0.1',
            on: ['labor', 'machines'],
            onOverheads: [],
            limitUsd: null,
            authorityId: 'a',
          },
        ],
      },
    );
    // Labor 80, machine 120, and a tenth of the labor only.
    expect(amounts(statement, 'labor')).toEqual([80_00]);
    expect(amounts(statement, 'machines')).toEqual([120_00]);
    expect(amounts(statement, 'overhead')).toEqual([8_00]);
  });
});
