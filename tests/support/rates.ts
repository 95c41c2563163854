import { statementOf, type Statement } from '../../shared/costs/statement.ts';
import type { RateBookEdition } from '../../shared/costs/rateBook.ts';
import type { Work, WorkRecord } from '../../shared/costs/work.ts';

/** Invented rates and work for the tests of costs: an empty book and an empty job, to which a test adds what it is about. */
export const noRates: RateBookEdition = {
  editionId: 'book',
  title: 'Rates',
  effectiveFrom: '2000-01-01',
  effectiveTo: null,
  currency: 'USD',
  rounding: 'line-to-cent',
  authorities: [{ authorityId: 'a', kind: 'resolution', title: 'Resolution', edition: null, page: null }],
  labor: [],
  machines: [],
  stock: [],
  materialHandling: null,
  water: null,
  flowTest: null,
};

export const noWork: Work = {
  timeZone: 'America/Chicago',
  damage: [],
  weekHours: [],
  credits: [],
  claimHandling: [],
  strike: { date: '2026-03-03', basis: 'struck' },
  records: [],
  flowTests: [],
  mainValveHeld: false,
  waterLost: null,
};

export const noRecord: WorkRecord = {
  submissionId: 'r1',
  issuedOn: '2026-03-03',
  crew: [],
  machines: [],
  parts: [],
  contractors: [],
};

type Crew = WorkRecord['crew'][number];
type Machine = WorkRecord['machines'][number];
type Part = WorkRecord['parts'][number];

export const labor = (laborClass: string, hourlyUsd: string, fringeFraction = '0') => ({
  laborClass,
  title: laborClass,
  hourlyUsd,
  fringeFraction,
  authorityId: 'a',
});
export const machine = (
  machineCode: string,
  unit: 'hour' | 'mile',
  rateUsd: string,
  standbyUsd: string | null = null,
) => ({ machineCode, title: machineCode, unit, rateUsd, standbyUsd, authorityId: 'a' });
export const stock = (partNumber: string, unitPriceUsd: string) => ({
  partNumber,
  title: partNumber,
  unitPriceUsd,
  authorityId: 'a',
});

/** `from`, and `minutes` later. */
export const span = (from: string, minutes: number) => ({
  from,
  to: new Date(Date.parse(from) + minutes * 60_000).toISOString(),
});
export const worked = (
  workerId: string,
  laborClass: string,
  work: Crew['work'],
  breaks: Crew['breaks'] = [],
): Crew => ({ workerId, laborClass, work, breaks });
export const used = (machineCode: string, inUse: Machine['inUse'], more: Partial<Machine> = {}): Machine => ({
  machineCode,
  description: machineCode,
  operatorWorkerId: null,
  inUse,
  standingBy: [],
  drivenMiles: null,
  ...more,
});
export const fromStock = (partNumber: string, quantity: number, issueSlip: string | null = null): Part => ({
  partNumber,
  description: partNumber,
  quantity,
  source: { from: 'stock', issueSlip },
});
export const bought = (
  partNumber: string,
  quantity: number,
  unitPriceCents: number,
  invoiceNumber = 'I-1',
): Part => ({
  partNumber,
  description: partNumber,
  quantity,
  source: { from: 'invoice', supplier: 'Supplier', invoiceNumber, unitPriceCents, invoiceSha256: null },
});

export const cost = (
  record: Partial<WorkRecord> | readonly Partial<WorkRecord>[],
  rates: Partial<RateBookEdition> | readonly RateBookEdition[],
  work: Partial<Work> = {},
): Statement => {
  const records = Array.isArray(record) ? (record as Partial<WorkRecord>[]) : [record as Partial<WorkRecord>];
  return statementOf(
    {
      ...noWork,
      ...work,
      records: records.map((one, index) => ({ ...noRecord, submissionId: `r${index + 1}`, ...one })),
    },
    Array.isArray(rates)
      ? (rates as RateBookEdition[])
      : [{ ...noRates, ...(rates as Partial<RateBookEdition>) }],
  );
};

/** The amounts of a section's lines, in cents, in order. */
export const amounts = (statement: Statement, section: string): (number | null)[] =>
  statement.lines.filter((line) => line.section === section).map(({ amountCents }) => amountCents);
