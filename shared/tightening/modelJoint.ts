import * as z from 'zod';
import { problemIssue } from '../problems/fromZod.ts';
import { MOST_BOLTS } from './order.ts';
import { backOffRecord, boltConditions, jointName, manualPage, manualTitle } from './record.ts';
import { torqueUnits } from './torqueUnits.ts';

/**
 * A bolted joint of a hydrant model, as its maker's manual has it. A manual that gives no torque leaves it null, and then
 * nobody has one.
 */
export const boltedJoint = z
  .strictObject({
    kind: z.literal('bolts'),
    joint: jointName,
    bolts: z.number().int().min(1).max(MOST_BOLTS).nullable(),
    /** As printed, in the unit in which it is printed. */
    torque: z.number().gt(0).max(5000).nullable(),
    /** Upper end, where the manual prints a range. */
    torqueTo: z.number().gt(0).max(5000).nullable(),
    unit: z.enum(torqueUnits).nullable(),
    /** The threads for which the value is printed; null: the manual does not say. */
    condition: z.enum(boltConditions).nullable(),
    /** How exact the manual asks the wrench to be, as ± percent of its setting; null: it does not say. */
    wrenchTolerancePercent: z.number().gt(0).max(50).nullable(),
    manual: manualTitle.nullable(),
    page: manualPage.nullable(),
  })
  .superRefine(({ torque, torqueTo, unit, manual, page }, ctx) => {
    if (torque === null) {
      if (torqueTo !== null) ctx.addIssue(problemIssue('range-without-start', ['torque']));
      return;
    }
    if (torqueTo !== null && torqueTo <= torque)
      ctx.addIssue(problemIssue('range-upside-down', ['torqueTo']));
    if (unit === null) ctx.addIssue(problemIssue('torque-needs-unit', ['unit']));
    if (manual === null) ctx.addIssue(problemIssue('torque-needs-source', ['manual']));
    if (page === null) ctx.addIssue(problemIssue('torque-needs-source', ['page']));
  });

export const modelJoint = z.discriminatedUnion('kind', [boltedJoint, backOffRecord]);
export type BoltedJoint = z.output<typeof boltedJoint>;
export type ModelJoint = z.output<typeof modelJoint>;
