import type { Problem } from '../problems/problem.ts';
import { ofKind, type Effective } from '../submissions/effective.ts';
import type { BodyOf } from '../submissions/submission.ts';
import type { WaterLostEstimate } from './estimate.ts';
import { challengeWater } from './limits.ts';
import { estimateOf } from './record.ts';

/** What a strike's facts say of the water lost, as they stand. */
export interface WaterStanding {
  /** The one that came into the ledger last; it stands. */
  readonly record: Effective<'water-lost'> | null;
  /** What its question comes to; null for a record of before, which has a figure and a sentence alone. */
  readonly estimate: WaterLostEstimate | null;
  /** What speaks against the figure, whether or not somebody answered it. */
  readonly challenges: readonly Problem[];
  /** Nobody recorded water, and the crews found the main valve holding and nothing flowing. */
  readonly heldUnrecorded: boolean;
  /** Gallons are on record, and the crews' word that the main valve held keeps them off the bill. */
  readonly recordedThoughHeld: boolean;
  /** Nobody recorded water, and a crew both found the main valve holding and saw water flow: one of them is wrong. */
  readonly contradicted: boolean;
}

/**
 * The record of water lost that counts: the one recorded last, whatever hour it begins with, because who estimates anew
 * means the new figure. A correction changes its own record and does not move it up; a record withdrawn counts no more.
 */
export function standingWater(facts: readonly Effective[]): Effective<'water-lost'> | null {
  return ofKind(facts, 'water-lost').reduce<Effective<'water-lost'> | null>(
    (last, each) =>
      last === null || Date.parse(each.recordedAt) >= Date.parse(last.recordedAt) ? each : last,
    null,
  );
}

/** A record of before named no hydrant: no hydrant at all can have given more than the widest lateral lets through. */
function challengesOfOld({ waterLostGal, flowingFrom, flowingTo }: BodyOf<'water-lost'>): Problem[] {
  if (flowingFrom === null || flowingTo === null) return [];
  const minutes = (Date.parse(flowingTo) - Date.parse(flowingFrom)) / 60_000;
  return minutes > 0 ? challengeWater({ waterGal: waterLostGal, minutes }, 'waterLostGal') : [];
}

const foundBy = (facts: readonly Effective[]) =>
  ofKind(facts, 'strike').flatMap(({ fact }) => (fact.body.found ? [fact.body.found] : []));
const flowed = ({ flow }: { readonly flow: string }): boolean => flow !== 'none' && flow !== 'unknown';

/**
 * Whether no water was lost because the main valve held: a record of it says so, or the crews found it holding and none
 * of them saw water flow or the valve fail. The statement, the desk and the packet ask this one question.
 */
export function mainValveHeld(facts: readonly Effective[]): boolean {
  const record = standingWater(facts)?.fact.body;
  const found = foundBy(facts);
  return (
    record?.estimate?.by === 'valve-held' ||
    (found.some(({ mainValve }) => mainValve === 'holds') &&
      found.every((seen) => seen.mainValve !== 'does-not-hold' && !flowed(seen)))
  );
}

export function waterStanding(facts: readonly Effective[]): WaterStanding {
  const record = standingWater(facts);
  const estimate = record && estimateOf(record.fact.body);
  return {
    record,
    estimate,
    challenges: estimate?.challenges ?? (record ? challengesOfOld(record.fact.body) : []),
    heldUnrecorded: record === null && mainValveHeld(facts),
    recordedThoughHeld: (record?.fact.body.waterLostGal ?? 0) > 0 && mainValveHeld(facts),
    contradicted:
      record === null && foundBy(facts).some((seen) => seen.mainValve === 'holds' && flowed(seen)),
  };
}
