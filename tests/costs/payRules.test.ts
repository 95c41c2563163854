import { describe, expect, it } from 'vitest';
import type { PayRules } from '../../shared/costs/book/labor.ts';
import { rateBookEdition } from '../../shared/costs/rateBook.ts';
import { problemsFromZod } from '../../shared/problems/fromZod.ts';
import { locales, say } from '../../shared/words/index.ts';
import { cost, labor, machine, noRates, span, used, worked } from '../support/rates.ts';
import { plainRules, ruledRates } from '../support/payRules.ts';

// Expected hours are counted on a clock and expected pay is reckoned by hand; where no rule is named it is common
// practice without a source. Chicago is UTC-6 until 8 March 2026 and UTC-5 from then (15 U.S.C. 260a).
const at = (day: string, hour: number, minute = 0) =>
  new Date(Date.parse(`2026-03-${day}T06:00:00Z`) + (hour * 60 + minute) * 60_000).toISOString();
const night = { multiplier: '1.5', minimumHours: '3', minimumWhenAdjoining: false };

type Span = ReturnType<typeof span>;
const paid = (
  work: Span[],
  rules: Partial<PayRules> = {},
  breaks: Span[] = [],
  timeZone = 'America/Chicago',
) =>
  cost({ crew: [worked('w', 'crew', work, breaks)] }, ruledRates(rules), { timeZone }).lines.map(
    ({ time, hoursWorked, quantity }) =>
      `${time?.as ?? ''} ×${time?.multiplier ?? ''}: ${hoursWorked ?? ''}/${quantity}`,
  );

describe('what an hour counts as', () => {
  it('is cut at both edges of the working hours', () => {
    // Monday 6:00 to 17:00: 7:30 to 16:00 is 8.5 h, and 1.5 h + 1 h outside.
    expect(paid([span(at('02', 6), 660)])).toEqual([
      'working-hours ×1: 8.5/8.5',
      'other-hours ×1.5: 2.5/2.5',
    ]);
  });

  it('is by the day of the week: a Saturday has no working hours', () => {
    expect(paid([span(at('07', 8), 120)])).toEqual(['other-hours ×1.5: 2/2']);
  });

  it('changes at midnight: Sunday night into a Monday on which a shift starts at 0:00', () => {
    expect(
      paid([span(at('01', 22), 240)], {
        workingHours: [{ days: [1, 2, 3, 4, 5], from: '00:00', to: '08:00' }],
      }),
    ).toEqual(['other-hours ×1.5: 2/2', 'working-hours ×1: 2/2']);
  });

  it('a shift past midnight is two entries, and one run', () => {
    expect(
      paid([span(at('02', 22), 240)], {
        workingHours: [
          { days: [1, 2, 3, 4, 5], from: '22:00', to: '24:00' },
          { days: [2, 3, 4, 5, 6], from: '00:00', to: '06:00' },
        ],
        workingMinimumHours: '4',
      }),
    ).toEqual(['working-hours ×1: 4/4']);
  });

  const holiday = { ...night, multiplier: '2', minimumHours: null };
  const holidays: PayRules['holidays'] = [{ by: 'once', name: 'Holiday', on: '2026-03-03' }];

  it('a holiday at its own multiplier, and the rest of the night at another', () => {
    // 22:00 on Monday to 2:00 on a Tuesday that is a holiday.
    expect(paid([span(at('02', 22), 240)], { holiday, holidays })).toEqual([
      'other-hours ×1.5: 2/2',
      'holiday ×2: 2/2',
    ]);
  });

  it('multipliers never pile up: at night on a holiday the higher counts, once', () => {
    expect(paid([span(at('03', 20), 60)], { holiday, holidays })).toEqual(['holiday ×2: 1/1']);
    expect(
      paid([span(at('03', 15), 120)], { holiday: { ...holiday, multiplier: '1.25' }, holidays }),
    ).toEqual(['other-hours ×1.5: 1/1', 'holiday ×1.25: 1/1']);
  });

  it('a holiday is a day like any other where the rules have nothing for it', () => {
    expect(paid([span(at('03', 8), 60)], { holidays })).toEqual(['working-hours ×1: 1/1']);
  });
});

