import { describe, expect, it } from 'vitest';
import { evaluateFlowTest } from '../../../shared/hydraulics/evaluateFlowTest.ts';
import { flowTestInputFrom } from '../../../shared/hydraulics/fromFact.ts';
import { outletShapes } from '../../../shared/hydraulics/outletShapes.ts';
import { outletShapeSvg } from '../../../shared/hydraulics/outletShapeSvg.ts';
import { flowTest } from '../../../shared/submissions/forms/flowTest.ts';
import { hydrantModel } from '../../../shared/submissions/forms/hydrantModel.ts';
import { strike } from '../../../shared/submissions/forms/strike.ts';
import { tighteningPlan } from '../../../shared/tightening/plan.ts';
import { torqueRecordFrom } from '../../../shared/tightening/fromModel.ts';
import { estimateWaterLost } from '../../../shared/water/estimate.ts';
import { waterLostInputFrom } from '../../../shared/water/fromStrike.ts';
import { sampleBodies } from '../../support/sampleBodies.ts';

describe('recorded facts as the engines take them', () => {
  it('a flow test: every outlet with its hydrant, the gauges, the day', () => {
    const body = flowTest.body.parse({
      ...sampleBodies['flow-test'],
      residualHydrantId: 'H-1',
      staticPsi: 80,
      residualPsi: 50,
      targetResidualPsi: 20,
      measuredFlowGpm: null,
      flowHydrants: [
        { hydrantId: 'H-2', outlets: [{ kind: 'hose', diameterIn: 2.5, coefficient: 0.9, pitotPsi: 20 }] },
        { hydrantId: 'H-3', outlets: [{ kind: 'hose', diameterIn: 2.5, coefficient: 0.9, pitotPsi: 16 }] },
      ],
      gauges: [{ gaugeId: 'G-1', rangePsi: 200, calibratedOn: '2024-01-01' }],
    });
    const result = evaluateFlowTest(flowTestInputFrom(body, { testedOn: '2026-03-04' }));
    expect(result.hydrants.map(({ hydrantId }) => hydrantId)).toEqual(['H-2', 'H-3']);
    expect(result.warnings.map(({ code }) => code)).toEqual(['gauge-out-of-calibration']);
    const metered = flowTestInputFrom({ ...body, measuredFlowGpm: 900, flowHydrants: [] });
    expect(evaluateFlowTest(metered).measuredFlowGpm).toBe(900);
  });

  it('a strike: what was found, the earliest call, the lateral of the inventory', () => {
    const body = strike.body.parse({
      ...sampleBodies.strike,
      struckAt: null,
      struckAtBasis: 'bounded',
      lastSeenSoundAt: '2026-03-04T01:00:00Z',
      calledOutAt: '2026-03-04T02:20:00Z',
      arrivedAt: '2026-03-04T02:40:00Z',
      waterShutAt: '2026-03-04T03:00:00Z',
      reportedBy: { ...sampleBodies.strike.reportedBy, reportedAt: '2026-03-04T02:00:00Z' },
      found: {
        ...sampleBodies.strike.found,
        mainValve: 'does-not-hold',
        flow: 'full-bore',
        jetHeightIn: null,
        throwDistanceIn: null,
        openingDiameterIn: null,
      },
    });
    const input = waterLostInputFrom(body, {
      hydrant: { type: 'dry-barrel', lateralSizeIn: 6, lateralLengthFt: 18 },
      flowTest: { staticPsi: 70, residualPsi: 48, flowGpm: 640 },
    });
    const estimate = estimateWaterLost(input);
    expect(estimate.minutes).toMatchObject({ low: 60, high: 120 });
    expect(estimate.flow?.method).toBe('full-bore');
    // A valve that was closed before anybody wrote it into the strike.
    const earlier = waterLostInputFrom(body, {
      hydrant: null,
      flowTest: null,
      waterShutAt: '2026-03-04T02:30:00Z',
    });
    expect(earlier.times.waterShutAt).toBe('2026-03-04T02:30:00Z');
    expect(waterLostInputFrom({ ...body, found: null }, { hydrant: null, flowTest: null }).found).toEqual({
      mainValve: 'unknown',
      flow: 'unknown',
    });
  });

  it('a model: the torque of its joint, or none', () => {
    const model = hydrantModel.body.parse({
      ...sampleBodies['hydrant-model'],
      torques: [{ joint: 'bonnet', bolts: 6, torqueLbfFt: 61, manual: 'Invented Model 7', page: '3' }],
    });
    expect(tighteningPlan({ record: torqueRecordFrom(model, 'bonnet') }).torque).toMatchObject({
      lbfFt: 61,
    });
    expect(torqueRecordFrom(model, 'shoe')).toBeNull();
  });
});

describe('picture of an outlet', () => {
  it.each(outletShapes)('$id is named with its coefficient, in one ink', (shape) => {
    const svg = outletShapeSvg(shape, { locale: 'es', idPrefix: 'o' });
    expect(svg).toContain(`coeficiente ${shape.coefficient.toFixed(2)}</title>`);
    expect(svg).not.toMatch(/#[0-9a-f]{3,6}|rgb|\[hyd/i);
  });
  it('differs from shape to shape', () =>
    expect(
      new Set(outletShapes.map((shape) => outletShapeSvg(shape, { locale: 'en', idPrefix: '' }))).size,
    ).toBe(3));
});
