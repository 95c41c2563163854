import * as z from 'zod';
import { outlet, hydrantTypes } from '../../inventory/hydrant.ts';
import { chosenId, shortText } from '../fields.ts';
import { form } from '../form.ts';

/** A torque is the maker's: value, manual and page travel together, and there is no default. */
const torque = z.strictObject({
  joint: shortText,
  bolts: z.number().int().min(1).max(40).nullable(),
  torqueLbfFt: z.number().gt(0).max(2000),
  manual: shortText,
  page: z.string().trim().min(1).max(20),
});

/** A hydrant model as its maker's manual has it. The latest record of a model id stands. */
export const hydrantModel = form({
  kind: 'hydrant-model',
  subjects: ['utility'],
  writers: ['manager'],
  readers: ['crew', 'clerk', 'manager'],
  personal: [],
  body: z.strictObject({
    modelId: chosenId,
    name: shortText,
    type: z.enum(hydrantTypes),
    opens: z.enum(['left', 'right', 'unknown']),
    outlets: z.array(outlet).max(8),
    torques: z.array(torque).max(20),
    kitContents: z
      .array(
        z.strictObject({
          partNumber: chosenId,
          description: shortText,
          quantity: z.number().int().min(1).max(100),
        }),
      )
      .max(60),
    manual: shortText.nullable(),
  }),
});
