import * as z from 'zod';
import { instant, longText, submissionId } from '../fields.ts';
import { form } from '../form.ts';

export const waitingFor = [
  'nothing',
  'kit',
  'parts',
  'crew',
  'utility-locate',
  'contractor',
  'weather',
  'other',
] as const;

/** When it should be back, and what it waits for. The latest one stands. */
export const expectedReturn = form({
  kind: 'expected-return',
  subjects: ['hydrant', 'strike'],
  writers: ['crew', 'manager'],
  readers: ['crew', 'clerk', 'manager'],
  personal: [],
  body: z.strictObject({
    /** The outage on a hydrant's stream this speaks of; null on a strike's stream, which has only one. */
    outageId: submissionId.nullable(),
    expectedAt: instant.nullable(),
    waitingFor: z.enum(waitingFor),
    note: longText.nullable(),
  }),
});
