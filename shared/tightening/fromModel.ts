import type { TorqueRecord } from './record.ts';

/** A joint of a hydrant model's record as the model's form keeps it. */
export interface ModelTorque {
  readonly joint: string;
  readonly bolts: number | null;
  readonly torqueLbfFt: number;
  readonly manual: string;
  readonly page: string;
}

/** The torque record of a model's joint; null when the model has none for it, and then nobody has. */
export function torqueRecordFrom(torques: readonly ModelTorque[], joint: string): TorqueRecord | null {
  const found = torques.find((one) => one.joint === joint);
  return found
    ? {
        kind: 'torque',
        joint: found.joint,
        bolts: found.bolts,
        torque: found.torqueLbfFt,
        torqueTo: null,
        unit: 'lbf.ft',
        manual: found.manual,
        page: found.page,
      }
    : null;
}
