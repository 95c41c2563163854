import { OutOfRange } from '../hydraulics/card.ts';
import { problem, type Problem } from '../problems/problem.ts';
import type { Reader } from '../units/format.ts';
import { estimateWaterLost, type WaterBasis, type WaterLostEstimate } from './estimate.ts';
import { flowMethods, type FlowMethod } from './flows.ts';
import { has } from './has.ts';
import type { WaterLostInput } from './input.ts';
import type { Limit } from './limits.ts';
import { sayWaterLost } from './say.ts';

/** What an estimate came to when it was recorded: the answer that its writer saw and stands for. */
export interface RecordedEstimate {
  readonly by: WaterBasis;
  readonly lowGal: number;
  readonly bestGal: number;
  readonly highGal: number | null;
  /** How the flow was judged; null where there was none, or a meter gave the gallons. */
  readonly flowMethod: FlowMethod | null;
  /** Stated accuracy of that method, or of the meter, as a share to either side; null where the ends say it. */
  readonly accuracyFraction: number | null;
  readonly limitedBy: Limit['by'] | null;
  readonly flushingGal: number;
  readonly flowTestGal: number;
}

export const limitKinds = ['flow-test', 'model', 'frictionless'] as const satisfies readonly Limit['by'][];
export { flowMethods };

/** The figure, and all that follows from the question, as the record keeps it. */
export interface RecordedAnswer {
  readonly waterLostGal: number;
  readonly method: 'metered' | 'flow-times-duration' | 'none-lost' | 'other';
  readonly basis: string;
  readonly flowingFrom: string | null;
  readonly flowingTo: string | null;
  readonly estimate: RecordedEstimate;
}

const methodOf: Record<WaterBasis, RecordedAnswer['method']> = {
  'valve-held': 'none-lost',
  'no-flow-seen': 'none-lost',
  metered: 'metered',
  'flow-times-time': 'flow-times-duration',
  'own-figure': 'other',
};

export function recordedEstimate(estimate: WaterLostEstimate): RecordedEstimate {
  const { by, lowGal, bestGal, highGal, flow, accuracyFraction, used } = estimate;
  return {
    by,
    lowGal,
    bestGal,
    highGal,
    flowMethod: flow?.method ?? null,
    accuracyFraction: accuracyFraction ?? flow?.accuracyFraction ?? null,
    limitedBy: flow?.limitedBy?.by ?? null,
    ...used,
  };
}

/** From when to when it flowed, as far as one time stands for each end. */
function flowing({ times }: WaterLostInput): Pick<RecordedAnswer, 'flowingFrom' | 'flowingTo'> {
  const flowingFrom = times.struckAt ?? times.firstCallAt ?? null;
  const flowingTo = times.waterShutAt ?? times.lastSeenFlowingAt ?? null;
  const ordered =
    flowingFrom === null || flowingTo === null || Date.parse(flowingFrom) < Date.parse(flowingTo);
  return ordered ? { flowingFrom, flowingTo } : { flowingFrom: null, flowingTo: null };
}

/**
 * What a record of water lost says for its question. The basis is written out in the language and units of the reader
 * given, which is the utility's: it is read on its bill.
 *
 * @throws OutOfRange with every problem when the question has no answer.
 */
export function recordWaterLost(question: WaterLostInput, reader: Reader): RecordedAnswer {
  const estimate = estimateWaterLost(question);
  const none = methodOf[estimate.by] === 'none-lost' && estimate.claim.waterGal === 0;
  return {
    waterLostGal: estimate.claim.waterGal,
    // A figure of one's own is neither metered nor computed, whatever stood beside it.
    method: estimate.claim.figure === 'own' ? 'other' : methodOf[estimate.by],
    basis: sayWaterLost(estimate, reader),
    ...(none ? { flowingFrom: null, flowingTo: null } : flowing(question)),
    estimate: recordedEstimate(estimate),
  };
}

/** A recorded body as far as it can be judged; the body of the form fits. */
export interface WaterRecord {
  readonly waterLostGal: number;
  readonly question?: WaterLostInput | null | undefined;
  readonly estimate?: RecordedEstimate | null | undefined;
  readonly challengeAnswer?: { readonly text: string; readonly byWorkerId: string } | null | undefined;
}

/** Two devices may differ in the last digit of a power, and then in the third of three digits: 1 %. */
const SAME_FRACTION = 0.011;
const same = (one: number | null, other: number | null): boolean =>
  one === null || other === null
    ? one === other
    : Math.abs(one - other) <= SAME_FRACTION * Math.max(one, other);

/** The estimate of a record's question; null for a record of before, which has a figure and a sentence alone. */
export function estimateOf({ question }: WaterRecord): WaterLostEstimate | null {
  if (!question) return null;
  try {
    return estimateWaterLost(question);
  } catch (error) {
    if (error instanceof OutOfRange) return null;
    throw error;
  }
}

/**
 * Whether a record's figures are those of its own question, and whether a challenge was answered by name. A record
 * without a question is one of before and is taken as it is.
 */
export function waterRecordProblems(record: WaterRecord): Problem[] {
  const { question, estimate: recorded, waterLostGal, challengeAnswer } = record;
  if (!question) return [];
  let estimate: WaterLostEstimate;
  try {
    estimate = estimateWaterLost(question);
  } catch (error) {
    if (!(error instanceof OutOfRange)) throw error;
    // A lateral that is missing is asked for at its first field.
    return error.problems.map((found) => ({
      ...found,
      path: `question.${found.path === 'lateral' ? 'lateral.diameterIn' : found.path}`,
    }));
  }
  const differs = (path: string, is: number | null, expected: number | null): Problem[] =>
    same(is, expected) ? [] : [problem('water-not-of-estimate', path, { expectedGal: expected ?? 0 })];
  return [
    ...(recorded
      ? [
          ...differs('estimate.lowGal', recorded.lowGal, estimate.lowGal),
          ...differs('estimate.bestGal', recorded.bestGal, estimate.bestGal),
          ...differs('estimate.highGal', recorded.highGal, estimate.highGal),
        ]
      : [problem('estimate-missing', 'estimate')]),
    ...differs('waterLostGal', waterLostGal, estimate.claim.waterGal),
    ...(estimate.challenges.length > 0 && !has(challengeAnswer)
      ? [problem('challenge-needs-answer', 'challengeAnswer.text')]
      : []),
  ];
}
