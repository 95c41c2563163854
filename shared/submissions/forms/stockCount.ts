import * as z from 'zod';
import { stockPlace } from '../../stock/names.ts';
import { eachOnce, MOST_OF_A_PART, part } from '../../stock/rows.ts';
import { chosenId, instant, longText } from '../fields.ts';
import { form } from '../form.ts';

/** What somebody counted on one shelf or truck. Parts that were not counted stay as they were. */
export const stockCount = form({
  kind: 'stock-count',
  subjects: ['utility'],
  writers: ['crew', 'manager'],
  readers: ['crew', 'clerk', 'manager'],
  personal: [],
  body: z.strictObject({
    place: stockPlace,
    countedAt: instant,
    byWorkerId: chosenId,
    parts: eachOnce(z.strictObject({ ...part, counted: z.number().min(0).max(MOST_OF_A_PART) })),
    note: longText.nullable(),
  }),
});
