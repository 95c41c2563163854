import { localDate, type LocalDate } from '../costs/days.ts';
import { problem, type Problem } from '../problems/problem.ts';
import type { BodyOf } from '../submissions/submission.ts';
import { bodyOf, ofEvent, type DatedEvent } from './events.ts';
import type { ClockName } from './settings.ts';

type Answer = BodyOf<'deadline-answered'>['answer'];

/** What a named person said to a date, as it stands. */
export interface DeadlineAnswer {
  readonly submissionId: string;
  readonly answer: Answer;
  /** The day it was said, in the utility's zone. */
  readonly on: LocalDate;
  readonly until: LocalDate | null;
  readonly decidedByWorkerId: string;
}

export interface Answered {
  /** The date after what was said: put off or tolled until then. */
  readonly dueOn: LocalDate;
  /** The last answer that counts. */
  readonly answer: DeadlineAnswer | null;
  /** It ends the clock. */
  readonly final: boolean;
  readonly problems: readonly Problem[];
}

/** Dates that nobody at the utility can move by wanting to: only what the law knows answers them. */
const fixedByLaw: readonly ClockName[] = ['limitation', 'government-notice'];
const finalAnswers: Readonly<Record<'law' | 'limitation' | 'own', readonly Answer[]>> = {
  limitation: ['suit-brought', 'let-go', 'not-ours'],
  law: ['done', 'suit-brought', 'let-go', 'not-ours'],
  own: ['done', 'suit-brought', 'let-go', 'not-ours'],
};

/** What an answer does to a date: it ends it, moves it to a later day that it names, or counts for nothing. */
export function effectOf(clock: ClockName, answer: Answer): 'ends' | 'moves' | 'nothing' {
  const law = fixedByLaw.includes(clock);
  if (finalAnswers[clock === 'limitation' ? 'limitation' : law ? 'law' : 'own'].includes(answer))
    return 'ends';
  return answer === 'tolled' || (answer === 'put-off' && !law) ? 'moves' : 'nothing';
}

/**
 * Applies the answers that were given for this date, one after the other: an answer that moves the date is followed by
 * answers for the new one. An answer for another date counts for nothing, so a date that a correction moves asks again.
 */
export function answersTo(
  { id, clock, dueOn: counted }: { id: string; clock: ClockName; dueOn: LocalDate },
  events: readonly DatedEvent[],
  timeZone: string,
): Answered {
  let dueOn = counted;
  let answer: DeadlineAnswer | null = null;
  const problems: Problem[] = [];
  const waiting = ofEvent(events, 'deadline-answered').filter(
    (event) => bodyOf(event, 'deadline-answered').deadline === id,
  );
  for (let next = take(waiting, dueOn); next; next = take(waiting, dueOn)) {
    const body = bodyOf(next, 'deadline-answered');
    const given: DeadlineAnswer = {
      submissionId: next.submissionId,
      answer: body.answer,
      on: localDate(next.fact.occurredAt, timeZone),
      until: body.until,
      decidedByWorkerId: body.decidedByWorkerId,
    };
    const effect = effectOf(clock, body.answer);
    if (effect === 'ends') return { dueOn, answer: given, final: true, problems };
    if (effect === 'moves' && body.until !== null && body.until > dueOn) {
      dueOn = body.until;
      answer = given;
    } else
      problems.push(problem('deadline-not-answered-so', next.submissionId, { clock, answer: body.answer }));
  }
  return { dueOn, answer, final: false, problems };
}

/** Takes out the first answer for a date. */
function take(waiting: DatedEvent[], dueOn: LocalDate): DatedEvent | null {
  const index = waiting.findIndex((event) => bodyOf(event, 'deadline-answered').dueOn === dueOn);
  return index < 0 ? null : (waiting.splice(index, 1)[0] ?? null);
}
