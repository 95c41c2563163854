import * as z from 'zod';
import { evaluateFlowTest } from '../hydraulics/evaluateFlowTest.ts';
import { flowTestInput } from '../hydraulics/flowTestInput.ts';
import { flowTestRules, flowTestSettingsFrom } from '../hydraulics/flowTestSettings.ts';
import { supplyCurve } from '../hydraulics/supplyCurve.ts';
import { supplyCurveDescription, supplyCurveSvg } from '../hydraulics/supplyCurveSvg.ts';
import { computation } from './computation.ts';

export const supplyCurveDrawing = computation({
  name: 'supply-curve',
  summary: 'hydraulics.compute.supply-curve.summary',
  output: 'hydraulics.compute.supply-curve.output',
  eitherSystem: true,
  input: flowTestInput.safeExtend({
    rules: flowTestRules.optional(),
    subject: z.string().trim().min(1).max(100).optional(),
  }),
  example: { staticPsi: 86, residualPsi: 42, measuredFlowGpm: 789 },
  run: ({ rules, subject, ...input }, reader) => {
    const settings = flowTestSettingsFrom(rules);
    const { measuredFlowGpm, targetResidualPsi, spread } = evaluateFlowTest(input, settings);
    const curve = supplyCurve(
      {
        staticPsi: input.staticPsi,
        residualPsi: input.residualPsi,
        flowGpm: measuredFlowGpm,
        targetResidualPsi,
        minimumDropFraction: settings.minimumDropFraction,
        spread,
      },
      reader.system,
    );
    return {
      description: supplyCurveDescription(curve, reader),
      svg: supplyCurveSvg(curve, { ...reader, idPrefix: 'supply', subject }),
    };
  },
});
