import * as z from 'zod';
import type { FlowTestResult } from '../hydraulics/evaluateFlowTest.ts';
import { flowTestHistory } from '../hydraulics/flowTestHistory.ts';
import { flowTestInput } from '../hydraulics/flowTestInput.ts';
import { flowTestRules, flowTestSettingsFrom } from '../hydraulics/flowTestSettings.ts';
import { historyChartSvg, historyDescription } from '../hydraulics/historyChartSvg.ts';
import { sayCapacity } from '../hydraulics/sayCapacity.ts';
import { sayChange } from '../hydraulics/sayChange.ts';
import { sayWarning } from '../hydraulics/sayWarning.ts';
import { computation } from './computation.ts';

const instant = z.iso.datetime();

export const history = computation({
  name: 'flow-test-history',
  summary: 'hydraulics.compute.flow-test-history.summary',
  output: 'hydraulics.compute.flow-test-history.output',
  eitherSystem: true,
  input: z.strictObject({
    tests: z
      .array(
        z.strictObject({
          testId: z.string().trim().min(1).max(64),
          testedAt: instant,
          testedOn: z.iso.date(),
          test: flowTestInput,
        }),
      )
      .min(1)
      .max(200),
    repairs: z
      .array(
        z.strictObject({
          strikeId: z.string().trim().min(1).max(64),
          struckAt: instant,
          repairedAt: instant.nullable(),
        }),
      )
      .max(50)
      .optional(),
    rules: flowTestRules.optional(),
  }),
  example: {
    tests: [
      {
        testId: 'T-1',
        testedAt: '2021-05-04T15:00:00Z',
        testedOn: '2021-05-04',
        test: { staticPsi: 78, residualPsi: 52, measuredFlowGpm: 900 },
      },
      {
        testId: 'T-2',
        testedAt: '2026-03-06T15:00:00Z',
        testedOn: '2026-03-06',
        test: { staticPsi: 77, residualPsi: 41, measuredFlowGpm: 820 },
      },
    ],
    repairs: [{ strikeId: 'S-1', struckAt: '2026-03-04T02:10:00Z', repairedAt: '2026-03-05T18:00:00Z' }],
  },
  run: ({ tests, repairs, rules }, reader) => {
    const settings = flowTestSettingsFrom(rules);
    const dated = tests.map(({ test, ...head }) => ({ ...head, input: test }));
    const found = flowTestHistory(dated, repairs ?? [], settings);
    const changed = (change: Parameters<typeof sayChange>[0] | null) =>
      change && { sentence: sayChange(change, reader), ...change };
    const brief = (result: FlowTestResult) => ({
      answer: sayCapacity(result, reader),
      hydrantClass: result.hydrantClass,
      measuredFlowGpm: result.measuredFlowGpm,
      capacityGpm: result.rating.capacityGpm,
      lowGpm: result.interval?.lowGpm ?? null,
      highGpm: result.interval?.highGpm ?? null,
    });
    return {
      tests: found.entries.map(({ result, change, problems: _schemaSaidThem, ...entry }) => ({
        ...entry,
        ...(result ? brief(result) : {}),
        warnings: (result?.warnings ?? []).map((warning) => sayWarning(warning, reader)),
        change: changed(change),
      })),
      svg: historyChartSvg(found, { ...reader, idPrefix: 'history', bands: settings.classBands }),
      description: historyDescription(found, reader),
      sinceFirst: changed(found.sinceFirst),
      repairs: found.repairs.map(({ strikeId, before, after, change }) => ({
        strikeId,
        before: before && { testId: before.testId, testedOn: before.testedOn, ...brief(before.result) },
        after: after && { testId: after.testId, testedOn: after.testedOn, ...brief(after.result) },
        change: changed(change),
      })),
    };
  },
});
