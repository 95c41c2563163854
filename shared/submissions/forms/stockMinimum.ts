import * as z from 'zod';
import { stockPlace } from '../../stock/names.ts';
import { eachOnce, MOST_OF_A_PART, part } from '../../stock/rows.ts';
import { longText } from '../fields.ts';
import { form } from '../form.ts';

/** The least of each part that should be at a place. The latest figure of a part and place stands; 0: none is kept there. */
export const stockMinimum = form({
  kind: 'stock-minimum',
  subjects: ['utility'],
  writers: ['manager'],
  readers: ['crew', 'clerk', 'manager'],
  personal: [],
  body: z.strictObject({
    place: stockPlace,
    parts: eachOnce(z.strictObject({ ...part, minimum: z.number().min(0).max(MOST_OF_A_PART) })),
    note: longText.nullable(),
  }),
});
