import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { availableFlowGpm, residualAtFlowPsi } from '../../../shared/hydraulics/availableFlow.ts';
import { evaluateFlowTest } from '../../../shared/hydraulics/evaluateFlowTest.ts';
import {
  flowTestInput,
  type FlowTestInput,
  type TestOutlet,
} from '../../../shared/hydraulics/flowTestInput.ts';
import { outletFlowGpm, outletFlowLitresPerMinute } from '../../../shared/hydraulics/outletFlow.ts';
import { convert } from '../../../shared/units/convert.ts';

const number = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });

const outlet: fc.Arbitrary<TestOutlet> = fc.record(
  {
    diameterIn: number(1, 8),
    coefficient: number(0.5, 1),
    pitotPsi: number(0.1, 200),
    kind: fc.constantFrom('hose' as const, 'pumper' as const),
  },
  { requiredKeys: ['diameterIn', 'coefficient', 'pitotPsi'] },
);

/** Readings that can be a test: residual below static by at least a thousandth of a psi. */
const readings = fc
  .record({
    staticPsi: number(1, 300),
    share: number(0, 0.999),
    outlets: fc.array(outlet, { minLength: 1, maxLength: 8 }),
  })
  .map(({ staticPsi, share, outlets }) => ({ staticPsi, residualPsi: staticPsi * share, outlets }));

const close = (one: number, other: number, relative: number): void => {
  expect(Math.abs(one - other)).toBeLessThanOrEqual(
    relative * Math.max(Math.abs(one), Math.abs(other), 1e-300),
  );
};

/** A hose or pumper outlet's flow, as the whole evaluation gives it. */
const flowOf = (one: TestOutlet): number =>
  evaluateFlowTest({ staticPsi: 100, residualPsi: 50, outlets: [one] }).measuredFlowGpm;

describe('an outlet flows more', () => {
  it.each(['pitotPsi', 'diameterIn', 'coefficient'] as const)('the greater its %s, hose or pumper', (field) =>
    fc.assert(
      fc.property(outlet, number(0, 1), (one, share) => {
        const greatest = { pitotPsi: 200, diameterIn: 8, coefficient: 1 }[field];
        const more = one[field] + share * (greatest - one[field]);
        // Nearer together than this, the last bits of the product decide.
        fc.pre(more > one[field] * (1 + 1e-12));
        expect(flowOf({ ...one, [field]: more })).toBeGreaterThan(flowOf(one));
      }),
    ),
  );
});

describe('available flow', () => {
  const point = fc
    .record({
      staticPsi: number(1, 300),
      share: number(0, 0.99),
      flowGpm: number(1, 20_000),
      at: number(0, 0.99),
    })
    .map(({ staticPsi, share, flowGpm, at }) => ({
      staticPsi,
      residualPsi: staticPsi * share,
      flowGpm,
      targetResidualPsi: staticPsi * at,
    }));

  it('inverts: the residual at the flow is the target again', () =>
    fc.assert(
      fc.property(point, (one) => {
        const back = residualAtFlowPsi({ ...one, atFlowGpm: availableFlowGpm(one) });
        // The subtraction from static loses digits where the target is small beside it.
        expect(Math.abs(back - one.targetResidualPsi)).toBeLessThanOrEqual(1e-11 * one.staticPsi);
      }),
    ));

  it('at the test residual is the test flow', () =>
    fc.assert(
      fc.property(point, (one) =>
        close(availableFlowGpm({ ...one, targetResidualPsi: one.residualPsi }), one.flowGpm, 1e-12),
      ),
    ));

  it('falls as the wanted residual rises', () =>
    fc.assert(
      fc.property(point, number(0.001, 0.5), (one, share) => {
        const higher = one.targetResidualPsi + share * (one.staticPsi - one.targetResidualPsi);
        expect(availableFlowGpm({ ...one, targetResidualPsi: higher })).toBeLessThan(availableFlowGpm(one));
      }),
    ));
});

