import type { Problem } from '../problems/problem.ts';
import type { LocalDate } from './days.ts';
import type { Decimal } from './money.ts';
import type { AuthorityKind, RateBookEdition } from './rateBook.ts';

/** The parts of a statement, in the order in which it is read. Words: `packet.section.<code>`. */
export const sections = [
  'flat-price',
  'labor',
  'machines',
  'materials',
  'contractors',
  'water',
  'flow-test',
  'fees',
  'overhead',
  'claim-handling',
  'credits',
  'adjustments',
] as const;
export type Section = (typeof sections)[number];

/**
 * Words: `packet.unit.<code>`. `usd`: the base of a share. `1000-gal`: thousands of US gallons; `100-ft3`: hundreds of
 * cubic feet.
 */
export const lineUnits = [
  'hour',
  'mile',
  'day',
  'each',
  '1000-gal',
  '100-ft3',
  'm3',
  'invoice',
  'usd',
] as const;
export type LineUnit = (typeof lineUnits)[number];

/** What a line is, for its words (`packet.line.<code>`). */
export const lineKinds = [
  'labor',
  'machine-hours',
  'machine-miles',
  'machine-days',
  'machine-standby',
  'stock',
  'invoiced-part',
  'handling',
  'sales-tax',
  'invoice-tax',
  'contractor',
  'water',
  'flow-test',
  'flat-price',
  'job-fee',
  'overhead',
  'claim-handling',
  'credit',
  'minimum-charge',
  'total-rounding',
] as const;
export type LineKind = (typeof lineKinds)[number];

/** Which day chose the rate. Words: `packet.date-rule.<code>`. */
export type DateRule = 'day-worked' | 'strike' | 'issue' | 'invoice';

/** What an hour counts as under the pay rules. Words: `packet.time.<code>`. */
export const timeClasses = ['working-hours', 'other-hours', 'holiday', 'week-overtime'] as const;
export type TimeClass = (typeof timeClasses)[number];

/** The paper behind a rate: an authority of the rate book, or the invoice itself (title: who sent it, edition: its number). */
export interface LineAuthority {
  readonly kind: AuthorityKind | 'invoice';
  readonly title: string;
  readonly edition: string | null;
  readonly page: string | null;
}

export interface StatementLine {
  /** Unique in the statement and the same whatever the order of the submissions: `labor-1`. */
  readonly lineId: string;
  readonly section: Section;
  readonly kind: LineKind;
  /** The rate book's title, or what the crew wrote where it has none. */
  readonly description: string;
  /** The worker, the machine code or the part number. */
  readonly item: string;
  /** A decimal as text, in `unit`; hours to four places where they do not end (the arithmetic shows them whole). */
  readonly quantity: string;
  readonly unit: LineUnit;
  /**
   * Hours worked, for labour and machines by the hour; null elsewhere. `quantity` is the hours paid or billed, which a
   * minimum or a billing step can make more.
   */
  readonly hoursWorked: string | null;
  /** Labour under pay rules: what this time counts as, and what the hourly rate is multiplied by. Null elsewhere. */
  readonly time: { readonly as: TimeClass; readonly multiplier: string } | null;
  /** Days worked or used and for how long, seconds; empty for what is not time. */
  readonly days: readonly { readonly date: LocalDate; readonly seconds: number }[];
  /** Dollars for one `unit` as the rate book or invoice has it; null for a share and for a line without a rate. */
  readonly rateUsd: string | null;
  /** Labour: fringe added to the rate. Handling: the share of the base. Null elsewhere. */
  readonly fraction: string | null;
  /**
   * Whole cents, rounded once, below zero for a credit or a rounding down; null when no rate was found, which makes the
   * statement incomplete.
   */
  readonly amountCents: number | null;
  readonly editionId: string | null;
  readonly authority: LineAuthority | null;
  /** Labour under pay rules: the paper that sets its premium, steps and minimum; left out elsewhere. */
  readonly payAuthority?: LineAuthority;
  readonly dateBasis: { readonly rule: DateRule; readonly dates: readonly LocalDate[] };
  readonly submissionIds: readonly string[];
  /** The sum, in signs that every language reads, from the quantity to the amount. */
  readonly arithmetic: string;
}

/** A line before it has its place and number. `order` sorts lines within a section. */
export interface DraftLine extends Omit<StatementLine, 'lineId'> {
  readonly order: string;
  /** The amount before any rounding, exact, in dollars; left out where the amount is exact as it stands. */
  readonly exactUsd?: { readonly numerator: Decimal; readonly divisor: number } | undefined;
  /** A machine whose rate holds overhead: no share is taken on it. */
  readonly holdsOverhead?: boolean | undefined;
  /** A bought part whose invoice already bears sales tax. */
  readonly taxPaid?: boolean | undefined;
  /** Why it has no amount, or what is doubtful about it; the path becomes the line's. */
  readonly problems: readonly Problem[];
}

/** What is found while lines are made that belongs to no one line. */
export interface Drafted {
  readonly lines: readonly DraftLine[];
  readonly problems: readonly Problem[];
  /** Recorded and, by the rate book or on purpose, not billed. */
  readonly notes: readonly Problem[];
}

/** The authority of a rate as it prints; an edition's schema holds that it exists. */
export function authorityOf(edition: RateBookEdition, authorityId: string): LineAuthority | null {
  const found = edition.authorities.find((item) => item.authorityId === authorityId);
  return found ? { kind: found.kind, title: found.title, edition: found.edition, page: found.page } : null;
}

export const distinctSorted = (values: readonly string[]): string[] => [...new Set(values)].sort();

/** Groups by key, keys in code-unit order. */
export function groupBy<T>(items: readonly T[], key: (item: T) => string): [string, [T, ...T[]]][] {
  const groups = new Map<string, [T, ...T[]]>();
  for (const item of items) {
    const at = key(item);
    const group = groups.get(at);
    if (group) group.push(item);
    else groups.set(at, [item]);
  }
  return [...groups].sort(([a], [b]) => (a < b ? -1 : 1));
}

/** Milliseconds as people add them up: `3 h 50 min`, and seconds when there are any. */
export function spell(ms: number): string {
  const seconds = ms / 1000;
  const h = Math.floor(seconds / 3600);
  const min = Math.floor((seconds % 3600) / 60);
  const s = Number((seconds % 60).toFixed(3));
  const parts = [h > 0 ? `${h} h` : '', min > 0 ? `${min} min` : '', s > 0 ? `${s} s` : ''].filter(Boolean);
  return parts.length > 0 ? parts.join(' ') : '0 h';
}
