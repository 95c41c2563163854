import type { BodyOf } from '../submissions/submission.ts';
import { OutOfRange } from '../hydraulics/card.ts';
import { jointsOf, torqueOf } from '../tightening/fromModel.ts';
import type { BoltedJoint, ModelJoint } from '../tightening/modelJoint.ts';
import { tighteningPlan, type TighteningPlan } from '../tightening/plan.ts';
import { sayBackOff, sayOrder, sayTorque } from '../tightening/say.ts';
import { bothUnits } from '../tightening/torqueUnits.ts';
import type { Reader } from '../units/format.ts';
import { say } from '../words/index.ts';
import type { ProcedureStep } from './steps.ts';

type Model = BodyOf<'hydrant-model'>;

const isBolted = (joint: ModelJoint): joint is BoltedJoint => joint.kind === 'bolts';

/** The plan for a joint as its record has it; null where the number of bolts is not known or has no cross pattern. */
export function planOfJoint(joint: BoltedJoint): TighteningPlan | null {
  if (joint.bolts === null) return null;
  try {
    return tighteningPlan({
      record: torqueOf(joint),
      bolts: joint.bolts,
      wrenchToleranceFraction: undefined,
    });
  } catch (error) {
    if (error instanceof OutOfRange) return null;
    throw error;
  }
}

/** The torque of a joint in both units, or whom to ask: a torque is the maker's or nobody's. */
export function sayJointTorque(joint: BoltedJoint, reader: Reader): string {
  const record = torqueOf(joint);
  if (!record) return say(reader.locale, 'tightening.see-manual');
  const from = sayTorque(bothUnits(record.torque, record.unit), reader);
  if (record.torqueTo === null) return from;
  const upper = sayTorque(bothUnits(record.torqueTo, record.unit), reader);
  return say(reader.locale, 'tightening.turns-to', { from, to: upper });
}

/** What the model's record says of a step, in sentences; nothing where it says nothing. */
export function modelAtStep(step: ProcedureStep, model: Model, reader: Reader): string[] {
  const { locale } = reader;
  switch (step) {
    case 'tightened-to-torque':
      return jointsOf(model)
        .filter(isBolted)
        .map((joint) => {
          const plan = planOfJoint(joint);
          return say(locale, 'procedure.joint', {
            joint: joint.joint,
            torque: sayJointTorque(joint, reader),
            known: torqueOf(joint) ? 'yes' : 'no',
            count: plan?.bolts ?? 0,
            order: plan ? sayOrder(plan) : '',
          });
        });
    case 'thrust-nut-set':
      return jointsOf(model).flatMap((joint) =>
        joint.kind === 'back-off' ? [`${joint.joint}: ${sayBackOff(joint, locale)}`] : [],
      );
    case 'faces-cleaned-gaskets-new':
      return (model.lubricants ?? []).map(({ where, what, manual, page }) =>
        say(locale, 'procedure.lubricant', {
          where,
          what,
          manual: manual ?? 'none',
          page: page ?? 'none',
        }),
      );
    case 'opened-and-closed':
      return model.opens === 'unknown' ? [] : [say(locale, `procedure.opens.${model.opens}`)];
    default:
      return [];
  }
}
