import * as z from 'zod';
import type { Problem } from '../problems/problem.ts';
import type { AvailableFlowAnswer, ClosingAnswer, WaterBoundAnswer } from './answer.ts';
import type { FieldAndModel } from './compare.ts';
import type { NetworkMeta } from './edition.ts';
import type { LostBound } from './lost.ts';
import type { NearLink } from './nearLinks.ts';
import type { ModelOutline } from './outline.ts';

/** Which model it is, and what it supposes: stands beside every figure that comes from it. */
export interface ModelFacts extends Pick<
  NetworkMeta,
  'datedOn' | 'hour' | 'sourceFile' | 'loadedAt' | 'loadedBy'
> {
  readonly edition: number;
  /** What all customers of the model take at that hour, gpm. */
  readonly demandGpm: number;
  readonly nodes: number;
  readonly links: number;
  readonly headloss: ModelOutline['headloss'];
}

/** The hydrant's latest field test, as far as it stands beside the model. */
export interface FieldTest {
  readonly testedAt: string;
  readonly staticPsi: number;
  readonly residualPsi: number;
  readonly measuredFlowGpm: number;
  /** Null where the test gives no capacity (too small a drop). */
  readonly capacityGpm: number | null;
  /** What the capacity is rated at, psi. */
  readonly ratedAtPsi: number;
  /** Null where there is nothing to compare: no capacity, no interval, or rated at another residual. */
  readonly comparison: FieldAndModel | null;
}

/** A hydrant near by, and where it is in the model; `problem` when it is in none. */
export interface NearbyHydrant {
  readonly hydrantId: string;
  readonly place: string | null;
  readonly distanceFt: number;
  readonly nodeId: string | null;
  readonly problem: Problem | null;
}

/** Everything the model says of one hydrant: `GET /api/network/{hydrantId}`. */
export interface NetworkForHydrant {
  readonly model: ModelFacts;
  readonly available: AvailableFlowAnswer;
  readonly bound: WaterBoundAnswer;
  /** Whether the bound is through the hydrant's own lateral; else the main alone limits it. */
  readonly throughLateral: boolean;
  readonly field: FieldTest | null;
  readonly nearby: readonly NearbyHydrant[];
  /** Pipes and valves that can be closed, nearest first along the pipes. */
  readonly links: readonly NearLink[];
  /** For the strike that was asked for. */
  readonly lost: LostBound | null;
}

/** Body of `POST /api/network/{hydrantId}/closing`. */
export const closingAsk = z.strictObject({
  links: z.array(z.string().trim().min(1).max(64)).min(1).max(50),
});

export interface NetworkClosing {
  readonly model: ModelFacts;
  readonly closing: ClosingAnswer;
  readonly nearby: readonly NearbyHydrant[];
}
