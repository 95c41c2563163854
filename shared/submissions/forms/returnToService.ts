import * as z from 'zod';
import { proofs } from '../../outages/proofs.ts';
import { problemIssue } from '../../problems/fromZod.ts';
import { relations } from '../../problems/relations.ts';
import {
  chosenId,
  dispatchTold,
  exhibit,
  instant,
  longText,
  shortText,
  submissionId,
  valveId,
} from '../fields.ts';
import { form } from '../form.ts';

export const returnToService = form({
  kind: 'return-to-service',
  subjects: ['hydrant', 'strike'],
  writers: ['crew', 'manager'],
  readers: ['crew', 'clerk', 'manager'],
  personal: ['dispatch.takenBy'],
  body: z.strictObject({
    returnedAt: instant,
    /**
     * The outages this ends: a strike by its strikeId, another outage by its submission id. A hydrant struck again
     * while out has two, and is in service only when none is open.
     */
    closes: z.array(submissionId).min(1).max(10),
    proofs: z
      .array(
        z
          .strictObject({
            proof: z.enum(proofs),
            result: z.enum(['passed', 'failed', 'deferred']),
            at: instant,
            byWorkerId: chosenId,
            /** Why it was put off, by whom it was allowed: shown wherever the record shows. */
            deferredReason: shortText.nullable(),
            deferredByWorkerId: chosenId.nullable(),
          })
          .check(
            relations(
              ({ result, deferredReason }, ctx) => {
                if (result === 'deferred' && deferredReason === null)
                  ctx.addIssue(problemIssue('deferred-needs-reason', ['deferredReason']));
              },
              ({ result, deferredByWorkerId }, ctx) => {
                if (result === 'deferred' && deferredByWorkerId === null)
                  ctx.addIssue(problemIssue('deferred-needs-name', ['deferredByWorkerId']));
              },
            ),
          ),
      )
      .max(20),
    valvesReopened: z.array(z.strictObject({ valveId, at: instant, byWorkerId: chosenId })).max(40),
    markRemovedAt: instant.nullable(),
    dispatch: dispatchTold.nullable(),
    photos: z.array(exhibit).max(30),
    note: longText.nullable(),
  }),
});
