import { isOutlet, type FlowReading, type ReadingFlow } from './flowReadings.ts';
import type { FlowTestInput } from './flowTestInput.ts';
import type { AssumedErrors, AssumedGauge } from './flowTestSettings.ts';
import { pumperFactorSlope } from './pumperOutlet.ts';
import { gaugeFor, type TestGauge } from './testGauge.ts';

/** What makes a flow uncertain, besides the two pressures. */
export const flowCauses = ['pitot', 'diameter', 'coefficient', 'pumper-factor', 'diffuser', 'meter'] as const;
export type FlowCause = (typeof flowCauses)[number];

/** What was taken from the settings because the test does not say. */
export type Assumed = 'pressure-gauge' | 'pitot-gauge' | 'diameter-measured';

/**
 * How far the readings of one test may be off together: variances and covariances of static, residual (psi²) and of the
 * logarithm of the flow. Every answer's interval is made from these (first order, as the Guide to the Expression of
 * Uncertainty in Measurement, JCGM 100:2008, clause 5, from memory): the errors are small beside what they disturb when
 * the drop is sufficient, and the tests hold this against random trials.
 */
export interface ReadingSpread {
  readonly staticVariance: number;
  readonly residualVariance: number;
  readonly pressureCovariance: number;
  readonly staticFlowCovariance: number;
  readonly residualFlowCovariance: number;
  /** Of the logarithm of the flow, so these are squares of shares; they add up. */
  readonly flowVariance: Readonly<Record<FlowCause, number>>;
  readonly assumed: readonly Assumed[];
}

/** A gauge with nothing left open. */
interface Known extends AssumedGauge {
  readonly id: string;
}

const known = (gauge: TestGauge | undefined, assumed: AssumedGauge, id: string): Known =>
  gauge
    ? {
        id: gauge.gaugeId,
        rangePsi: gauge.rangePsi,
        accuracyFraction: gauge.accuracyFraction ?? assumed.accuracyFraction,
        resolutionPsi: gauge.resolutionPsi ?? assumed.resolutionPsi,
      }
    : { id, ...assumed };

/** Standard deviation of an error of which only the largest value is known: anything up to it is as likely. */
const standard = (largest: number): number => largest / Math.sqrt(3);
const gaugeError = ({ rangePsi, accuracyFraction }: AssumedGauge): number =>
  standard(accuracyFraction * rangePsi);
/** A reading to the nearest step is off by up to half of it. */
const stepVariance = ({ resolutionPsi }: AssumedGauge): number => resolutionPsi ** 2 / 12;

const square = (value: number): number => value * value;

interface FlowSpread {
  readonly variance: Record<FlowCause, number>;
  /** Error of the flow that is shared with a gauge's other readings: share of flow per standard error, by gauge. */
  readonly byGauge: ReadonlyMap<string, number>;
}

const noVariance = (): Record<FlowCause, number> => ({
  pitot: 0,
  diameter: 0,
  coefficient: 0,
  'pumper-factor': 0,
  diffuser: 0,
  meter: 0,
});

/**
 * Errors that are the same for every outlet add up before they are squared: one person judges the shapes by one table,
 * one factor serves all pumper outlets, one drawing gives all nominal sizes, one gauge reads them. Measured diameters,
 * diffusers and meters are off each in its own way.
 */