describe('a test', () => {
  it('does not depend on the order in which outlets were written down', () =>
    fc.assert(
      fc.property(
        readings.chain((test) =>
          fc.record({
            test: fc.constant(test),
            shuffled: fc.shuffledSubarray([...test.outlets], { minLength: test.outlets.length }),
          }),
        ),
        ({ test, shuffled }) => {
          const one = evaluateFlowTest(test);
          const other = evaluateFlowTest({ ...test, outlets: shuffled });
          expect(other.measuredFlowGpm).toBe(one.measuredFlowGpm);
          expect(other.availableFlowGpm).toBe(one.availableFlowGpm);
          expect(other.hydrantClass).toBe(one.hydrantClass);
        },
      ),
    ));

  it('never gives a number that is not finite, nor a flow from too small a drop', () =>
    fc.assert(
      fc.property(readings, fc.option(number(0, 300), { nil: undefined }), (test, target) => {
        fc.pre(target === undefined || target < test.staticPsi);
        const input: FlowTestInput = target === undefined ? test : { ...test, targetResidualPsi: target };
        expect(flowTestInput.safeParse(input).success).toBe(true);
        const result = evaluateFlowTest(input);
        expect(Number.isFinite(result.measuredFlowGpm)).toBe(true);
        expect(result.availableFlowGpm === null).toBe(!result.drop.sufficient);
        expect(result.hydrantClass === null).toBe(!result.drop.sufficient);
        if (result.availableFlowGpm !== null) {
          expect(Number.isFinite(result.availableFlowGpm)).toBe(true);
          expect(result.availableFlowGpm).toBeGreaterThanOrEqual(0);
        }
      }),
    ));

  it('entered in metric says the same', () =>
    fc.assert(
      fc.property(readings, (test) => {
        // As a metric form does: kPa and mm typed, converted once on the way in.
        const typed = {
          staticKpa: convert(test.staticPsi, 'psi', 'kPa'),
          residualKpa: convert(test.residualPsi, 'psi', 'kPa'),
          outlets: test.outlets.map(({ diameterIn, pitotPsi, ...rest }) => ({
            ...rest,
            diameterMm: convert(diameterIn, 'in', 'mm'),
            pitotKpa: convert(pitotPsi, 'psi', 'kPa'),
          })),
        };
        fc.pre(test.staticPsi < 299.9 && test.outlets.every(({ diameterIn }) => diameterIn > 1.001));
        const one = evaluateFlowTest(test);
        const other = evaluateFlowTest({
          staticPsi: convert(typed.staticKpa, 'kPa', 'psi'),
          residualPsi: convert(typed.residualKpa, 'kPa', 'psi'),
          outlets: typed.outlets.map(({ diameterMm, pitotKpa, ...rest }) => ({
            ...rest,
            diameterIn: convert(diameterMm, 'mm', 'in'),
            pitotPsi: Math.min(200, convert(pitotKpa, 'kPa', 'psi')),
          })),
        });
        close(other.measuredFlowGpm, one.measuredFlowGpm, 1e-9);
        // Close to its static, or to the least drop, a last bit of the reading decides more than 1e-9 of the answer.
        fc.pre(Math.abs(one.drop.fraction - 0.1) > 1e-6 && Math.abs(test.staticPsi - 20) > 1e-3);
        expect(other.availableFlowGpm === null).toBe(one.availableFlowGpm === null);
        close(other.availableFlowGpm ?? 0, one.availableFlowGpm ?? 0, 1e-9);
      }),
    ));

  it('an outlet in metric is the same outlet', () =>
    fc.assert(
      fc.property(
        number(1.001, 11.9),
        number(0.5, 1),
        number(0.1, 199),
        (diameterIn, coefficient, pitotPsi) => {
          const litres = outletFlowLitresPerMinute({
            diameterMm: convert(diameterIn, 'in', 'mm'),
            coefficient,
            pitotKpa: convert(pitotPsi, 'psi', 'kPa'),
          });
          close(litres, outletFlowGpm({ diameterIn, coefficient, pitotPsi }) * 3.785411784, 1e-9);
        },
      ),
    ));
});
