import { valveTurns, type ValveTurn } from '../outages/returnEffect.ts';
import { effectiveFacts, type Effective } from '../submissions/effective.ts';
import type { Recorded } from '../submissions/recorded.ts';
import { shutMainStanding, type ShutMainStanding } from './standing.ts';

/** What is known of the mains that were shut from one hydrant's page, whatever the cause. */
export interface MainsOfHydrant {
  /** Closings recorded with the hydrant and answers recorded anywhere, their corrections with them. */
  readonly records: readonly Recorded[];
  /** Every turn of a valve that is recorded for the hydrant or a strike of it. */
  readonly turns: readonly ValveTurn[];
}

/** A closing that stands with a strike is told on the strike's page; an answer given there answers here too. */
const tells = ({ fact: { kind, subject } }: Effective): boolean =>
  (kind === 'valve-operation' && subject.type === 'hydrant') || kind === 'water-quality-answer';

/**
 * The part of the records that tells of shut mains; null where none was shut from the hydrant's page.
 *
 * @param recorded everything in the hydrant's own stream and in those of its strikes
 */
export function mainsOfHydrant(recorded: readonly Recorded[]): MainsOfHydrant | null {
  const { facts } = effectiveFacts(recorded);
  const telling = facts.filter(tells);
  const turns = valveTurns(facts);
  if (shutMainStanding(telling, turns) === null) return null;
  const wanted = new Set(
    telling.flatMap(({ fact, corrections }) => [
      fact.submissionId,
      ...corrections.map(({ submission }) => submission.submissionId),
    ]),
  );
  return { records: recorded.filter(({ submission }) => wanted.has(submission.submissionId)), turns };
}

/**
 * How the mains stand, with what waits on a device on top of what the server said.
 *
 * @param waiting records that were not sent yet
 */
export function mainsStanding(
  said: MainsOfHydrant | null,
  waiting: readonly Recorded[],
): { readonly facts: readonly Effective[]; readonly standing: ShutMainStanding } | null {
  const records = [...(said?.records ?? []), ...waiting];
  const { facts } = effectiveFacts(records);
  const standing = shutMainStanding(facts.filter(tells), [...(said?.turns ?? []), ...valveTurns(facts)]);
  return standing && { facts, standing };
}
