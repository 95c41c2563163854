import { expect, it } from 'vitest';
import type { AuditCase } from '../../../shared/audit/case.ts';
import { rules } from '../../../shared/audit/objections.ts';
import { quarterHours } from '../../../shared/audit/reading.ts';
import { say } from '../../../shared/words/index.ts';

/** Rules where a reader with the same papers would not object. Each is given what it looks at and no more. */
const raised = (name: string, part: unknown) =>
  rules.find((item) => item.rule === name)!.find(part as AuditCase);
const repair = (body: object) => ({ fact: { kind: 'repair', body: { crew: [], machines: [], ...body } } });
const nine = '2026-03-03T15:00:00Z';
const later = (minutes: number): string => new Date(Date.parse(nine) + minutes * 60_000).toISOString();
const crew = (minutes: number) => [{ workerId: 'w-1', work: [{ from: nine, to: later(minutes) }] }];
const machines = (operatorWorkerId: string | null) => [
  { machineCode: 'truck', operatorWorkerId, inUse: [{ from: nine, to: later(60) }] },
];
const line = (section: string, more: object = {}) => ({
  lineId: `${section}-1`,
  section,
  kind: section,
  item: 'truck',
  amountCents: 100_00,
  authority: null,
  ...more,
});

it('a machine that ran as long as the crew was there is not above it, whatever the quarter hour', () => {
  const ran = (quantity: string) =>
    raised('machine-above-crew', {
      facts: [repair({ crew: crew(67) })],
      editions: [],
      statement: { lines: [line('machines', { kind: 'machine-hours', quantity })] },
    });
  // 1 h 7 min is 1.1167 h to four places, and 1 h to the quarter.
  expect(ran('1.1167')).toEqual([]);
  // 15 min of 1 h 22 min: 0.25 / 1.3667 of 100.00, by hand 18.29.
  expect(ran('1.3667')).toMatchObject([{ atStakeCents: 18_29, params: { hours: 1.37, crewHours: 1.12 } }]);
});

it('an operator may stand in another record than his machine', () => {
  const facts = [repair({ crew: crew(60) }), repair({ machines: machines('w-1') })];
  expect(raised('machine-without-operator', { facts, statement: { lines: [] } })).toEqual([]);
  const nobody = [repair({ crew: crew(60) }), repair({ machines: machines('w-9') })];
  expect(raised('machine-without-operator', { facts: nobody, statement: { lines: [] } })).toHaveLength(1);
});

it('no hours are missed where a flat price or a contractor stands in their place', () => {
  const of = (section: string) =>
    raised('no-hours-billed', { statement: { totalCents: 100_00, lines: [line(section)] } });
  expect(of('materials')).toHaveLength(1);
  expect(of('flat-price')).toEqual([]);
  expect(of('contractors')).toEqual([]);
});

it('an invoice that is under a flat price has no money at stake', () => {
  const contractors = [{ contractor: 'truck', invoiceNumber: '7', invoiceSha256: null, amountCents: 100_00 }];
  const of = (lines: object[]) =>
    raised('contractor-without-invoice', {
      facts: [repair({ contractors })],
      statement: { totalCents: 500_00, lines },
    }).map(({ atStakeCents }) => atStakeCents);
  expect(of([line('contractors', { authority: { edition: '7' } })])).toEqual([100_00]);
  expect(of([line('flat-price')])).toEqual([0]);
});

it('a day that is over is not so many days away', () => {
  const said = (now: string): string => {
    const [found] = raised('limitation-near', {
      now,
      limitation: { lastDay: '2026-06-01', citation: 'Code 1' },
      statement: { totalCents: 1 },
    });
    return say('en', 'objection.limitation-near', found!.params);
  };
  expect(said('2026-05-30T12:00:00Z')).toMatch(/^2 days are left to 2026-06-01, the last day to sue by the/);
  expect(said('2026-06-05T12:00:00Z')).toMatch(
    /^The last day to sue was 2026-06-01 by the utility’s setting/,
  );
});

it('a few minutes are not zero hours', () => {
  expect(quarterHours(5 * 60_000)).toBe(0.08);
  expect(quarterHours(45 * 60_000)).toBe(0.75);
  expect(quarterHours(1000)).toBe(0.01);
});
