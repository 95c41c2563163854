import * as z from 'zod';
import { chosenId, instant, longText, valveId } from '../fields.ts';
import { form } from '../form.ts';

/** A valve turned. Closed valves must be recorded reopened before a return to service takes effect. */
export const valveOperation = form({
  kind: 'valve-operation',
  subjects: ['hydrant', 'strike'],
  writers: ['crew', 'manager'],
  readers: ['crew', 'clerk', 'manager'],
  personal: [],
  body: z.strictObject({
    valveId,
    valve: z.enum(['isolation', 'main-line', 'other']),
    action: z.enum(['closed', 'reopened']),
    at: instant,
    byWorkerId: chosenId,
    /** On closing: did it stop the water at the hydrant? */
    waterShut: z.enum(['yes', 'no', 'unknown']),
    turns: z.number().min(0).max(500).nullable(),
    note: longText.nullable(),
  }),
});
