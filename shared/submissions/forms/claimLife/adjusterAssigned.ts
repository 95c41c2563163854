import * as z from 'zod';
import { form } from '../../form.ts';
import { day, deskOnly, remarks } from './common.ts';

/** Who handles the claim at the payer from that day on. The last one recorded is who is written to. */
export const adjusterAssigned = form({
  kind: 'adjuster-assigned',
  ...deskOnly,
  personal: ['adjuster.name', 'adjuster.email', 'adjuster.phone', 'adjuster.reference'],
  body: z.strictObject({
    assignedOn: day,
    company: z.string().trim().max(120).nullable(),
    adjuster: z.strictObject({
      name: z.string().trim().max(120).nullable(),
      email: z.string().trim().max(120).nullable(),
      phone: z.string().trim().max(40).nullable(),
      reference: z.string().trim().max(60).nullable(),
    }),
    ...remarks,
  }),
});
