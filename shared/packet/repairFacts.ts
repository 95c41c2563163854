import { ofKind, type Effective } from '../submissions/effective.ts';
import { jointsOf } from '../tightening/fromModel.ts';
import type { TightenedJoint } from '../tightening/tightened.ts';
import { estimateOf } from '../water/record.ts';
import { standingWater } from '../water/standing.ts';
import type { PacketTightening, PacketWater } from './repairSchema.ts';
import type { WorkerOf } from './timeline.ts';

type Joint = PacketTightening['joints'][number];

/**
 * Every joint of the hydrant's model beside how it was closed, by name; a joint closed twice stands as it was closed
 * last. Joints that the model does not name follow.
 */
export function tighteningOf(
  facts: readonly Effective[],
  modelId: string | null,
  workerOf: WorkerOf,
): PacketTightening {
  const model = ofKind(facts, 'hydrant-model').at(-1)?.fact.body ?? null;
  const last = new Map<string, TightenedJoint>();
  const all = ofKind(facts, 'repair').flatMap(({ fact }) => fact.body.tightened ?? []);
  for (const joint of all.toSorted((a, b) => Date.parse(a.doneAt) - Date.parse(b.doneAt)))
    last.set(joint.joint, joint);
  const printed = model ? jointsOf(model) : [];
  const names = [...new Set([...printed.map(({ joint }) => joint), ...last.keys()])];
  return {
    modelId,
    joints: names.map((joint) => {
      const done = last.get(joint);
      return {
        joint,
        printed: printed.find((one) => one.joint === joint) ?? null,
        used: done ? closedOf(done, workerOf) : null,
      };
    }),
  };
}

function closedOf(done: TightenedJoint, workerOf: WorkerOf): NonNullable<Joint['used']> {
  const { manual, page, doneAt, byWorkerId } = done;
  const head = { manual, page, doneAt, by: workerOf(byWorkerId) };
  if (done.kind === 'back-off')
    return {
      ...head,
      bolts: null,
      passes: [],
      torqueLbfFt: null,
      wrenchId: null,
      wrenchCalibratedOn: null,
      turns: done.turns,
      lockLinedUp: done.lockLinedUp,
    };
  return {
    ...head,
    bolts: done.bolts,
    passes: [...done.passes],
    torqueLbfFt: done.torqueLbfFt,
    wrenchId: done.wrenchId,
    wrenchCalibratedOn: done.wrenchCalibratedOn,
    turns: null,
    lockLinedUp: null,
  };
}

/** The record of water lost that stands, as its writer put it; null where nobody wrote one. */
export function waterOf(
  facts: readonly Effective[],
  workerOf: WorkerOf,
  nameOf: (workerId: string) => string | null,
): PacketWater {
  // The one that the statement bills.
  const fact = standingWater(facts)?.fact;
  if (!fact) return null;
  const { body, submissionId } = fact;
  const { question, estimate, challengeAnswer } = body;
  return {
    claimedGal: body.waterLostGal,
    method: body.method,
    basis: body.basis,
    by: workerOf(body.byWorkerId),
    submissionId,
    flowingFrom: body.flowingFrom,
    flowingTo: body.flowingTo,
    times: question ? { ...question.times } : null,
    question: question ? structuredClone(question) : null,
    estimate: estimate ? { ...estimate } : null,
    choice: question
      ? { figure: question.choice?.figure ?? 'low', reason: question.choice?.reason ?? null }
      : null,
    challenges: (estimateOf(body)?.challenges ?? []).map(({ code, path, params }) => ({
      code,
      path,
      params: { ...params },
    })),
    challengeAnswer: challengeAnswer
      ? {
          text: challengeAnswer.text,
          by: { ...workerOf(challengeAnswer.byWorkerId), name: nameOf(challengeAnswer.byWorkerId) },
        }
      : null,
  };
}
