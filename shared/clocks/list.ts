import type { LocalDate } from '../costs/days.ts';
import { addDays } from './count.ts';
import type { Deadline } from './deadline.ts';
import type { ClockName } from './settings.ts';

/** A date with the claim that it is of. Nothing here describes a person but the payer's name, as the claim has it. */
export interface ListedDeadline extends Deadline {
  readonly claimId: string;
  readonly claimNumber: string;
  readonly strikeId: string;
  readonly payerKind: string;
  readonly payerName: string | null;
}

export interface DeadlineList<T extends Deadline = ListedDeadline> {
  readonly overdue: readonly T[];
  readonly today: readonly T[];
  /** Within the next seven days. */
  readonly week: readonly T[];
  readonly later: readonly T[];
  /** Records whose retention is over. */
  readonly records: readonly T[];
}

/** Dates that stand in every list, however near it ends, from their first warning until somebody answers by name. */
export const neverLeftOut: readonly ClockName[] = ['limitation', 'government-notice'];

/**
 * The dates that still ask for something, earliest first, by when. With `until`, those after it are left out, but for
 * a date to sue or to give notice that is being warned of.
 */
export function listDeadlines<T extends Deadline>(
  deadlines: readonly T[],
  today: LocalDate,
  until: LocalDate | null = null,
): DeadlineList<T> {
  const inAWeek = addDays(today, 7);
  const open = deadlines
    .filter(({ state }) => ['running', 'due-today', 'overdue', 'reached'].includes(state))
    .filter(
      ({ clock, dueOn, warnFrom }) =>
        until === null ||
        dueOn <= until ||
        dueOn <= today ||
        (neverLeftOut.includes(clock) && warnFrom <= today),
    )
    .sort((a, b) => a.dueOn.localeCompare(b.dueOn) || a.id.localeCompare(b.id));
  const records = open.filter(({ state }) => state === 'reached');
  const asking = open.filter(({ state }) => state !== 'reached');
  return {
    overdue: asking.filter(({ dueOn }) => dueOn < today),
    today: asking.filter(({ dueOn }) => dueOn === today),
    week: asking.filter(({ dueOn }) => dueOn > today && dueOn <= inAWeek),
    later: asking.filter(({ dueOn }) => dueOn > inAWeek),
    records,
  };
}
