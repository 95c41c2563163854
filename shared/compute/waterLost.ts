import * as z from 'zod';
import { numberIn } from '../hydraulics/flowReadings.ts';
import { ranges } from '../hydraulics/ranges.ts';
import { estimateWaterLost } from '../water/estimate.ts';
import { waterLostInput } from '../water/input.ts';
import { challengeWater, flowLimits } from '../water/limits.ts';
import { sayQuantityProblem, sayWaterLost } from '../water/say.ts';
import { computation } from './computation.ts';

export const waterLost = computation({
  name: 'water-lost',
  summary: 'water.compute.water-lost.summary',
  output: 'water.compute.water-lost.output',
  eitherSystem: true,
  input: waterLostInput,
  example: {
    hydrantType: 'dry-barrel',
    found: { mainValve: 'does-not-hold', flow: 'jet', jetHeightIn: 36, openingDiameterIn: 4 },
    times: {
      lastSeenSoundAt: '2026-03-04T01:30:00Z',
      firstCallAt: '2026-03-04T02:10:00Z',
      waterShutAt: '2026-03-04T03:05:00Z',
    },
    flowTest: { staticPsi: 70, residualPsi: 48, flowGpm: 640, testedOn: '2025-05-06' },
  },
  run: (input, reader) => {
    const estimate = estimateWaterLost(input);
    const challenges = estimate.challenges.map((challenge) => ({
      ...challenge,
      sentence: sayQuantityProblem(challenge, reader),
    }));
    return { basis: sayWaterLost(estimate, reader), ...estimate, challenges };
  },
});

export const waterChallenge = computation({
  name: 'water-challenge',
  summary: 'water.compute.water-challenge.summary',
  output: 'water.compute.water-challenge.output',
  eitherSystem: true,
  input: z.strictObject({
    waterGal: z.number().min(0).max(1_000_000_000),
    minutes: z.number().gt(0).max(1_000_000),
    flowTest: waterLostInput.shape.flowTest,
    modelBoundGpm: waterLostInput.shape.modelBoundGpm,
    lateral: waterLostInput.shape.lateral,
    staticPsi: numberIn({ ...ranges.pressurePsi, exclusiveMinimum: true }).nullish(),
  }),
  example: { waterGal: 200_000, minutes: 15 },
  run: (input, reader) => ({
    flowGpm: input.waterGal / input.minutes,
    limits: flowLimits(input),
    challenges: challengeWater(input).map((challenge) => ({
      ...challenge,
      sentence: sayQuantityProblem(challenge, reader),
    })),
  }),
});
