import * as z from 'zod';
import { problemIssue } from '../problems/fromZod.ts';
import { MOST_BOLTS } from './order.ts';
import { torqueUnits } from './torqueUnits.ts';

/** Which joint: bonnet, breakaway flange, and so on, as the manual calls it. */
export const jointName = z.string().trim().min(1).max(200);
export const manualTitle = z.string().trim().min(1).max(200);
export const manualPage = z.string().trim().min(1).max(20);

/** A joint, and where its maker says how to close it: manual and page travel with every value. */
const cited = {
  joint: jointName,
  bolts: z.number().int().min(1).max(MOST_BOLTS).nullable(),
  manual: manualTitle,
  page: manualPage,
};

/** A torque holds for dry threads or for lubricated ones; the difference is a large part of it. */
export const boltConditions = ['dry', 'lubricated'] as const;

/** A torque as printed, in the unit in which it is printed; a range keeps both ends. */
export const torqueRecord = z
  .strictObject({
    kind: z.literal('torque'),
    ...cited,
    torque: z.number().gt(0).max(5000),
    /** Upper end, where the manual prints a range. */
    torqueTo: z.number().gt(0).max(5000).nullable().default(null),
    unit: z.enum(torqueUnits),
  })
  .superRefine(({ torque, torqueTo }, ctx) => {
    if (torqueTo !== null && torqueTo <= torque)
      ctx.addIssue(problemIssue('range-upside-down', ['torqueTo']));
  });

/** A nut that carries thrust: run home and backed off by part of a turn, until its lock lines up. */
export const backOffRecord = z
  .strictObject({
    kind: z.literal('back-off'),
    ...cited,
    turns: z.number().gt(0).max(4),
    turnsTo: z.number().gt(0).max(4).nullable().default(null),
    /** Whether a lock (pin, screw, tab) has to line up. */
    lock: z.boolean(),
  })
  .superRefine(({ turns, turnsTo }, ctx) => {
    if (turnsTo !== null && turnsTo <= turns) ctx.addIssue(problemIssue('range-upside-down', ['turnsTo']));
  });

export const jointRecord = z.discriminatedUnion('kind', [torqueRecord, backOffRecord]);
export type TorqueRecord = z.output<typeof torqueRecord>;
export type BackOffRecord = z.output<typeof backOffRecord>;
export type JointRecord = z.output<typeof jointRecord>;
