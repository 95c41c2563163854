import * as z from 'zod';
import { problemIssue } from '../../problems/fromZod.ts';
import { relations } from '../../problems/relations.ts';
import { nameKey, stockPlace } from '../../stock/names.ts';
import { eachOnce, MOST_OF_A_PART, part } from '../../stock/rows.ts';
import { chosenId, instant, longText } from '../fields.ts';
import { form } from '../form.ts';

/** Parts that came in, went from one place to another, or left stock otherwise than by a repair. */
export const stockMove = form({
  kind: 'stock-move',
  subjects: ['utility'],
  writers: ['crew', 'manager'],
  readers: ['crew', 'clerk', 'manager'],
  personal: [],
  body: z
    .strictObject({
      /** Null: they came from outside (a delivery). */
      from: stockPlace.nullable(),
      /** Null: they left stock (sent back, scrapped). */
      to: stockPlace.nullable(),
      movedAt: instant,
      byWorkerId: chosenId,
      parts: eachOnce(z.strictObject({ ...part, quantity: z.number().gt(0).max(MOST_OF_A_PART) })),
      /** The delivery note or order it goes with. */
      reference: z.string().trim().min(1).max(60).nullable(),
      note: longText.nullable(),
    })
    .check(
      relations(({ from, to }, ctx) => {
        if (from === null && to === null) ctx.addIssue(problemIssue('move-needs-place', ['to']));
        if (from !== null && to !== null && nameKey(from) === nameKey(to))
          ctx.addIssue(problemIssue('move-same-place', ['to']));
      }),
    ),
});