it('working hours that end before they start are refused, with the way to say a night shift', () => {
  const parsed = rateBookEdition.safeParse(
    {
      ...noRates,
      ...ruledRates({ workingHours: [{ days: [1], from: '22:00', to: '06:00' }] }),
    },
    { reportInput: true },
  );
  expect(problemsFromZod(parsed.error?.issues ?? [])).toEqual([
    { code: 'working-hours-end-before-start', path: 'payRules.0.workingHours.0.to', params: {} },
  ]);
});

describe('words for what is found', () => {
  it('hold the signs of the arithmetic in both languages', () => {
    for (const locale of locales) {
      expect(say(locale, 'packet.hours.minimum')).toContain('2 h + 1 h (2 h < 3 h)');
      expect(say(locale, 'packet.hours.step')).toContain('1 h 7 min + 8 min (1 h 7 min → 5 × 15 min)');
    }
  });
});

describe('the clock that ran, not the dial', () => {
  const allNight = { workingHours: [{ days: [1, 2, 3, 4, 5, 6, 7], from: '00:00', to: '04:00' }] };

  it('spring: a shift of 0:00 to 4:00 on 8 March 2026 has three hours', () => {
    expect(paid([{ from: '2026-03-08T06:00:00Z', to: '2026-03-08T10:00:00Z' }], allNight)).toEqual([
      'working-hours ×1: 3/3',
      'other-hours ×1.5: 1/1',
    ]);
  });

  it('autumn: the same shift on 1 November 2026 has five', () => {
    expect(paid([{ from: '2026-11-01T05:00:00Z', to: '2026-11-01T11:00:00Z' }], allNight)).toEqual([
      'working-hours ×1: 5/5',
      'other-hours ×1.5: 1/1',
    ]);
  });

  it('a minimum is three hours that run, through the change too', () => {
    // Called at 1:00 on 8 March, done at 3:30 on the dial: an hour and a half, paid three.
    expect(
      paid([{ from: '2026-03-08T07:00:00Z', to: '2026-03-08T08:30:00Z' }], { otherHours: night }),
    ).toEqual(['other-hours ×1.5: 1.5/3']);
  });

  it('an edge that the clock skips comes with the hour after it', () => {
    // Working hours from 2:30: on 8 March 2:30 does not exist, and 3:30 is half an hour after 2:00 became 3:00.
    expect(
      paid([{ from: '2026-03-08T07:00:00Z', to: '2026-03-08T09:30:00Z' }], {
        workingHours: [{ days: [7], from: '02:30', to: '06:00' }],
      }),
    ).toEqual(['working-hours ×1: 1/1', 'other-hours ×1.5: 1.5/1.5']);
  });

  it('the utility’s zone says when it is night, not the server’s', () => {
    const work = [span('2026-03-02T14:00:00Z', 60)];
    expect(paid(work)).toEqual(['working-hours ×1: 1/1']);
    expect(paid(work, {}, [], 'America/Los_Angeles')).toEqual(['other-hours ×1.5: 1/1']);
  });
});

