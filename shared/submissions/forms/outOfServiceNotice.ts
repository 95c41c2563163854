import * as z from 'zod';
import { problemIssue } from '../../problems/fromZod.ts';
import { relations } from '../../problems/relations.ts';
import { dispatchTold, instant, longText } from '../fields.ts';
import { form } from '../form.ts';

/** Marked, or dispatch told, after the first report: it happens minutes later and by somebody else. */
export const outOfServiceNotice = form({
  kind: 'out-of-service-notice',
  subjects: ['hydrant', 'strike'],
  writers: ['crew', 'manager'],
  readers: ['crew', 'clerk', 'manager'],
  personal: ['dispatch.takenBy'],
  body: z
    .strictObject({
      markedOutOfServiceAt: instant.nullable(),
      dispatch: dispatchTold.nullable(),
      note: longText.nullable(),
    })
    .check(
      relations((value, ctx) => {
        if (value.markedOutOfServiceAt === null && value.dispatch === null)
          ctx.addIssue(problemIssue('marked-or-told', ['dispatch']));
      }),
    ),
});
