import * as z from 'zod';
import { longText, shortText } from '../../fields.ts';
import { form } from '../../form.ts';
import { chosenId } from '../../fields.ts';
import { day, deskOnly, remarks, shortReason, someCents } from './common.ts';

/** What the utility gives up, by whom and by which power. */
export const writtenOff = form({
  kind: 'written-off',
  ...deskOnly,
  personal: [],
  body: z.strictObject({
    writtenOffOn: day,
    amountCents: someCents,
    reason: z.enum(['not-collectible', 'no-payer', 'settled', 'cost-of-pursuit', 'limitation', 'other']),
    /** What the payer argued, where the write-off gives way to it: what was lost to which objection. */
    lostTo: shortReason.nullable(),
    decidedByWorkerId: chosenId,
    authority: shortText,
    ...remarks,
  }),
});

export const claimClosed = form({
  kind: 'claim-closed',
  ...deskOnly,
  personal: [],
  body: z.strictObject({
    closedOn: day,
    how: z.enum(['paid', 'settled', 'written-off', 'withdrawn', 'joined']),
    reason: longText,
    ...remarks,
  }),
});

export const claimReopened = form({
  kind: 'claim-reopened',
  ...deskOnly,
  personal: [],
  body: z.strictObject({ reopenedOn: day, reason: longText, ...remarks }),
});
