import { localDate } from '../costs/days.ts';
import type { FlowReading } from '../hydraulics/flowReadings.ts';
import { outletShapeIds } from '../hydraulics/outletShapes.ts';
import type { RecordedDatedTest } from '../hydraulics/recordedHistory.ts';
import type { TestGauge } from '../hydraulics/testGauge.ts';
import { isOneHydrantTest } from '../submissions/forms/flowTest.ts';
import type { BodyOf } from '../submissions/submission.ts';
import type { PacketOutlet, PacketTest } from './testSchema.ts';

/** An outlet as recorded: a reading of the engine, with the shape by which its coefficient was chosen. */
type RecordedOutlet = FlowReading & { readonly shape?: unknown };

function outletOf(hydrantId: string, outlet: RecordedOutlet): PacketOutlet {
  const shape = outletShapeIds.find((id) => id === outlet.shape) ?? null;
  const none: Omit<PacketOutlet, 'hydrantId' | 'kind'> = {
    shape: null,
    diameterIn: null,
    diameterBasis: null,
    coefficient: null,
    pitotPsi: null,
    kGpmPerSqrtPsi: null,
    flowGpm: null,
    accuracyFraction: null,
    gaugeId: outlet.gaugeId ?? null,
  };
  switch (outlet.kind) {
    case 'meter':
      return {
        hydrantId,
        ...none,
        kind: 'meter',
        flowGpm: outlet.flowGpm,
        accuracyFraction: outlet.accuracyFraction ?? null,
      };
    case 'diffuser':
      return {
        hydrantId,
        ...none,
        kind: 'diffuser',
        kGpmPerSqrtPsi: outlet.kGpmPerSqrtPsi,
        pitotPsi: outlet.pitotPsi,
        accuracyFraction: outlet.accuracyFraction ?? null,
      };
    default:
      return {
        hydrantId,
        ...none,
        kind: outlet.kind ?? 'hose',
        shape,
        diameterIn: outlet.diameterIn,
        diameterBasis: outlet.diameterBasis ?? null,
        coefficient: outlet.coefficient,
        pitotPsi: outlet.pitotPsi,
      };
  }
}

const gaugeOf = (gauge: TestGauge): PacketTest['gauges'][number] => ({
  gaugeId: gauge.gaugeId,
  reads: gauge.reads ? [...gauge.reads] : null,
  rangePsi: gauge.rangePsi,
  accuracyFraction: gauge.accuracyFraction ?? null,
  resolutionPsi: gauge.resolutionPsi ?? null,
  calibratedOn: gauge.calibratedOn ?? null,
});

/** What a packet may tell of a recorded test. */
export function packetTestOf(
  submissionId: string,
  body: BodyOf<'flow-test'>,
  timeZone: string,
  testedBy: PacketTest['testedBy'],
): PacketTest {
  return {
    testedAt: body.testedAt,
    testedOn: localDate(body.testedAt, timeZone),
    residualHydrantId: body.residualHydrantId,
    oneHydrant: isOneHydrantTest(body),
    purpose: body.purpose,
    staticPsi: body.staticPsi,
    residualPsi: body.residualPsi,
    targetResidualPsi: body.targetResidualPsi,
    outlets: body.flowHydrants.flatMap(({ hydrantId, outlets }) =>
      outlets.map((outlet) => outletOf(hydrantId, outlet)),
    ),
    meteredFlowGpm: body.measuredFlowGpm,
    gauges: body.gauges.map(gaugeOf),
    flowedMinutes: body.flowedMinutes,
    testedBy: [...testedBy],
    submissionId,
  };
}

const given = <T>(value: T | null): T | undefined => value ?? undefined;

function readingOf({ kind, ...outlet }: PacketOutlet): FlowReading {
  const gaugeId = given(outlet.gaugeId);
  const accuracyFraction = given(outlet.accuracyFraction);
  switch (kind) {
    case 'meter':
      return { kind, gaugeId, accuracyFraction, flowGpm: outlet.flowGpm ?? Number.NaN };
    case 'diffuser':
      return {
        kind,
        gaugeId,
        accuracyFraction,
        kGpmPerSqrtPsi: outlet.kGpmPerSqrtPsi ?? Number.NaN,
        pitotPsi: outlet.pitotPsi ?? Number.NaN,
      };
    default:
      return {
        kind,
        gaugeId,
        diameterIn: outlet.diameterIn ?? Number.NaN,
        diameterBasis: given(outlet.diameterBasis),
        coefficient: outlet.coefficient ?? Number.NaN,
        pitotPsi: outlet.pitotPsi ?? Number.NaN,
      };
  }
}

/**
 * A packet's test as the engine takes it, so that every figure follows from what the packet shows. A reading that is
 * missing becomes one that the engine refuses, never a zero.
 */
export const recordedTestOf = (test: PacketTest): RecordedDatedTest => ({
  submissionId: test.submissionId,
  testedOn: test.testedOn,
  body: {
    testedAt: test.testedAt,
    purpose: test.purpose,
    residualHydrantId: test.residualHydrantId,
    staticPsi: test.staticPsi,
    residualPsi: test.residualPsi,
    targetResidualPsi: test.targetResidualPsi,
    measuredFlowGpm: test.meteredFlowGpm,
    flowHydrants: test.outlets.map((outlet) => ({
      hydrantId: outlet.hydrantId,
      outlets: [readingOf(outlet)],
    })),
    gauges: test.gauges.map(({ reads, accuracyFraction, resolutionPsi, ...gauge }) => ({
      ...gauge,
      reads: given(reads),
      accuracyFraction: given(accuracyFraction),
      resolutionPsi: given(resolutionPsi),
    })),
  },
});