describe('a call and its minimum', () => {
  const called = (work: Span[], rules: Partial<PayRules> = {}, breaks: Span[] = []) =>
    paid(work, { otherHours: night, ...rules }, breaks);

  it('is paid three hours for one, and as worked past three', () => {
    expect(called([span(at('02', 20), 60)])).toEqual(['other-hours ×1.5: 1/3']);
    expect(called([span(at('02', 18), 200)])).toEqual(['other-hours ×1.5: 3.3333/3.3333']);
  });

  it('what begins within the minimum of a call belongs to it; what begins at its end is another', () => {
    expect(called([span(at('02', 18), 30), span(at('02', 20, 59), 30)])).toEqual(['other-hours ×1.5: 1/3']);
    expect(called([span(at('02', 18), 30), span(at('02', 21), 30)])).toEqual(['other-hours ×1.5: 1/6']);
  });

  it('a break does not make two calls of one', () => {
    // 18:00 to 23:00 with a meal from 20:30 to 21:30.
    expect(called([span(at('02', 18), 300)], {}, [span(at('02', 20, 30), 60)])).toEqual([
      'other-hours ×1.5: 4/4',
    ]);
  });

  it('split over two records, or at midnight, it has one minimum', () => {
    const crew = (from: string, minutes: number) => ({ crew: [worked('w', 'crew', [span(from, minutes)])] });
    const rates = ruledRates({ otherHours: night });
    const one = cost(crew(at('02', 23, 30), 60), rates);
    const two = cost([crew(at('02', 23, 30), 30), crew(at('03', 0), 30)], rates);
    expect([one, two].map(({ totalCents }) => totalCents)).toEqual([180_00, 180_00]);
    expect(two.lines[0]?.submissionIds).toEqual(['r1', 'r2']);
  });

  it('each worker has a call of his own', () => {
    const rates = ruledRates({ otherHours: night });
    const both = [
      worked('a', 'crew', [span(at('02', 20), 60)]),
      worked('b', 'crew', [span(at('02', 20), 60)]),
    ];
    expect(cost({ crew: both }, rates).totalCents).toBe(360_00);
  });

  it.each([
    ['goes on from the end of working hours', [span(at('02', 16), 30)], 'other-hours ×1.5: 0.5/0.5'],
    ['runs up to their start', [span(at('02', 7), 30)], 'other-hours ×1.5: 0.5/0.5'],
  ] as const)('none where it %s', (_, work, expected) => {
    expect(called([...work])).toEqual([expected]);
  });

  it('none where working hours run into it, unless the agreement says so', () => {
    const work = [span(at('02', 15, 30), 60)];
    expect(called(work)).toEqual(['working-hours ×1: 0.5/0.5', 'other-hours ×1.5: 0.5/0.5']);
    expect(called(work, { otherHours: { ...night, minimumWhenAdjoining: true } })).toEqual([
      'working-hours ×1: 0.5/0.5',
      'other-hours ×1.5: 0.5/3',
    ]);
  });

  it('work that runs up to working hours never makes an earlier call cheaper', () => {
    expect(called([span(at('02', 5), 30), span(at('02', 7), 30)])).toEqual(['other-hours ×1.5: 1/3']);
  });

  it('into a holiday: the call is what it began as', () => {
    // 23:30 to 0:30 into a holiday with a minimum of four: half an hour of each, and two more at the first.
    expect(
      called([span(at('02', 23, 30), 60)], {
        holiday: { ...night, multiplier: '2', minimumHours: '4' },
        holidays: [{ by: 'once', name: 'Holiday', on: '2026-03-03' }],
      }),
    ).toEqual(['other-hours ×1.5: 0.5/2.5', 'holiday ×2: 0.5/0.5']);
  });

  it('within working hours: time that runs on outside of them fills the minimum', () => {
    expect(called([span(at('02', 8), 10)], { workingMinimumHours: '1' })).toEqual([
      'working-hours ×1: 0.1667/1',
    ]);
    expect(called([span(at('02', 15, 30), 90)], { workingMinimumHours: '1' })).toEqual([
      'working-hours ×1: 0.5/0.5',
      'other-hours ×1.5: 1/1',
    ]);
    // 15:50 to 16:10: 20 minutes, and 40 more up to the hour.
    expect(called([span(at('02', 15, 50), 20)], { workingMinimumHours: '1' })).toEqual([
      'working-hours ×1: 0.1667/0.8333',
      'other-hours ×1.5: 0.1667/0.1667',
    ]);
  });
});

