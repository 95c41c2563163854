import { expect, it } from 'vitest';
import { createRecordsApp } from '../../functions/records/app.ts';
import { demoUtility } from '../../infra/local/demo/index.ts';
import { flowTestSettingsFrom, type FlowTestRules } from '../../shared/hydraulics/flowTestSettings.ts';
import { evaluateFlowTest } from '../../shared/hydraulics/evaluateFlowTest.ts';
import { sayCapacity } from '../../shared/hydraulics/sayCapacity.ts';
import { problemsFromZod } from '../../shared/problems/fromZod.ts';
import { utilitySettings } from '../../shared/utility/settings.ts';
import { testWorld } from './support/world.ts';

const own: FlowTestRules = {
  classBands: [
    { hydrantClass: 'A', name: 'I', fromGpm: 900, color: 'yellow' },
    { hydrantClass: 'C', name: 'II', fromGpm: 0, color: 'black' },
  ],
  ratingResidualPsi: 25,
};
const test = { staticPsi: 86, residualPsi: 42, measuredFlowGpm: 789 };
const codes = (flowTest: unknown): string[] => {
  const parsed = utilitySettings.safeParse({ ...demoUtility, flowTest });
  return parsed.success
    ? []
    : problemsFromZod(parsed.error.issues).map(({ code, path }) => `${code} ${path}`);
};

it('a utility’s rules of the flow test are its settings; left out, the standard holds', () => {
  expect(utilitySettings.parse(demoUtility).flowTest).toBeUndefined();
  expect(codes(own)).toEqual([]);
  expect(codes({ classBands: [{ hydrantClass: 'A', fromGpm: 500, color: 'mauve' }] })).toEqual(
    expect.arrayContaining([expect.stringContaining('flowTest.classBands.0.color')]),
  );
  expect(codes({ classBands: [{ hydrantClass: 'A', fromGpm: 500, color: 'red' }] })).toEqual([
    'bands-end-above-zero flowTest.classBands.0.fromGpm',
  ]);
  expect(codes({ ratingResidual: 20 })).toEqual(['unknown-field flowTest.ratingResidual']);
  expect(
    codes({ errors: { pressureGauge: { rangePsi: 200, accuracyFraction: 5, resolutionPsi: 1 } } }),
  ).toEqual(['above-maximum flowTest.errors.pressureGauge.accuracyFraction']);
});

it('the class is said by the utility’s name, and recorded by its letter', () => {
  const result = evaluateFlowTest(test, flowTestSettingsFrom(own));
  expect(result).toMatchObject({ hydrantClass: 'A', className: 'I', rating: { residualPsi: 25 } });
  expect(sayCapacity(result, { system: 'us', locale: 'en' })).toMatch(/^I, 9\d\d gpm, .* class I /);
  expect(evaluateFlowTest(test)).toMatchObject({ hydrantClass: 'B', className: 'B' });
});

it('apps are given them by GET /api/utility and GET /api/me', async () => {
  const world = await testWorld();
  const { body } = await world.ask('/api/utility', null);
  expect(body['flowTest']).toEqual({});
  const app = createRecordsApp({ ...world.deps, settings: { ...demoUtility, flowTest: own } });
  const answer = await app.request('/api/utility');
  expect(await answer.json()).toMatchObject({ flowTest: own });
});
