import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { PayRules } from '../../shared/costs/book/labor.ts';
import { statementOf } from '../../shared/costs/statement.ts';
import type { WorkRecord } from '../../shared/costs/work.ts';
import { labor, machine, noRates, noRecord, noWork, span, used, worked } from '../support/rates.ts';

/** What holds for any work under any pay rules, in both weeks of a clock change. */
const starts = ['2026-03-06T00:00:00Z', '2026-10-30T00:00:00Z'].map((at) => Date.parse(at));
const stretches = fc
  .array(fc.tuple(fc.integer({ min: 1, max: 900 }), fc.integer({ min: 1, max: 600 })), {
    minLength: 1,
    maxLength: 5,
  })
  .map((pairs) => {
    let minute = 0;
    return pairs.map(([gap, length]) => {
      const one = { from: minute + gap, minutes: length };
      minute += gap + length;
      return one;
    });
  });
const records = fc
  .tuple(
    fc.constantFrom(...starts),
    fc.array(
      fc.record({
        crew: fc.uniqueArray(
          fc.record({
            worker: fc.integer({ min: 1, max: 3 }),
            as: fc.constantFrom('a', 'b', 'c'),
            work: stretches,
          }),
          { maxLength: 3, selector: ({ worker }) => worker },
        ),
        machine: fc.option(
          fc.tuple(fc.constantFrom('loader', 'pump', 'crane'), fc.integer({ min: 1, max: 3 }), stretches),
        ),
      }),
      { minLength: 1, maxLength: 3 },
    ),
  )
  .map(([start, all]) => {
    const spans = (work: { from: number; minutes: number }[]) =>
      work.map(({ from, minutes }) => span(new Date(start + from * 60_000).toISOString(), minutes));
    return all.map(({ crew, machine: used_ }, index): WorkRecord => ({
      ...noRecord,
      submissionId: `r${index + 1}`,
      crew: crew.map(({ worker, as, work }) => worked(`w${worker}`, as, spans(work))),
      machines: used_ ? [used(used_[0], spans(used_[2]), { operatorWorkerId: `w${used_[1]}` })] : [],
    }));
  });

const multiplier = fc.constantFrom('1', '1.25', '1.5', '2');
const premium = fc.record({
  multiplier,
  minimumHours: fc.constantFrom(null, '1', '2.5', '4'),
  minimumWhenAdjoining: fc.boolean(),
});
const noMinimum = { minimumHours: null, minimumWhenAdjoining: false };
const clock = fc.constantFrom('00:00', '01:30', '02:30', '07:30', '12:00', '16:00', '23:00', '24:00');
const anyRules: fc.Arbitrary<PayRules> = fc.record({
  payRulesId: fc.constant('rules'),
  title: fc.constant('Rules'),
  workingHours: fc.array(
    fc.record({
      days: fc.uniqueArray(fc.integer({ min: 1, max: 7 }), { minLength: 1, maxLength: 7 }),
      from: clock,
      to: clock,
    }),
    { maxLength: 3 },
  ),
  workingMinimumHours: fc.constantFrom(null, '1'),
  otherHours: premium,
  holiday: fc.option(premium),
  holidays: fc.constant([{ by: 'weekday' as const, name: 'Sunday', month: 3, weekday: 7, nth: 2 as const }]),
  week: fc.option(
    fc.record({
      startsOn: fc.integer({ min: 1, max: 7 }),
      overHours: fc.constantFrom('4', '10.25', '40'),
      multiplier,
    }),
  ),
  increment: fc.option(
    fc.record({
      minutes: fc.constantFrom(6, 15, 60),
      toward: fc.constantFrom('up' as const, 'nearest' as const),
      of: fc.constantFrom('call' as const, 'day' as const),
    }),
  ),
  authorityId: fc.constant('a'),
});
/** Rules that round nothing and add nothing. */
const plain = anyRules.map((rules): PayRules => ({
  ...rules,
  workingMinimumHours: null,
  otherHours: { ...rules.otherHours, ...noMinimum },
  holiday: rules.holiday && { ...rules.holiday, ...noMinimum },
  increment: null,
}));

const bookOf = (rules: PayRules) => [
  {
    ...noRates,
    labor: [
      { ...labor('a', '31.4159', '0.2717'), payRulesId: 'rules' },
      {
        ...labor('b', '44.40'),
        fringe: { regular: { usdPerHour: '9.87' }, premium: { share: '0.0765' } },
        payRulesId: 'rules',
      },
      labor('c', '50'),
    ],
    payRules: [rules],
    machines: [
      { ...machine('loader', 'hour', '60'), includes: ['operator' as const], minimumHours: '1' },
      { ...machine('pump', 'hour', '20'), unit: 'day' as const },
      {
        ...machine('crane', 'hour', '90'),
        increment: { minutes: 15, toward: 'up' as const, of: 'call' as const },
      },
    ],
  },
];
const work = { ...noWork, strike: { date: '2026-03-06', basis: 'struck' as const } };
const weekHours = [{ workerId: 'w1', weekStartsOn: '2026-03-02', hours: '36.5' }];
const bill = (all: readonly WorkRecord[], rules: PayRules) =>
  statementOf({ ...work, weekHours, records: all }, bookOf(rules));