describe('hours in steps', () => {
  const quarter = { minutes: 15, toward: 'up' as const, of: 'call' as const };

  it('up, and to the nearest with half a step up (29 CFR 785.48(b), from memory)', () => {
    expect(paid([span(at('02', 8), 67)], { increment: quarter })).toEqual(['working-hours ×1: 1.1167/1.25']);
    const nearest = { ...quarter, toward: 'nearest' as const };
    expect(paid([span(at('02', 8), 67)], { increment: nearest })).toEqual(['working-hours ×1: 1.1167/1']);
    expect(paid([span(at('02', 8), 68)], { increment: nearest })).toEqual(['working-hours ×1: 1.1333/1.25']);
    expect(paid([span(at('02', 8, 0), 67.5)], { increment: nearest })).toEqual([
      'working-hours ×1: 1.125/1.25',
    ]);
  });

  it('of each call, or of the day as a whole', () => {
    const work = [span(at('02', 8), 20), span(at('02', 10), 20)];
    // 30 + 30, or 40 → 45 minutes.
    expect(paid(work, { increment: quarter })).toEqual(['working-hours ×1: 0.6667/1']);
    expect(paid(work, { increment: { ...quarter, of: 'day' } })).toEqual(['working-hours ×1: 0.6667/0.75']);
  });

  it('what is added falls on the last kind of time, and the sum shows it', () => {
    const statement = cost(
      { crew: [worked('w', 'crew', [span(at('02', 15, 30), 100)])] },
      ruledRates({ increment: quarter }),
    );
    expect(statement.lines.map(({ arithmetic }) => arithmetic)).toEqual([
      '30 min × $40/h = $20.00',
      '1 h 10 min + 5 min (1 h 40 min → 7 × 15 min) = 1 h 15 min × $40/h × 1.5 = $75.00',
    ]);
  });

  it('what is taken off is taken from no kind of time more than it has', () => {
    // 15:00 to 16:05 counted to the nearest hour: five minutes come off, all that was worked after 16:00.
    expect(
      paid([span(at('02', 15), 65)], { increment: { minutes: 60, toward: 'nearest', of: 'call' } }),
    ).toEqual(['working-hours ×1: 1/1', 'other-hours ×1.5: 0.0833/0']);
  });

  it('first the step, then the minimum', () => {
    const statement = cost(
      { crew: [worked('w', 'crew', [span(at('02', 20), 67)])] },
      ruledRates({ increment: quarter, otherHours: night }),
    );
    expect(statement.lines[0]?.arithmetic).toBe(
      '1 h 7 min + 8 min (1 h 7 min → 5 × 15 min) + 1 h 45 min (1 h 15 min < 3 h) = 3 h × $40/h × 1.5 = $180.00',
    );
  });
});

describe('the hours of the week', () => {
  const week = { startsOn: 1, overHours: '40', multiplier: '1.5' };
  const weekHours = (hours: string, weekStartsOn = '2026-03-02') => ({
    weekHours: [{ workerId: 'w', weekStartsOn, hours }],
  });
  const of = (work: Span[], rules: Partial<PayRules>, hours: string) =>
    cost({ crew: [worked('w', 'crew', work)] }, ruledRates({ week, ...rules }), weekHours(hours));
  const told = (statement: ReturnType<typeof cost>) =>
    statement.lines.map(({ time, quantity }) => `${time?.as ?? ''} ×${time?.multiplier ?? ''}: ${quantity}`);

  it('of other jobs count: two hours after 39 are one and one', () => {
    expect(told(of([span(at('06', 8), 120)], {}, '39'))).toEqual([
      'working-hours ×1: 1',
      'week-overtime ×1.5: 1',
    ]);
  });

  it('are never multiplied together: double time stays double time, a quarter more becomes a half more', () => {
    const other = (multiplier: string) => ({ otherHours: { ...plainRules.otherHours, multiplier } });
    expect(told(of([span(at('06', 20), 60)], other('2'), '45'))).toEqual(['other-hours ×2: 1']);
    expect(told(of([span(at('06', 20), 60)], other('1.25'), '45'))).toEqual(['week-overtime ×1.5: 1']);
  });

  it('an hour at a premium earlier in the week is credited and pushes no other past the limit', () => {
    // 38 h before, Thursday night 4 h at 1.5, Friday 3 h: 45 worked, 5 past 40, of which 4 are paid at 1.5 already.
    expect(told(of([span(at('05', 20), 240), span(at('06', 8), 180)], {}, '38'))).toEqual([
      'other-hours ×1.5: 4',
      'working-hours ×1: 2',
      'week-overtime ×1.5: 1',
    ]);
  });

  it('a new week starts at local midnight of its day', () => {
    const rules = { workingHours: [{ days: [1, 7], from: '00:00', to: '24:00' }] };
    // Sunday 23:00 to Monday 1:00: the Sunday hour is the forty-first, the Monday hour the first.
    expect(told(of([span(at('08', 22), 120)], rules, '40'))).toEqual([
      'week-overtime ×1.5: 1',
      'working-hours ×1: 1',
    ]);
  });

  it('hours for a week that starts on no such day are not counted, and said', () => {
    const statement = cost(
      { crew: [worked('w', 'crew', [span(at('06', 8), 60)])] },
      ruledRates({ week }),
      weekHours('45', '2026-03-01'),
    );
    expect(told(statement)).toEqual(['working-hours ×1: 1']);
    expect(statement.problems).toEqual([
      { code: 'week-hours-other-week', path: '', params: { workerId: 'w', weekStartsOn: '2026-03-01' } },
    ]);
  });

  it('of two records that differ the fewer count, and said', () => {
    const statement = cost({ crew: [worked('w', 'crew', [span(at('06', 8), 60)])] }, ruledRates({ week }), {
      weekHours: [...weekHours('45').weekHours, ...weekHours('39').weekHours],
    });
    expect(told(statement)).toEqual(['working-hours ×1: 1']);
    expect(statement.problems).toEqual([
      {
        code: 'week-hours-twice',
        path: '',
        params: { workerId: 'w', weekStartsOn: '2026-03-02', hours: '39' },
      },
    ]);
  });

  it('hours of a class without pay rules are worked too', () => {
    const rates = ruledRates({ week });
    const statement = cost(
      [
        { crew: [worked('w', 'plain', [span(at('05', 8), 120)])] },
        { crew: [worked('w', 'crew', [span(at('06', 8), 60)])] },
      ],
      { ...rates, labor: [...rates.labor, labor('plain', '30')] },
      weekHours('38'),
    );
    expect(told(statement)).toEqual(['week-overtime ×1.5: 1', ' ×: 2']);
  });
});

