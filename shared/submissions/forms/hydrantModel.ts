import * as z from 'zod';
import { outlet, hydrantTypes } from '../../inventory/hydrant.ts';
import { lubricant, wrench } from '../../models/wrench.ts';
import { problemIssue } from '../../problems/fromZod.ts';
import { relations } from '../../problems/relations.ts';
import { modelJoint } from '../../tightening/modelJoint.ts';
import { chosenId, shortText } from '../fields.ts';
import { form } from '../form.ts';

/** A torque as the first models kept it, in lbf·ft only. Read through `jointsOf`, written no more. */
const firstTorque = z.strictObject({
  joint: shortText,
  bolts: z.number().int().min(1).max(40).nullable(),
  torqueLbfFt: z.number().gt(0).max(2000),
  manual: shortText,
  page: z.string().trim().min(1).max(20),
});

/** From the ground to the bottom of the connecting pipe; deeper than any frost asks for, with room. */
const buryFt = z.number().min(0).max(30);

/** A hydrant model as its maker's manual has it. The latest record of a model id stands. */
export const hydrantModel = form({
  kind: 'hydrant-model',
  subjects: ['utility'],
  writers: ['manager'],
  readers: ['crew', 'clerk', 'manager'],
  personal: [],
  body: z
    .strictObject({
      modelId: chosenId,
      name: shortText,
      type: z.enum(hydrantTypes),
      opens: z.enum(['left', 'right', 'unknown']),
      outlets: z.array(outlet).max(8),
      torques: z.array(firstTorque).max(20).optional(),
      /** Every joint that a rebuild closes. A torque is the maker's: value, unit, manual and page travel together. */
      joints: z.array(modelJoint).max(20).optional(),
      kitContents: z
        .array(
          z.strictObject({
            partNumber: chosenId,
            description: shortText,
            quantity: z.number().int().min(1).max(100),
            /** What of the hydrant it takes the place of. Left out by records of before. */
            replaces: shortText.nullable().optional(),
          }),
        )
        .max(60),
      manual: shortText.nullable(),
      /** Bury depths for which the model is made. Left out by records of before, and where the manual does not say. */
      buryDepth: z
        .strictObject({ fromFt: buryFt, toFt: buryFt })
        .check(
          relations(({ fromFt, toFt }, ctx) => {
            if (toFt < fromFt) ctx.addIssue(problemIssue('range-upside-down', ['toFt']));
          }),
        )
        .nullable()
        .optional(),
      wrenches: z.array(wrench).max(20).optional(),
      lubricants: z.array(lubricant).max(20).optional(),
    })
    .check(
      relations(({ joints = [] }, ctx) => {
        const seen = new Set<string>();
        joints.forEach(({ joint }, index) => {
          if (seen.has(joint))
            ctx.addIssue(problemIssue('joint-twice', ['joints', index, 'joint'], { joint }));
          seen.add(joint);
        });
      }),
    ),
});