function flowSpread(
  readings: readonly FlowReading[],
  flows: readonly ReadingFlow[],
  gaugeOf: (reading: FlowReading) => Known,
  errors: AssumedErrors,
): FlowSpread {
  const variance = noVariance();
  const byGauge = new Map<string, number>();
  let total = 0;
  for (const { flowGpm } of flows) total += flowGpm;
  let coefficient = 0;
  let pumper = 0;
  let nominal = 0;
  readings.forEach((reading, index) => {
    const share = (flows[index]?.flowGpm ?? 0) / total;
    if (reading.kind === 'meter') {
      variance.meter += square(share * standard(reading.accuracyFraction ?? errors.meterFraction));
      return;
    }
    let perPsi = 1 / (2 * reading.pitotPsi);
    if (isOutlet(reading)) {
      coefficient += (share * standard(errors.coefficient)) / reading.coefficient;
      if (reading.kind === 'pumper') {
        pumper += share * standard(errors.pumperFactorFraction);
        perPsi += pumperFactorSlope(reading.pitotPsi);
      }
      if (reading.diameterBasis === 'nominal')
        nominal += 2 * share * standard(errors.nominalDiameterFraction);
      else
        variance.diameter += square((2 * share * standard(errors.measuredDiameterIn)) / reading.diameterIn);
    } else {
      variance.diffuser += square(share * standard(reading.accuracyFraction ?? errors.diffuserFraction));
    }
    const gauge = gaugeOf(reading);
    const error = share * perPsi * gaugeError(gauge);
    byGauge.set(gauge.id, (byGauge.get(gauge.id) ?? 0) + error);
    variance.pitot +=
      (1 - errors.sharedGaugeError) * square(error) + square(share * perPsi) * stepVariance(gauge);
  });
  for (const error of byGauge.values()) variance.pitot += errors.sharedGaugeError * square(error);
  variance.coefficient = square(coefficient);
  variance['pumper-factor'] = square(pumper);
  variance.diameter += square(nominal);
  return { variance, byGauge };
}

/**
 * The spread of a test's readings. `flows` are those of its outlets, in their order; empty when one metered flow was
 * given. Static and residual are taken as read on one gauge, which is the practice, unless the test says otherwise.
 */
export function readingSpread(
  input: FlowTestInput,
  flows: readonly ReadingFlow[],
  errors: AssumedErrors,
): ReadingSpread {
  const { gauges, outlets } = input;
  const assumed: Assumed[] = [];
  const staticGauge = gaugeFor(gauges, 'static');
  const residualGauge = gaugeFor(gauges, 'residual');
  const pitotGauge = known(gaugeFor(gauges, 'pitot'), errors.pitotGauge, ' pitot');
  if (!staticGauge || !residualGauge) assumed.push('pressure-gauge');
  const byStatic = known(staticGauge ?? residualGauge, errors.pressureGauge, ' pressure');
  const byResidual = known(residualGauge ?? staticGauge, errors.pressureGauge, ' pressure');
  const staticError = gaugeError(byStatic);
  const residualError = gaugeError(byResidual);
  const shared = errors.sharedGaugeError;

  const gaugeOf = (reading: FlowReading): Known => {
    const named =
      reading.gaugeId === undefined ? undefined : gauges?.find(({ gaugeId }) => gaugeId === reading.gaugeId);
    const gauge = named ? known(named, errors.pitotGauge, '') : pitotGauge;
    if (gauge.id === ' pitot' && !assumed.includes('pitot-gauge')) assumed.push('pitot-gauge');
    return gauge;
  };
  let flow: FlowSpread;
  if (outlets) {
    flow = flowSpread(outlets, flows, gaugeOf, errors);
    if (outlets.some((one) => isOutlet(one) && one.diameterBasis === undefined))
      assumed.push('diameter-measured');
  } else {
    const variance = noVariance();
    variance.meter = square(standard(input.measuredFlowAccuracyFraction ?? errors.meterFraction));
    flow = { variance, byGauge: new Map() };
  }
  return {
    staticVariance: square(staticError) + stepVariance(byStatic),
    residualVariance: square(residualError) + stepVariance(byResidual),
    pressureCovariance: byStatic.id === byResidual.id ? shared * staticError * residualError : 0,
    staticFlowCovariance: shared * staticError * (flow.byGauge.get(byStatic.id) ?? 0),
    residualFlowCovariance: shared * residualError * (flow.byGauge.get(byResidual.id) ?? 0),
    flowVariance: flow.variance,
    assumed,
  };
}

/** All of the flow's variance; its square root is the standard error of the measured flow as a share. */
export function totalFlowVariance({ flowVariance }: ReadingSpread): number {
  let total = 0;
  for (const cause of flowCauses) total += flowVariance[cause];
  return total;
}
