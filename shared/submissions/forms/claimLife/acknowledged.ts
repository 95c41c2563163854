import * as z from 'zod';
import { form } from '../../form.ts';
import { day, deskOnly, remarks } from './common.ts';

/** The payer says that the claim has come. Its own number for it is asked for at every call from then on. */
export const acknowledged = form({
  kind: 'claim-acknowledged',
  ...deskOnly,
  personal: ['by', 'reference'],
  body: z.strictObject({
    receivedOn: day,
    by: z.string().trim().max(120).nullable(),
    /** The payer's own claim number. */
    reference: z.string().trim().max(60).nullable(),
    ...remarks,
  }),
});
