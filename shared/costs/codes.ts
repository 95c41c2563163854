import { editionOn } from './editions.ts';
import type { LocalDate } from './days.ts';
import type { RateBookEdition } from './rateBook.ts';

/** A code of the rate book with its title, and nothing of what it costs. */
export interface TitledCode {
  readonly code: string;
  readonly title: string;
}

export interface JobCodes {
  /** The edition in force; null when none is, or when two of the same day cannot be chosen between. */
  readonly editionId: string | null;
  readonly labor: readonly TitledCode[];
  readonly machines: readonly TitledCode[];
  readonly stock: readonly TitledCode[];
}

/**
 * What a crew may choose from on a day: codes and titles of labour classes, machines and stock parts. Rates stay in the
 * book; each field that leaves is named here.
 */
export function jobCodes(date: LocalDate, editions: readonly RateBookEdition[]): JobCodes {
  const { edition } = editionOn(date, editions);
  if (edition === null) return { editionId: null, labor: [], machines: [], stock: [] };
  return {
    editionId: edition.editionId,
    labor: edition.labor.map(({ laborClass, title }) => ({ code: laborClass, title })),
    machines: edition.machines.map(({ machineCode, title }) => ({ code: machineCode, title })),
    stock: edition.stock.map(({ partNumber, title }) => ({ code: partNumber, title })),
  };
}
