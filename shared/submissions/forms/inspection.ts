import * as z from 'zod';
import { chosenId, exhibit, instant, longText } from '../fields.ts';
import { form } from '../form.ts';

export const inspectionFindings = [
  'leak',
  'stem-stiff',
  'does-not-drain',
  'cap-missing',
  'thread-damaged',
  'low-to-grade',
  'obstructed',
  'paint-worn',
  'valve-box-buried',
  'other',
] as const;

/** A look at a hydrant. It proves the state before a strike; a fault that takes it out is its own outage. */
export const inspection = form({
  kind: 'inspection',
  subjects: ['hydrant'],
  writers: ['crew', 'manager'],
  readers: ['crew', 'clerk', 'manager'],
  personal: [],
  body: z.strictObject({
    inspectedAt: instant,
    byWorkerId: chosenId,
    result: z.enum(['sound', 'sound-with-findings', 'not-usable']),
    findings: z.array(z.enum(inspectionFindings)).max(inspectionFindings.length),
    photos: z.array(exhibit).max(20),
    note: longText.nullable(),
  }),
});
