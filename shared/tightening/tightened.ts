import * as z from 'zod';
import { problemIssue } from '../problems/fromZod.ts';
import { relations } from '../problems/relations.ts';
import { chosenId, instant } from '../submissions/fields.ts';
import { MOST_BOLTS } from './order.ts';
import { jointName, manualPage, manualTitle } from './record.ts';

/** The passes as a crew ticks them, in the order of `passes`: three crosswise, then once round. */
export const passNames = ['30', '60', '100', 'round'] as const;
export type PassName = (typeof passNames)[number];

/** Which joint was closed, by whom, when, and by which page of which manual. */
const closed = {
  joint: jointName,
  manual: manualTitle.nullable(),
  page: manualPage.nullable(),
  doneAt: instant,
  byWorkerId: chosenId,
};

/** Bolts as they were tightened. What was not looked at or not written down is null. */
const boltsTightened = z
  .strictObject({
    kind: z.literal('bolts'),
    ...closed,
    bolts: z.number().int().min(1).max(MOST_BOLTS).nullable(),
    passes: z.array(z.enum(passNames)).max(passNames.length),
    /** The full torque set at the wrench; null: not written down. */
    torqueLbfFt: z.number().gt(0).max(5000).nullable(),
    wrenchId: chosenId.nullable(),
    wrenchCalibratedOn: z.iso.date().nullable(),
  })
  .check(
    relations(
      ({ passes }, ctx) => {
        if (new Set(passes).size < passes.length) ctx.addIssue(problemIssue('pass-twice', ['passes']));
      },
      ({ torqueLbfFt, manual }, ctx) => {
        if (torqueLbfFt !== null && manual === null)
          ctx.addIssue(problemIssue('torque-needs-source', ['manual']));
      },
      ({ torqueLbfFt, page }, ctx) => {
        if (torqueLbfFt !== null && page === null)
          ctx.addIssue(problemIssue('torque-needs-source', ['page']));
      },
    ),
  );

/** A nut that carries thrust as it was set. */
const nutSet = z.strictObject({
  kind: z.literal('back-off'),
  ...closed,
  turns: z.number().gt(0).max(4).nullable(),
  lockLinedUp: z.boolean().nullable(),
});

export const tightenedJoint = z.discriminatedUnion('kind', [boltsTightened, nutSet]);
export type TightenedJoint = z.output<typeof tightenedJoint>;

/** The joints of one repair record. Done again in another record it may stand again there; here each stands once. */
export const tightenedJoints = z
  .array(tightenedJoint)
  .max(40)
  .check(
    relations((joints, ctx) => {
      const seen = new Set<string>();
      joints.forEach(({ joint }, index) => {
        if (seen.has(joint)) ctx.addIssue(problemIssue('joint-twice', [index, 'joint'], { joint }));
        seen.add(joint);
      });
    }),
  );
