import type { LocalDate } from '../costs/days.ts';
import type { Problem } from '../problems/problem.ts';
import type { FactKind } from '../submissions/kinds.ts';
import type { DeadlineAnswer } from './answers.ts';
import type { ClockName, ClockRule } from './settings.ts';

/** The rule that a date was counted by. */
export interface DeadlineRule extends Pick<
  ClockRule,
  'count' | 'unit' | 'ifNotWorking' | 'from' | 'citation' | 'jurisdiction' | 'confirmedBy'
> {
  /** The record is kept for a year longer than one may sue. */
  readonly yearAfterLimitation?: true;
}

export const deadlineStates = [
  'running',
  'due-today',
  'overdue',
  /** What it waited for has happened. */
  'met',
  /** A named person has said what becomes of it. */
  'answered',
  /** Retention that a legal hold suspends. */
  'held',
  /** Retention that is over: the record may be destroyed, and nothing is late. */
  'reached',
] as const;
export type DeadlineState = (typeof deadlineStates)[number];

export interface DeadlineEvent {
  readonly kind: FactKind | 'strike';
  readonly submissionId: string | null;
  readonly on: LocalDate;
}

/** One date of a claim. Days are calendar days in the utility's time zone. */
export interface Deadline {
  /** The clock, and what started it where it can run more than once: `limitation`, `answer-by:<submission id>`. */
  readonly id: string;
  readonly clock: ClockName;
  /** The date that counts now: put off or tolled, where somebody said so by name. */
  readonly dueOn: LocalDate;
  /** The date as the rule has it. */
  readonly countedOn: LocalDate;
  readonly startedBy: DeadlineEvent;
  /** Null: the date stands in the paper itself. */
  readonly rule: DeadlineRule | null;
  /**
   * `utility`: its own date or duty. `payer-target`: what a rule sets for insurers, and no right of the utility's.
   * `named`: the date that the payer, the court or the plan names.
   */
  readonly whose: 'utility' | 'payer-target' | 'named';
  readonly state: DeadlineState;
  readonly metBy: DeadlineEvent | null;
  /** It was met, but after its date. */
  readonly late: boolean;
  /** The last answer that counts. */
  readonly answer: DeadlineAnswer | null;
  /** Days on which it is warned of, first to last; the first is where it enters the lists. */
  readonly warnOn: readonly LocalDate[];
  readonly warnFrom: LocalDate;
  /** Answers that could not count. */
  readonly problems: readonly Problem[];
}