describe('the operator of a machine whose rate holds him', () => {
  const rates = {
    ...ruledRates({ otherHours: night }),
    machines: [
      { ...machine('loader', 'hour', '90'), includes: ['operator' as const] },
      machine('truck', 'hour', '20'),
    ],
  };
  const job = (machineCode: string, use: Span, work: Span, operatorWorkerId: string | null = 'w') =>
    cost(
      { crew: [worked('w', 'crew', [work])], machines: [used(machineCode, [use], { operatorWorkerId })] },
      rates,
    );

  it('is never billed twice, and the record says so', () => {
    const statement = job('loader', span(at('02', 9), 60), span(at('02', 8), 240));
    expect(
      statement.lines.map(({ item, hoursWorked, amountCents }) => [item, hoursWorked, amountCents]),
    ).toEqual([
      ['w', '3', 120_00],
      ['loader', '1', 90_00],
    ]);
    expect(statement.notes).toEqual([
      {
        code: 'operator-in-machine-rate',
        path: 'r1',
        params: { workerId: 'w', machineCode: 'loader', time: '1 h' },
      },
    ]);
  });

  it('is billed beside a machine whose rate does not hold him', () => {
    const statement = job('truck', span(at('02', 9), 60), span(at('02', 8), 240));
    expect(statement.totalCents).toBe(160_00 + 20_00);
    expect(statement.notes).toEqual([]);
  });

  it('his time counts towards the minimum of a call', () => {
    // Called out for 2 h, an hour and a half of it on the loader: half an hour is labor, and the hour up to three.
    const statement = job('loader', span(at('02', 20), 90), span(at('02', 20), 120));
    expect(statement.lines[0]).toMatchObject({
      hoursWorked: '0.5',
      quantity: '1.5',
      arithmetic: '30 min + 1 h (2 h < 3 h) = 1 h 30 min × $40/h × 1.5 = $90.00',
    });
  });

  it('a call that is wholly at the machine is no labor', () => {
    const statement = job('loader', span(at('02', 20), 60), span(at('02', 20), 60));
    expect(statement.lines.map(({ item }) => item)).toEqual(['loader']);
  });

  it('is asked for where nobody is named', () => {
    const statement = job('loader', span(at('02', 9), 60), span(at('02', 8), 240), null);
    expect(statement.problems).toEqual([
      { code: 'operator-not-named', path: 'r1', params: { machineCode: 'loader' } },
    ]);
  });
});

it('rules of the edition of each day: a night on which they change is paid by both', () => {
  const book = (editionId: string, multiplier: string) => ({
    ...noRates,
    editionId,
    ...ruledRates({ otherHours: { ...plainRules.otherHours, multiplier } }),
  });
  const statement = cost({ crew: [worked('w', 'crew', [span(at('02', 22), 240)])] }, [
    { ...book('old', '1.5'), effectiveTo: '2026-03-02' },
    { ...book('new', '2'), effectiveFrom: '2026-03-03' },
  ]);
  expect(statement.lines.map(({ editionId, amountCents }) => [editionId, amountCents])).toEqual([
    ['old', 120_00],
    ['new', 160_00],
  ]);
});
