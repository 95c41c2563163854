import { localDate } from '../../../shared/costs/days.ts';
import { evaluateRecorded } from '../../../shared/hydraulics/evaluateRecorded.ts';
import type { BodyOf } from '../../../shared/submissions/submission.ts';
import type { WaterLostInput } from '../../../shared/water/input.ts';
import { recordWaterLost } from '../../../shared/water/record.ts';
import { demoUtility } from './utility.ts';

type Found = NonNullable<BodyOf<'strike'>['found']>;

const noTimes: WaterLostInput['times'] = {
  struckAt: null,
  struckAtBasis: 'unknown',
  lastSeenSoundAt: null,
  firstCallAt: null,
  waterShutAt: null,
  lastSeenFlowingAt: null,
  firstSeenShutAt: null,
};

/** Everything that the form leaves open; spread what is known over it. */
const open: WaterLostInput = {
  hydrantType: 'dry-barrel',
  found: {
    mainValve: 'holds',
    flow: 'unknown',
    jetHeightIn: null,
    throwDistanceIn: null,
    throwDropIn: null,
    openingDiameterIn: null,
    seenAccuracyFraction: null,
  },
  times: noTimes,
  metered: null,
  staticPsi: null,
  lateral: null,
  main: null,
  flowTest: null,
  modelBoundGpm: null,
  choice: null,
};

function recorded(question: WaterLostInput): BodyOf<'water-lost'> {
  return {
    ...recordWaterLost(question, { locale: 'en', system: 'us' }),
    byWorkerId: 'w-101',
    note: null,
    question,
    challengeAnswer: null,
  };
}

/** The main valve held: nobody saw water, and none is billed. */
export const noneLost = (): BodyOf<'water-lost'> => recorded(open);

/** From what the crew found, the times that are known and the hydrant's test before the strike, as the form makes it. */
export function lostBy(
  { mainValve, flow, jetHeightIn, throwDistanceIn, openingDiameterIn }: Found,
  times: Partial<WaterLostInput['times']>,
  more: Pick<WaterLostInput, 'flowTest' | 'used'> = {},
): BodyOf<'water-lost'> {
  return recorded({
    ...open,
    found: { ...open.found, mainValve, flow, jetHeightIn, throwDistanceIn, openingDiameterIn },
    times: { ...noTimes, ...times },
    choice: { figure: 'low', waterGal: null, reason: null },
    ...more,
  });
}

/** A test's point as a limit of what the hydrant can have lost; none where it cannot be read. */
export function testPoint(test: BodyOf<'flow-test'>): WaterLostInput['flowTest'] {
  const { staticPsi, residualPsi, testedAt } = test;
  const result = evaluateRecorded(test);
  return (
    result && {
      staticPsi,
      residualPsi,
      flowGpm: result.measuredFlowGpm,
      testedOn: localDate(testedAt, demoUtility.timeZone),
    }
  );
}
