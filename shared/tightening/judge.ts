import { problem, type Problem } from '../problems/problem.ts';
import { torqueOf } from './fromModel.ts';
import type { ModelJoint } from './modelJoint.ts';
import { passNames, type TightenedJoint } from './tightened.ts';
import { bothUnits } from './torqueUnits.ts';

/** A wrench scale is read to its nearest mark; a half per cent is no difference (common practice, no source). */
const READING_SHARE = 0.005;

/**
 * What a record of tightening leaves in doubt beside the model's record: doubts, never refusals. `recorded` is null when
 * the model has no such joint. Words: `problem.<code>`; torques in lbf·ft.
 */
export function tighteningDoubts(
  done: TightenedJoint,
  recorded: ModelJoint | null,
  workDay: string,
): Problem[] {
  const doubts: Problem[] = [];
  if (done.kind === 'back-off') {
    if (recorded?.kind === 'back-off' && done.turns !== null) {
      const { turns, turnsTo } = recorded;
      if (done.turns < turns || done.turns > (turnsTo ?? turns))
        doubts.push(problem('turns-not-as-printed', 'turns', { turns: done.turns }));
    }
    if (recorded?.kind === 'back-off' && recorded.lock && done.lockLinedUp === false)
      doubts.push(problem('lock-not-lined-up', 'lockLinedUp'));
    return doubts;
  }
  const missed = passNames.filter((name) => !done.passes.includes(name));
  if (missed.length > 0) doubts.push(problem('passes-missing', 'passes', { count: missed.length }));
  const printed = recorded && torqueOf(recorded);
  if (printed && done.torqueLbfFt !== null) {
    const low = bothUnits(printed.torque, printed.unit).lbfFt;
    const high = bothUnits(printed.torqueTo ?? printed.torque, printed.unit).lbfFt;
    if (done.torqueLbfFt < low * (1 - READING_SHARE) || done.torqueLbfFt > high * (1 + READING_SHARE))
      doubts.push(problem('torque-not-as-printed', 'torqueLbfFt', { torqueLbfFt: done.torqueLbfFt }));
  }
  if (done.wrenchCalibratedOn !== null && done.wrenchCalibratedOn > workDay)
    doubts.push(
      problem('wrench-calibrated-after', 'wrenchCalibratedOn', { calibratedOn: done.wrenchCalibratedOn }),
    );
  return doubts;
}
