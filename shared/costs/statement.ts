import { problem, type Problem } from '../problems/problem.ts';
import type { Effective } from '../submissions/effective.ts';
import { draftBill } from './bill.ts';
import { footingProblems } from './footing.ts';
import { sections, type DraftLine, type Section, type StatementLine } from './line.ts';
import type { RateBookEdition } from './rateBook.ts';
import { compare } from './stretches.ts';
import type { WaterState } from './tariffs.ts';
import { workOf, type WaterLost, type Work } from './work.ts';

/** What a strike cost, line by line, and why. */
export interface Statement {
  readonly currency: 'USD';
  readonly timeZone: string;
  readonly strike: Work['strike'];
  readonly lines: readonly StatementLine[];
  /** Only the sections that have lines, in the order of `sections`. */
  readonly sections: readonly { readonly section: Section; readonly subtotalCents: number }[];
  /** The sum of the lines that have an amount. Whole cents. */
  readonly totalCents: number;
  /** False when a line has no amount: the total is then less than the cost, and must say so wherever it shows. */
  readonly complete: boolean;
  readonly water: {
    readonly state: WaterState;
    readonly gallons: number | null;
    readonly basis: string | null;
  };
  /** What is wrong or doubtful. A path is `lines.<lineId>`, or the submissions it is about. */
  readonly problems: readonly Problem[];
  /** What is recorded and not billed, and why. */
  readonly notes: readonly Problem[];
}

export interface StatementQuestion {
  /** Effective facts of every stream that belongs to the strike. */
  readonly facts: readonly Effective[];
  readonly editions: readonly RateBookEdition[];
  readonly timeZone: string;
  /** Water lost as a person recorded it; left out or null when nobody did. */
  readonly waterLost?: WaterLost | null | undefined;
}

/**
 * The statement of costs of a strike: a pure function of its facts and the rate book. The order in which facts
 * arrived, and amounts that were corrected, leave no trace. A line whose rate is not found is listed without an amount
 * and makes the statement incomplete; nothing is ever silently zero.
 */
export function statementOfCosts({ facts, editions, timeZone, waterLost }: StatementQuestion): Statement {
  return statementOf(workOf(facts, timeZone, waterLost ?? null), editions);
}

const inOrder = (a: DraftLine, b: DraftLine): number =>
  compare(a.order, b.order) ||
  compare(a.arithmetic, b.arithmetic) ||
  compare(a.submissionIds.join(), b.submissionIds.join());
const problemOrder = (a: Problem, b: Problem): number => compare(a.path, b.path) || compare(a.code, b.code);

/** The same from work that is already in hand, for the command line and for what-if questions. */
export function statementOf(work: Work, editions: readonly RateBookEdition[]): Statement {
  const bill = draftBill(work, editions);
  const drafts = bill.lines;
  const lines: StatementLine[] = [];
  const lineProblems: Problem[] = [];
  for (const section of sections)
    drafts
      .filter((draft) => draft.section === section)
      .sort(inOrder)
      .forEach((draft, index) => {
        const lineId = `${section}-${index + 1}`;
        const { problems } = draft;
        lines.push(printed(lineId, draft));
        lineProblems.push(...problems.map((found) => ({ ...found, path: `lines.${lineId}` })));
      });

  const statement: Statement = {
    currency: 'USD',
    timeZone: work.timeZone,
    strike: work.strike,
    lines,
    sections: sections
      .filter((section) => lines.some((line) => line.section === section))
      .map((section) => ({ section, subtotalCents: sum(lines.filter((line) => line.section === section)) })),
    totalCents: sum(lines),
    complete: lines.every(({ amountCents }) => amountCents !== null),
    water: {
      state: bill.waterState,
      gallons: work.waterLost?.gallons ?? null,
      basis: work.waterLost?.basis ?? null,
    },
    problems: [...lineProblems, ...[...bill.problems].sort(problemOrder)],
    notes: [...strikeDateNotes(work), ...[...bill.notes].sort(problemOrder)],
  };
  const doesNotFoot = footingProblems(statement);
  if (doesNotFoot.length > 0) throw new Error(`statement does not foot: ${JSON.stringify(doesNotFoot)}`);
  return statement;
}

/** A line as it prints: without what only the making of the bill needs. */
function printed(lineId: string, draft: DraftLine): StatementLine {
  const {
    order: _order,
    problems: _problems,
    exactUsd: _exact,
    holdsOverhead: _held,
    taxPaid: _tax,
    ...line
  } = draft;
  return { lineId, ...line };
}

/** Rates that hang on the day of the strike say so when that day is not the day it is known to have happened. */
const strikeDateNotes = ({ strike: { date, basis } }: Work): Problem[] =>
  basis === 'struck' ? [] : [problem('strike-date-taken', '', { date, basis })];

const sum = (lines: readonly StatementLine[]): number =>
  lines.reduce((cents, { amountCents }) => cents + (amountCents ?? 0), 0);
