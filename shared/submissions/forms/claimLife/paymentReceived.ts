import * as z from 'zod';
import { cents, longText, shortText } from '../../fields.ts';
import { form } from '../../form.ts';
import { problemIssue } from '../../../problems/fromZod.ts';
import { relations } from '../../../problems/relations.ts';
import { day, deskOnly, lineId, remarks, shortReason, someCents } from './common.ts';

/** How the payer marked it. Cashing a cheque marked as full payment can discharge a disputed claim (UCC 3-311). */
export const paymentMarks = ['not-marked', 'part', 'full'] as const;

/** Money that came in on a claim, what it was for, and which lines it cut or refused. */
export const paymentReceived = form({
  kind: 'payment-received',
  ...deskOnly,
  personal: ['from', 'reference'],
  body: z
    .strictObject({
      receivedOn: day,
      amountCents: someCents,
      how: z.enum(['cheque', 'transfer', 'card', 'cash', 'court', 'other']),
      /** Who paid: several may, and together. */
      from: z.string().trim().max(200).nullable(),
      /** Number of the cheque or transfer. */
      reference: z.string().trim().max(60).nullable(),
      marked: z.enum(paymentMarks),
      /** Held: not cashed until somebody has decided what a mark of full payment means. */
      deposited: z.enum(['deposited', 'held', 'returned']),
      /** Who else a joint cheque names as payee; money of theirs is not this claim's. */
      jointPayee: shortText.nullable(),
      /** As far as the payer said which lines it is for; the rest is unallocated. */
      lines: z
        .array(
          z.strictObject({
            /** Null: not said for which line. */
            lineId: lineId.nullable(),
            paidCents: cents,
            /** What the payer took off this line. */
            shortCents: cents,
            reason: shortReason.nullable(),
            words: longText.nullable(),
          }),
        )
        .max(200),
      ...remarks,
    })
    .check(
      relations(({ amountCents, lines }, ctx) => {
        const paid = lines.reduce((sum, { paidCents }) => sum + paidCents, 0);
        if (paid > amountCents)
          ctx.addIssue(problemIssue('lines-above-payment', ['lines'], { paidCents: paid, amountCents }));
        for (const [index, line] of lines.entries())
          if (line.shortCents > 0 && line.reason === null)
            ctx.addIssue(problemIssue('short-without-reason', ['lines', index, 'reason']));
      }),
    ),
});
