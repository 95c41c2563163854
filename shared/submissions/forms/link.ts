import * as z from 'zod';
import { longText, uuidV7 } from '../fields.ts';
import { form } from '../form.ts';

/**
 * Says that two strike ids are one strike: two crews reported it, or a repair was typed before its strike. It stands
 * in the stream of either; the joined strike goes by the smaller (earlier made) id.
 */
export const link = form({
  kind: 'link',
  subjects: ['strike'],
  writers: ['crew', 'clerk', 'manager'],
  readers: ['crew', 'clerk', 'manager'],
  personal: [],
  body: z.strictObject({
    sameAsStrikeId: uuidV7,
    reason: z.enum(['two-reports', 'typed-before-strike', 'other']),
    note: longText.nullable(),
  }),
});
