import type { Hydrant } from '../inventory/hydrant.ts';
import { problem, type Problem } from '../problems/problem.ts';
import { flowingMinutes } from '../water/duration.ts';
import { waterLostInputFrom, type StruckWater } from '../water/fromStrike.ts';
import type { WaterBoundQuestion } from './question.ts';

type Lateral = WaterBoundQuestion['lateral'];

/** As smooth as pipe is made (common practice, no source). */
const SMOOTH_C = 150;

/**
 * The lateral for an upper bound: its own size and length where the inventory has both, as smooth as pipe is made and
 * without any fitting, so that what it takes away is the least it can. Undefined: the main alone bounds the flow.
 */
export function boundLateral(
  hydrant: Pick<Hydrant, 'lateralSizeIn' | 'lateralLengthFt'>,
): NonNullable<Lateral> | undefined {
  const { lateralSizeIn: diameterIn, lateralLengthFt: lengthFt } = hydrant;
  if (diameterIn === null || lengthFt === null || lengthFt === 0) return undefined;
  return { diameterIn, lengthFt, roughness: SMOOTH_C, minorLossK: 0 };
}

/** The most water a strike can have cost by the model, gallons; null with what is missing to say so. */
export interface LostBound {
  readonly strikeId: string;
  readonly boundGal: number | null;
  /** The longest it can have run, minutes; null when that is not known. */
  readonly minutes: number | null;
  /** The main valve held: nothing can have run out, whatever the model says. */
  readonly held: boolean;
  readonly problems: readonly Problem[];
}

/**
 * The longest time that the strike's facts allow, times the most that the model lets out: no figure of water lost can be
 * above it if the model is right.
 *
 * @param flowGpm flow into the open air by the model
 * @param waterShutAt by the fold of the strike, which knows its valves too
 */
export function lostBound(
  strikeId: string,
  strike: StruckWater,
  waterShutAt: string | null,
  flowGpm: number,
): LostBound {
  const { found, times } = waterLostInputFrom(strike, { hydrant: null, flowTest: null, waterShutAt });
  if (found.mainValve === 'holds') return { strikeId, boundGal: 0, minutes: null, held: true, problems: [] };
  const minutes = flowingMinutes(times);
  const none = { strikeId, boundGal: null, minutes: null, held: false };
  if (!('low' in minutes)) return { ...none, problems: minutes };
  // Nobody saw it sound before: how early it began is open, and so is the bound.
  if (minutes.high === null) return { ...none, problems: [problem('start-of-flow-open', 'lastSeenSoundAt')] };
  return { strikeId, boundGal: flowGpm * minutes.high, minutes: minutes.high, held: false, problems: [] };
}
