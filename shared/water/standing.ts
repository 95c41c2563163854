import type { Problem } from '../problems/problem.ts';
import { ofKind, type Effective } from '../submissions/effective.ts';
import type { BodyOf } from '../submissions/submission.ts';
import type { WaterLostEstimate } from './estimate.ts';
import { challengeWater } from './limits.ts';
import { estimateOf } from './record.ts';

/** What a strike's facts say of the water lost, as they stand. */
export interface WaterStanding {
  /** The latest record; it stands. */
  readonly record: Effective<'water-lost'> | null;
  /** What its question comes to; null for a record of before, which has a figure and a sentence alone. */
  readonly estimate: WaterLostEstimate | null;
  /** What speaks against the figure, whether or not somebody answered it. */
  readonly challenges: readonly Problem[];
  /** Nobody recorded water, and a crew found the main valve holding. */
  readonly heldUnrecorded: boolean;
}

/** A record of before named no hydrant: no hydrant at all can have given more than the widest lateral lets through. */
function challengesOfOld({ waterLostGal, flowingFrom, flowingTo }: BodyOf<'water-lost'>): Problem[] {
  if (flowingFrom === null || flowingTo === null) return [];
  const minutes = (Date.parse(flowingTo) - Date.parse(flowingFrom)) / 60_000;
  return minutes > 0 ? challengeWater({ waterGal: waterLostGal, minutes }, 'waterLostGal') : [];
}

export function waterStanding(facts: readonly Effective[]): WaterStanding {
  const record = ofKind(facts, 'water-lost').at(-1) ?? null;
  const estimate = record && estimateOf(record.fact.body);
  return {
    record,
    estimate,
    challenges: estimate?.challenges ?? (record ? challengesOfOld(record.fact.body) : []),
    heldUnrecorded:
      record === null && ofKind(facts, 'strike').some(({ fact }) => fact.body.found?.mainValve === 'holds'),
  };
}
