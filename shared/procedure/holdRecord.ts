import type { Hydrant } from '../inventory/hydrant.ts';
import { ofKind, type Effective } from '../submissions/effective.ts';
import { notYet } from '../submissions/known.ts';
import type { BodyOf } from '../submissions/submission.ts';
import type { DoneStep, HoldRecord } from './holdPoints.ts';
import { waterLetInByValves } from './waterLetIn.ts';

/** What one record of a repair, recorded or still being typed, says for a hold point. */
export interface SaidOfRepair {
  readonly done: readonly DoneStep[];
  readonly locateTicket: boolean;
}

/** A recorded repair, in this wording: the steps of it that somebody can have seen done, and whether it names the ticket. */
export const saidOfRepair = (
  { steps, dig }: BodyOf<'repair'>,
  item: Pick<Effective, 'recordedAt' | 'corrections'>,
): SaidOfRepair => ({
  done: steps
    .filter(({ doneAt }) => !notYet(doneAt, item))
    .map(({ step, doneAt }) => ({ step, atMs: Date.parse(doneAt) })),
  locateTicket: dig?.locateTicket !== undefined,
});

const refills = (said: readonly SaidOfRepair[]): number[] =>
  said.flatMap(({ done }) => done.filter(({ step }) => step === 'refilled-slowly').map(({ atMs }) => atMs));

/**
 * What a hold point of one strike is judged by. Only its own repairs confirm a step; water that is let in undoes their
 * confirmations wherever that is recorded: by a valve or a refill of this strike, of the hydrant's own page, or of
 * another strike of the hydrant.
 *
 * @param repairs of this strike, the judged or typed one among them
 * @param facts effective facts of this strike
 * @param aroundFacts effective facts of the hydrant's own stream and of its other strikes
 */
export function holdRecord(
  type: Hydrant['type'],
  repairs: readonly SaidOfRepair[],
  facts: readonly Effective[],
  aroundFacts: readonly Effective[],
): HoldRecord {
  const around = ofKind(aroundFacts, 'repair').map((item) => saidOfRepair(item.fact.body, item));
  return {
    type,
    done: repairs.flatMap(({ done }) => done),
    waterLetInMs: [...waterLetInByValves([...facts, ...aroundFacts]), ...refills([...repairs, ...around])],
    locateTicketKnown: repairs.some(({ locateTicket }) => locateTicket),
  };
}