/** Every interval in two that touch, in one record. */
const cutAt = (all: readonly WorkRecord[], share: number): WorkRecord[] =>
  all.map((one) => {
    const cut = ({ from, to }: { from: string; to: string }) => {
      const middle = new Date(
        Math.round(Date.parse(from) + (Date.parse(to) - Date.parse(from)) * share),
      ).toISOString();
      return [
        { from, to: middle },
        { from: middle, to },
      ];
    };
    return {
      ...one,
      crew: one.crew.map((member) => ({ ...member, work: member.work.flatMap(cut) })),
      machines: one.machines.map((item) => ({ ...item, inUse: item.inUse.flatMap(cut) })),
    };
  });
/** The second half of every interval in a record of its own, made right after. */
const inTwoRecords = (all: readonly WorkRecord[], share: number): WorkRecord[] =>
  cutAt(all, share).flatMap((one) =>
    [0, 1].map((half) => ({
      ...one,
      submissionId: `${one.submissionId}${half === 0 ? 'a' : 'b'}`,
      crew: one.crew.map((member) => ({
        ...member,
        work: member.work.filter((_, index) => index % 2 === half),
      })),
      machines: half === 0 ? one.machines : [],
    })),
  );

const share = fc.double({ min: 0.01, max: 0.99, noNaN: true });

describe('for any work under any pay rules', () => {
  it('hours worked are the same under all rules: no rule makes or loses time', () => {
    const workedOf = (statement: ReturnType<typeof bill>) =>
      statement.lines
        .filter(({ section }) => section === 'labor')
        .flatMap(({ days }) => days)
        .reduce((sum, { seconds }) => sum + seconds, 0);
    fc.assert(
      fc.property(records, anyRules, plain, (all, one, other) => {
        expect(workedOf(bill(all, one))).toBe(workedOf(bill(all, other)));
      }),
    );
  });

  it('an interval cut in two changes nothing, with steps and minimums too', () => {
    fc.assert(
      fc.property(records, anyRules, share, (all, rules, at) => {
        const { problems: _cut, ...after } = bill(cutAt(all, at), rules);
        const { problems: _whole, ...before } = bill(all, rules);
        expect(after).toEqual(before);
      }),
    );
  });

  it('a call that two records tell in halves pays one minimum and one step', () => {
    fc.assert(
      fc.property(records, anyRules, share, (all, rules, at) => {
        // One record, so that no two claim the same moment and the order of making says nothing.
        const one = all.slice(0, 1);
        const told = ({ lines }: ReturnType<typeof bill>) =>
          lines.map(({ lineId, quantity, hoursWorked, amountCents, arithmetic }) => [
            lineId,
            quantity,
            hoursWorked,
            amountCents,
            arithmetic,
          ]);
        expect(told(bill(inTwoRecords(one, at), rules))).toEqual(told(bill(one, rules)));
      }),
    );
  });

  it('order never matters', () => {
    fc.assert(
      fc.property(records, anyRules, (all, rules) => {
        const other = [...all].reverse().map((one) => ({
          ...one,
          crew: [...one.crew].reverse().map((member) => ({ ...member, work: [...member.work].reverse() })),
          machines: one.machines.map((item) => ({ ...item, inUse: [...item.inUse].reverse() })),
        }));
        expect(bill(other, rules)).toEqual(bill(all, rules));
      }),
    );
  });

  it('paid hours are hours worked where nothing is rounded and nothing has a minimum', () => {
    fc.assert(
      fc.property(records, plain, (all, rules) => {
        for (const { section, hoursWorked, quantity } of bill(all, rules).lines)
          if (section === 'labor') expect(quantity).toBe(hoursWorked);
      }),
    );
  });

  it('steps up and minimums never take time away, and no line is below zero', () => {
    fc.assert(
      fc.property(records, anyRules, (all, rules) => {
        for (const { quantity, hoursWorked, amountCents } of bill(all, rules).lines) {
          expect(Number(quantity)).toBeGreaterThanOrEqual(0);
          expect(amountCents ?? 0).toBeGreaterThanOrEqual(0);
          if (rules.increment?.toward !== 'nearest' && hoursWorked !== null)
            expect(Number(quantity)).toBeGreaterThanOrEqual(Number(hoursWorked));
        }
      }),
    );
  });

  it('no moment of an operator is billed both in a machine’s rate and as labor', () => {
    fc.assert(
      fc.property(records, plain, (all, rules) => {
        const seconds = (item: string, statement: ReturnType<typeof bill>) =>
          statement.lines
            .filter((line) => line.item === item)
            .flatMap(({ days }) => days)
            .reduce((sum, day) => sum + day.seconds, 0);
        const without = all.map((one) => ({ ...one, machines: [] }));
        const minutesOf = (spans: readonly { from: string; to: string }[]): Set<number> =>
          new Set(
            spans.flatMap(({ from, to }) =>
              Array.from({ length: (Date.parse(to) - Date.parse(from)) / 60_000 }, (_, minute) =>
                Math.round(Date.parse(from) / 60_000 + minute),
              ),
            ),
          );
        for (const worker of ['w1', 'w2', 'w3']) {
          const operated = minutesOf(
            all.flatMap(({ machines }) =>
              machines
                .filter((item) => item.machineCode === 'loader' && item.operatorWorkerId === worker)
                .flatMap(({ inUse }) => inUse),
            ),
          );
          const claimed = minutesOf(
            all.flatMap(({ crew }) =>
              crew.filter(({ workerId }) => workerId === worker).flatMap((item) => item.work),
            ),
          );
          const both = [...claimed].filter((minute) => operated.has(minute)).length;
          expect(seconds(worker, bill(without, rules)) - seconds(worker, bill(all, rules))).toBe(both * 60);
        }
      }),
    );
  });
});
