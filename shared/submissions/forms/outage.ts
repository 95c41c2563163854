import * as z from 'zod';
import { chosenId, dispatchTold, instant, longText } from '../fields.ts';
import { form } from '../form.ts';

/** Causes other than a strike that the public page may name. Free words stay inside. */
export const outageCauses = [
  'main-break',
  'main-shut',
  'valve-fault',
  'hydrant-fault',
  'frozen',
  'access-blocked',
  'construction',
  'low-pressure',
  'other',
] as const;

/** An outage of another cause than a strike. Its id is its submission's. */
export const outage = form({
  kind: 'outage',
  subjects: ['hydrant'],
  writers: ['crew', 'manager'],
  readers: ['crew', 'clerk', 'manager'],
  personal: ['dispatch.takenBy'],
  body: z.strictObject({
    cause: z.enum(outageCauses),
    since: instant,
    markedOutOfServiceAt: instant.nullable(),
    dispatch: dispatchTold.nullable(),
    foundByWorkerId: chosenId.nullable(),
    note: longText.nullable(),
  }),
});
