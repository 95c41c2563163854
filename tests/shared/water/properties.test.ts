import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { availableFlowGpm } from '../../../shared/hydraulics/availableFlow.ts';
import { frictionFt, PSI_PER_FT } from '../../../shared/hydraulics/hazenWilliams.ts';
import { speedPsi } from '../../../shared/hydraulics/velocityPressure.ts';
import { estimateWaterLost } from '../../../shared/water/estimate.ts';
import { deliveredGpm, frictionlessGpm, type Lateral } from '../../../shared/water/fullBore.ts';
import { waterLostInput, type WaterLostInput } from '../../../shared/water/input.ts';
import { risingFlow } from '../../../shared/water/jet.ts';

const number = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });
const lateral: fc.Arbitrary<Lateral> = fc.record({
  diameterIn: number(2, 12),
  lengthFt: number(0, 500),
  roughness: number(40, 160),
  minorLossK: number(0, 20),
});
const instant = (minute: number): string => new Date(Date.UTC(2026, 2, 4, 2) + minute * 60_000).toISOString();

const seen: fc.Arbitrary<WaterLostInput> = fc
  .record({
    flow: fc.constantFrom('leak' as const, 'jet' as const, 'full-bore' as const),
    jetHeightIn: fc.option(number(0.1, 600)),
    throwDistanceIn: fc.option(number(1, 300)),
    openingDiameterIn: number(0.25, 8),
    staticPsi: number(20, 150),
    lateral,
    test: fc.option(fc.record({ share: number(0.1, 0.95), flowGpm: number(100, 3000) })),
    modelBoundGpm: fc.option(number(50, 5000)),
    minutes: fc.array(fc.integer({ min: 0, max: 1000 }), { minLength: 4, maxLength: 4 }),
  })
  .map(
    ({
      flow,
      jetHeightIn,
      throwDistanceIn,
      openingDiameterIn,
      staticPsi,
      lateral: pipe,
      test,
      modelBoundGpm,
      minutes,
    }) => {
      const [sound = 0, call = 0, flowing = 0, shut = 0] = minutes.toSorted((a, b) => a - b);
      return {
        found: { mainValve: 'does-not-hold', flow, jetHeightIn, throwDistanceIn, openingDiameterIn },
        times: {
          lastSeenSoundAt: instant(sound),
          firstCallAt: instant(call),
          lastSeenFlowingAt: instant(flowing),
          firstSeenShutAt: instant(shut + 1),
        },
        staticPsi,
        lateral: pipe,
        flowTest: test && { staticPsi, residualPsi: staticPsi * test.share, flowGpm: test.flowGpm },
        modelBoundGpm,
      } satisfies WaterLostInput;
    },
  );

describe('any estimate', () => {
  it('has low ≤ best ≤ high, above no limit, and claims the low', () =>
    fc.assert(
      fc.property(seen, (input) => {
        expect(waterLostInput.safeParse(input).success).toBe(true);
        const { lowGal, bestGal, highGal, flow, limits, claim } = estimateWaterLost(input);
        expect(lowGal).toBeLessThanOrEqual(bestGal);
        expect(bestGal).toBeLessThanOrEqual(highGal!);
        expect(flow!.lowGpm).toBeGreaterThanOrEqual(0);
        expect(flow!.lowGpm).toBeLessThanOrEqual(flow!.bestGpm);
        expect(flow!.bestGpm).toBeLessThanOrEqual(flow!.highGpm);
        for (const { limitGpm } of limits) expect(flow!.highGpm).toBeLessThanOrEqual(limitGpm * (1 + 1e-9));
        expect(claim.waterGal).toBe(lowGal);
      }),
    ));

  it('never passes the hydrant’s own test at zero residual', () =>
    fc.assert(
      fc.property(seen, (input) => {
        const { flowTest } = input;
        if (!flowTest || flowTest.residualPsi > 0.89 * flowTest.staticPsi) return;
        const most = availableFlowGpm({ ...flowTest, targetResidualPsi: 0 });
        expect(estimateWaterLost(input).flow!.highGpm).toBeLessThanOrEqual(most * (1 + 1e-9));
      }),
    ));
});

describe('flow of an open lateral', () => {
  const opening = (pipe: Lateral) => ({ diameterIn: pipe.diameterIn, coefficient: 1 });

  it('uses up the static exactly', () =>
    fc.assert(
      fc.property(lateral, number(10, 200), (pipe, staticPsi) => {
        const gpm = deliveredGpm({ staticPsi, lateral: pipe, opening: opening(pipe) });
        const used =
          PSI_PER_FT * frictionFt(pipe, gpm) + (pipe.minorLossK + 1) * speedPsi(pipe.diameterIn, gpm);
        expect(used).toBeCloseTo(staticPsi, 6);
        expect(gpm).toBeLessThanOrEqual(frictionlessGpm(pipe.diameterIn, staticPsi) * (1 + 1e-9));
      }),
    ));

  it.each<[string, (pipe: Lateral, by: number) => Lateral]>([
    ['wider', (pipe, by) => ({ ...pipe, diameterIn: pipe.diameterIn * (1 + by) })],
    ['smoother', (pipe, by) => ({ ...pipe, roughness: pipe.roughness * (1 + by) })],
    ['shorter', (pipe, by) => ({ ...pipe, lengthFt: pipe.lengthFt * (1 - by) })],
    ['with less in its way', (pipe, by) => ({ ...pipe, minorLossK: pipe.minorLossK * (1 - by) })],
  ])('is no less when the lateral is %s', (_, change) =>
    fc.assert(
      fc.property(lateral, number(10, 200), number(0, 0.3), (pipe, staticPsi, by) => {
        const [before, after] = [pipe, change(pipe, by)].map((one) =>
          deliveredGpm({ staticPsi, lateral: one, opening: opening(one) }),
        );
        expect(after).toBeGreaterThanOrEqual(before! * (1 - 1e-9));
      }),
    ),
  );
});

describe('rising water', () => {
  it('flows more the higher it rises, within each regime', () =>
    fc.assert(
      fc.property(number(1, 12), number(0.05, 200), number(0.001, 1), (diameterIn, heightIn, by) => {
        const one = risingFlow({ diameterIn, heightIn });
        const other = risingFlow({ diameterIn, heightIn: heightIn * (1 + by) });
        fc.pre(one.regime === other.regime);
        expect(other.flowGpm).toBeGreaterThan(one.flowGpm);
      }),
    ));
});
