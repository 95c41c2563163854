import type { ModelJoint } from './modelJoint.ts';
import type { TorqueRecord } from './record.ts';

/** A joint as the first form of a hydrant model kept it: one torque, in lbf·ft. */
export interface FirstTorque {
  readonly joint: string;
  readonly bolts: number | null;
  readonly torqueLbfFt: number;
  readonly manual: string;
  readonly page: string;
}

export interface ModelWithJoints {
  readonly torques?: readonly FirstTorque[] | undefined;
  readonly joints?: readonly ModelJoint[] | undefined;
}

/**
 * The joints of a hydrant model in the order of its record. A model stored before joints had a list of their own is read
 * as what it says: torques in lbf·ft, nothing known of a range, of the threads or of the wrench.
 */
export function jointsOf({ torques = [], joints = [] }: ModelWithJoints): ModelJoint[] {
  const named = new Set(joints.map(({ joint }) => joint));
  return [
    ...joints,
    ...torques
      .filter(({ joint }) => !named.has(joint))
      .map(({ torqueLbfFt, ...cited }): ModelJoint => ({
        kind: 'bolts',
        ...cited,
        torque: torqueLbfFt,
        torqueTo: null,
        unit: 'lbf.ft',
        condition: null,
        wrenchTolerancePercent: null,
      })),
  ];
}

/** The torque record of a joint; null when its manual gives none, and then nobody has one. */
export function torqueOf(joint: ModelJoint): TorqueRecord | null {
  if (joint.kind !== 'bolts') return null;
  const { joint: name, bolts, torque, torqueTo, unit, manual, page } = joint;
  if (torque === null || unit === null || manual === null || page === null) return null;
  return { kind: 'torque', joint: name, bolts, torque, torqueTo, unit, manual, page };
}

/** The torque record of a model's joint by its name; null when the model has none for it. */
export function torqueRecordFrom(model: ModelWithJoints, joint: string): TorqueRecord | null {
  const found = jointsOf(model).find((one) => one.joint === joint);
  return found ? torqueOf(found) : null;
}
