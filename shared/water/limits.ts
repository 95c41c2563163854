import { availableFlowGpm } from '../hydraulics/availableFlow.ts';
import { pressureDrop } from '../hydraulics/pressureDrop.ts';
import { problem, type Problem } from '../problems/problem.ts';
import { frictionlessGpm } from './fullBore.ts';
import type { WaterLostInput } from './input.ts';
import { has } from './has.ts';

/** What a hydrant cannot pass, and why. Words: `water.limit.<code>`. */
export interface Limit {
  readonly by: 'flow-test' | 'model' | 'frictionless';
  readonly limitGpm: number;
}

/**
 * Taken where the lateral or the pressure is not known (common practice, no source): the usual largest lateral and a
 * high pressure. The flow through it without any friction is more than any hydrant gives.
 */
export const USUAL_LATERAL_IN = 6;
export const HIGH_PRESSURE_PSI = 100;

type Known = Pick<WaterLostInput, 'flowTest' | 'modelBoundGpm' | 'lateral' | 'staticPsi'>;

/**
 * Upper limits of the flow, least first: the hydrant's own flow test carried on to no residual pressure, the model of the
 * network where there is one, and the lateral's bore without friction. A test with too small a drop limits nothing.
 */
export function flowLimits({ flowTest, modelBoundGpm, lateral, staticPsi }: Known): Limit[] {
  const limits: Limit[] = [
    {
      by: 'frictionless',
      limitGpm: frictionlessGpm(
        lateral?.diameterIn ?? USUAL_LATERAL_IN,
        staticPsi ?? flowTest?.staticPsi ?? HIGH_PRESSURE_PSI,
      ),
    },
  ];
  if (flowTest && pressureDrop(flowTest).sufficient)
    limits.push({ by: 'flow-test', limitGpm: availableFlowGpm({ ...flowTest, targetResidualPsi: 0 }) });
  if (has(modelBoundGpm)) limits.push({ by: 'model', limitGpm: modelBoundGpm });
  return limits.sort((a, b) => a.limitGpm - b.limitGpm);
}

/**
 * A figure that somebody else put down (a crew's guess, a newspaper, an older bill), against what the hydrant can give.
 * A challenge names the flow it would have needed and the limit it breaks; no challenge is no proof.
 */
export function challengeWater(
  given: Known & { readonly waterGal: number; readonly minutes: number },
  path = 'waterGal',
): Problem[] {
  const flowGpm = given.waterGal / given.minutes;
  const broken = flowLimits(given).find(({ limitGpm }) => flowGpm > limitGpm * (1 + 1e-9));
  return broken
    ? [
        problem(`water-above-${broken.by}`, path, {
          waterGal: given.waterGal,
          minutes: Math.round(given.minutes),
          flowGpm,
          limitGpm: broken.limitGpm,
        }),
      ]
    : [];
}
