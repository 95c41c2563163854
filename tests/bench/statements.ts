import { statementOf } from '../../shared/costs/statement.ts';
import type { RateBookEdition } from '../../shared/costs/rateBook.ts';
import type { Work } from '../../shared/costs/work.ts';
import {
  fromStock,
  labor,
  machine,
  noRates,
  noRecord,
  noWork,
  stock,
  used,
  worked,
} from '../support/rates.ts';
import { seeded } from '../support/seeded.ts';
import type { BenchRow } from './row.ts';

const STATEMENTS = 10_000;

/** A rate book with everything that costs time: pay rules, shares on shares, tax and handling. */
const edition: RateBookEdition = {
  ...noRates,
  labor: ['lead', 'worker'].map((laborClass, index) => ({
    ...labor(laborClass, index === 0 ? '38.4150' : '30.6850', '0.3940'),
    payRulesId: 'p',
  })),
  payRules: [
    {
      payRulesId: 'p',
      title: 'Pay rules',
      workingHours: [{ days: [1, 2, 3, 4, 5], from: '07:30', to: '16:00' }],
      workingMinimumHours: null,
      otherHours: { multiplier: '1.5', minimumHours: '3', minimumWhenAdjoining: false },
      holiday: { multiplier: '2', minimumHours: '4', minimumWhenAdjoining: true },
      holidays: [{ by: 'date', name: 'New Year', month: 1, day: 1, observed: true }],
      week: { startsOn: 1, overHours: '40', multiplier: '1.5' },
      increment: { minutes: 15, toward: 'up', of: 'call' },
      authorityId: 'a',
    },
  ],
  machines: [machine('truck', 'hour', '29.25'), machine('backhoe', 'hour', '57.14', '12.00')],
  stock: [stock('kit', '412.80'), stock('gasket', '45.90')],
  materialHandling: { fraction: '0.05', authorityId: 'a' },
  water: { per1000GalUsd: '7.32', authorityId: 'a' },
  overheads: [
    {
      overheadId: 'general',
      title: 'General',
      fraction: '0.13',
      on: ['labor', 'stock'],
      onOverheads: [],
      limitUsd: null,
      authorityId: 'a',
    },
  ],
};

function works(): Work[] {
  const random = seeded(23_645);
  const from = Date.UTC(2026, 0, 1);
  return Array.from({ length: STATEMENTS }, () => {
    const began = from + Math.floor(random() * 365 * 24 * 60) * 60_000;
    const span = { from: iso(began), to: iso(began + (60 + Math.floor(random() * 480)) * 60_000) };
    return {
      ...noWork,
      timeZone: 'America/New_York',
      strike: { date: iso(began).slice(0, 10), basis: 'struck' },
      records: [
        {
          ...noRecord,
          issuedOn: iso(began).slice(0, 10),
          crew: [
            worked('w-1', 'lead', [span]),
            worked('w-2', 'worker', [span]),
            worked('w-3', 'worker', [span]),
          ],
          machines: [used('truck', [span]), used('backhoe', [span])],
          parts: [fromStock('kit', 1), fromStock('gasket', 2)],
        },
      ],
      waterLost: { gallons: Math.floor(random() * 60_000), basis: 'jet' },
    };
  });
}

const iso = (ms: number): string => new Date(ms).toISOString();

/** Hours times a rate, in floating point and with no rule at all: what the figures would cost if nothing had to be shown. */
function plainTotals(all: readonly Work[]): number {
  let total = 0;
  for (const { records } of all)
    for (const { crew, machines } of records) {
      for (const { work } of crew)
        for (const { from, to } of work) total += ((Date.parse(to) - Date.parse(from)) / 3_600_000) * 38.4;
      for (const { inUse } of machines)
        for (const { from, to } of inUse) total += ((Date.parse(to) - Date.parse(from)) / 3_600_000) * 29.25;
    }
  return total;
}

/** Statements under full pay rules, beside a plain loop over the same work. */
export function bench(): readonly BenchRow[] {
  const all = works();
  const timed = (work: () => unknown): number => {
    const started = performance.now();
    work();
    return (performance.now() - started) / 1000;
  };
  const plain = timed(() => plainTotals(all));
  let cents = 0;
  const value = timed(() => {
    for (const work of all) cents += statementOf(work, [edition]).totalCents;
  });
  if (cents <= 0) throw new Error('the statements came to nothing');
  return [
    {
      name: '10,000 statements, 3 people, 2 machines, pay rules',
      value,
      unit: 's (limit 5)',
      beside: { name: 'plain loop of hours times rate', value: plain },
    },
  ];
}
