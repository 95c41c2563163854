import * as z from 'zod';
import { chosenId, exhibit, instant, longText } from '../fields.ts';
import { form } from '../form.ts';
import { seenParts } from './seenParts.ts';

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

/**
 * A look at a hydrant. It proves the state before a strike, and after one it may say more of the damage than the first
 * report could; a fault that takes it out is its own outage.
 */
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
    /** Of a struck hydrant: what this look showed. Left out by a routine inspection and by those of before. */
    found: z.strictObject(seenParts).partial().optional(),
    photos: z.array(exhibit).max(20),
    note: longText.nullable(),
  }),
});
