import { problem, type Problem } from '../problems/problem.ts';
import { authorityOf, type DraftLine } from './line.ts';
import { decimal, dollarText, toCents } from './money.ts';
import type { RateBookEdition } from './rateBook.ts';
import type { Work, WorkRecord } from './work.ts';

type FlatTariff = NonNullable<RateBookEdition['flatTariffs']>[number];

export interface SplitWork {
  /** What is billed by time and materials. Every person's time is in both: see `labor`. */
  readonly billed: Work;
  /** What the flat price stands in for: computed, shown, and not billed. */
  readonly covered: Work;
  /**
   * Whether the time of a class is billed. Hours are counted over all the work first, because a week is every hour
   * worked in it, whatever jobs they were (29 CFR 778.103), and a call is one call, however it is billed.
   */
  readonly labor: (laborClass: string) => boolean;
  readonly tariffs: readonly FlatTariff[];
}

/** The flat prices of an edition for the damage that the repairs record. */
export const flatPricesFor = (edition: RateBookEdition | null, { damage }: Work): FlatTariff[] =>
  (edition?.flatTariffs ?? []).filter((tariff) => tariff.damage.some((item) => damage.includes(item)));

/** Parts the work into what a flat price stands in for and what is billed beside it. */
export function splitByFlatPrice(work: Work, tariffs: readonly FlatTariff[]): SplitWork {
  const covers = (section: FlatTariff['covers'][number], extra: (tariff: FlatTariff) => boolean): boolean =>
    tariffs.some((tariff) => tariff.covers.includes(section) && !extra(tariff));
  const isCovered = {
    machines: ({ machineCode }: WorkRecord['machines'][number]) =>
      covers('machines', ({ extras }) => extras.machineCodes.includes(machineCode)),
    parts: ({ partNumber }: WorkRecord['parts'][number]) =>
      covers('materials', ({ extras }) => extras.partNumbers.includes(partNumber)),
    contractors: () => covers('contractors', () => false),
  };
  const water = covers('water', () => false);
  const tests = covers('flow-test', () => false);
  const half = (wanted: boolean): Work => ({
    ...work,
    records: work.records.map((record) => ({
      ...record,
      machines: record.machines.filter((item) => isCovered.machines(item) === wanted),
      parts: record.parts.filter((item) => isCovered.parts(item) === wanted),
      contractors: record.contractors.filter(() => isCovered.contractors() === wanted),
    })),
    flowTests: tests === wanted ? work.flowTests : [],
    waterLost: water === wanted ? work.waterLost : null,
  });
  return {
    billed: half(false),
    covered: half(true),
    labor: (laborClass) => !covers('labor', ({ extras }) => extras.laborClasses.includes(laborClass)),
    tariffs,
  };
}

/** One line for each flat price. */
export function flatPriceLines(
  tariffs: readonly FlatTariff[],
  edition: RateBookEdition | null,
  { strike, records }: Work,
): DraftLine[] {
  return tariffs.map((tariff): DraftLine => {
    const amountCents = toCents(decimal(tariff.usd));
    return {
      section: 'flat-price',
      kind: 'flat-price',
      order: tariff.tariffId,
      description: tariff.title,
      item: tariff.tariffId,
      quantity: '1',
      unit: 'each',
      hoursWorked: null,
      time: null,
      days: [],
      rateUsd: tariff.usd,
      fraction: null,
      amountCents,
      editionId: edition?.editionId ?? null,
      authority: edition ? authorityOf(edition, tariff.authorityId) : null,
      dateBasis: { rule: 'strike', dates: strike.date === '' ? [] : [strike.date] },
      submissionIds: records.map(({ submissionId }) => submissionId).sort(),
      arithmetic: `1 × $${tariff.usd} = $${dollarText(amountCents)}`,
      problems: [],
    };
  });
}

/** What the flat price stands in for, by section, so that nobody takes silence for work that was not done. */
export function coveredNotes(covered: readonly DraftLine[], tariffs: readonly FlatTariff[]): Problem[] {
  if (tariffs.length === 0) return [];
  const sections = [...new Set(covered.map(({ section }) => section))].sort();
  const tariff = tariffs.map(({ title }) => title).join(', ');
  return sections.map((section) => {
    const lines = covered.filter((line) => line.section === section);
    return problem('covered-by-flat-price', '', {
      tariff,
      section,
      lines: lines.length,
      amountCents: lines.reduce((sum, { amountCents }) => sum + (amountCents ?? 0), 0),
    });
  });
}
