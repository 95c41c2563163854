import type { TestPoint } from '../hydraulics/availableFlow.ts';
import type { Hydrant } from '../inventory/hydrant.ts';
import { evaluateRecorded } from '../hydraulics/evaluateRecorded.ts';
import { ofKind, type Effective } from '../submissions/effective.ts';
import type { WaterLostInput } from './input.ts';

type Instant = string | null;

/** What a strike's facts say of water; the body of its form fits. */
export interface StruckWater {
  readonly found:
    | (Pick<WaterLostInput['found'], 'mainValve' | 'flow'> & {
        readonly jetHeightIn: number | null;
        readonly throwDistanceIn: number | null;
        readonly openingDiameterIn: number | null;
      })
    | null;
  readonly struckAt: Instant;
  readonly struckAtBasis: NonNullable<WaterLostInput['times']['struckAtBasis']>;
  readonly lastSeenSoundAt: Instant;
  readonly calledOutAt: Instant;
  readonly arrivedAt: Instant;
  readonly reportedBy: { readonly reportedAt: Instant };
  readonly waterShutAt: Instant;
}

const earliest = (instants: readonly Instant[]): Instant =>
  instants.filter((at): at is string => at !== null).sort((a, b) => Date.parse(a) - Date.parse(b))[0] ?? null;

/**
 * The question about water lost, from a strike's facts, the inventory's row and the hydrant's latest flow test. The first
 * call is the earliest of report, call-out and arrival; the water was shut when the strike or a valve says so. What
 * nobody recorded is left out, and the estimate names what is missing.
 */
export function waterLostInputFrom(
  strike: StruckWater,
  {
    hydrant,
    flowTest,
    waterShutAt,
  }: {
    readonly hydrant: Pick<Hydrant, 'type' | 'lateralSizeIn' | 'lateralLengthFt'> | null;
    readonly flowTest: (TestPoint & { readonly testedOn?: string }) | null;
    /** By the fold of the strike, which knows its valves too; else the strike's own. */
    readonly waterShutAt?: Instant;
  },
): WaterLostInput {
  const { found, struckAt, struckAtBasis, lastSeenSoundAt, calledOutAt, arrivedAt, reportedBy } = strike;
  return {
    ...(hydrant ? { hydrantType: hydrant.type } : {}),
    found: found
      ? {
          mainValve: found.mainValve,
          flow: found.flow,
          jetHeightIn: found.jetHeightIn,
          throwDistanceIn: found.throwDistanceIn,
          openingDiameterIn: found.openingDiameterIn,
        }
      : { mainValve: 'unknown', flow: 'unknown' },
    times: {
      struckAt,
      struckAtBasis,
      lastSeenSoundAt,
      firstCallAt: earliest([reportedBy.reportedAt, calledOutAt, arrivedAt]),
      waterShutAt: waterShutAt ?? strike.waterShutAt,
    },
    lateral:
      hydrant && hydrant.lateralSizeIn !== null && hydrant.lateralLengthFt !== null
        ? { diameterIn: hydrant.lateralSizeIn, lengthFt: hydrant.lateralLengthFt }
        : null,
    flowTest,
  };
}

/**
 * The hydrant's latest flow test before the strike, as static, residual and flow; null where there is none that can be
 * read. What was tested after the repair is another hydrant's word. `dayOf` gives the utility's local date.
 */
export function testBefore(
  facts: readonly Effective[],
  struckAt: Instant,
  dayOf: (instant: string) => string,
): (TestPoint & { readonly testedOn: string }) | null {
  const before = ofKind(facts, 'flow-test')
    .map(({ fact }) => fact.body)
    .filter(({ testedAt }) => struckAt === null || Date.parse(testedAt) < Date.parse(struckAt))
    .sort((a, b) => Date.parse(b.testedAt) - Date.parse(a.testedAt));
  for (const body of before) {
    const result = evaluateRecorded(body);
    const { staticPsi, residualPsi, testedAt } = body;
    if (result) return { staticPsi, residualPsi, flowGpm: result.measuredFlowGpm, testedOn: dayOf(testedAt) };
  }
  return null;
}
