import { torqueOf } from '../../../../../shared/tightening/fromModel.ts';
import type { ModelJoint } from '../../../../../shared/tightening/modelJoint.ts';
import { passNames, type PassName } from '../../../../../shared/tightening/tightened.ts';
import { bothUnits } from '../../../../../shared/tightening/torqueUnits.ts';
import { localMinute } from '../localTime.ts';
import { isTypedQuantity, stringsOf, textOf, type TypedQuantity, type Values } from '../nodes.ts';
import type { FormContext } from '../spec.ts';

/** The printed torque as it would be typed: its own digits where the unit is one of the two on the form. */
function typedTorque(joint: ModelJoint | null): TypedQuantity | null {
  const record = joint && torqueOf(joint);
  // Of a printed range the crew chose one value; it is theirs to say which.
  if (!record || record.torqueTo !== null) return null;
  const { torque, unit } = record;
  if (unit === 'lbf.ft' || unit === 'N.m') return { text: String(torque), unit };
  return { text: String(Number(bothUnits(torque, unit).nM.toFixed(2))), unit: 'N.m' };
}

/** What a row starts with when its first pass is ticked: when, who, the page that was followed, the wrench in hand. */
export function startedRow(
  joint: ModelJoint | null,
  rows: readonly Values[],
  { now, zone, personId }: Pick<FormContext, 'now' | 'zone' | 'personId'>,
): Values {
  const before = rows.findLast((row) => textOf(row['wrenchId']) !== '');
  const common: Values = {
    kind: joint?.kind ?? 'bolts',
    joint: joint?.joint ?? '',
    manual: joint?.manual ?? '',
    page: joint?.page ?? '',
    doneAt: localMinute(now, zone),
    byWorkerId: personId,
  };
  if (joint?.kind === 'back-off') return common;
  return {
    ...common,
    bolts: joint?.bolts ? String(joint.bolts) : '',
    passes: [],
    wrenchId: before?.['wrenchId'] ?? '',
    wrenchCalibratedOn: before?.['wrenchCalibratedOn'] ?? '',
  };
}

/** Ticks a pass, or takes its tick back. With the first full pass the record's torque is put in, to be seen and changed. */
export function withPass(row: Values, pass: PassName, joint: ModelJoint | null): Values {
  const ticked = stringsOf(row['passes']);
  const has = ticked.includes(pass);
  const passes = passNames.filter((name) => (name === pass ? !has : ticked.includes(name)));
  const torque = row['torqueLbfFt'];
  const said = isTypedQuantity(torque) && torque.text.trim() !== '';
  const full = passes.includes('100') || passes.includes('round');
  const printed = full && !said ? typedTorque(joint) : null;
  return { ...row, passes, ...(printed ? { torqueLbfFt: printed } : {}) };
}
