import * as z from 'zod';
import { longText, shortText } from '../fields.ts';
import { form } from '../form.ts';

const person = z.strictObject({
  name: shortText.nullable(),
  address: z.string().trim().max(300).nullable(),
  phone: z.string().trim().max(40).nullable(),
});

/**
 * What led to the strike, as police or the crew put it down: the utility's own short list, because states code the
 * contributing circumstances each in their way (MMUCC). Nobody's guilt is decided by it.
 */
export const strikeCauses = [
  'left-the-road',
  'turning-or-reversing',
  'avoiding-another',
  'pushed-by-another',
  'road-or-weather',
  'driver-unwell',
  'vehicle-failure',
  'work-nearby',
  'deliberate',
  'other',
  'unknown',
] as const;
export type StrikeCause = (typeof strikeCauses)[number];

/**
 * Who may be liable, kept apart from the strike because other people may see a strike. A party's id, which a claim
 * names, is the id of the submission that first recorded it.
 */
export const party = form({
  kind: 'party',
  subjects: ['strike'],
  writers: ['crew', 'clerk', 'manager'],
  readers: ['clerk', 'manager'],
  personal: [
    'vehicles.*.plate',
    'vehicles.*.vin',
    'driver',
    'owner',
    'insurer.policyNumber',
    'insurer.claimNumber',
    'insurer.adjuster',
    'police.officer',
    'note',
  ],
  body: z.strictObject({
    hitAndRun: z.enum(['yes', 'no', 'unknown']),
    cause: z.enum(strikeCauses).optional(),
    vehicles: z
      .array(
        z.strictObject({
          kind: z.enum([
            'car',
            'light-truck',
            'heavy-truck',
            'bus',
            'motorcycle',
            'machine',
            'other',
            'unknown',
          ]),
          plate: z.string().trim().max(20).nullable(),
          plateRegion: z.string().trim().max(40).nullable(),
          /** ISO 3779: 17 characters without I, O and Q; older vehicles have other lengths, so length is not forced. */
          vin: z
            .string()
            .trim()
            .regex(/^[A-HJ-NPR-Z0-9]{5,17}$/i)
            .nullable(),
          description: shortText.nullable(),
        }),
      )
      .max(10),
    driver: person.nullable(),
    owner: person.nullable(),
    insurer: z
      .strictObject({
        company: shortText.nullable(),
        policyNumber: z.string().trim().max(60).nullable(),
        claimNumber: z.string().trim().max(60).nullable(),
        adjuster: z.string().trim().max(120).nullable(),
      })
      .nullable(),
    police: z
      .strictObject({
        agency: shortText.nullable(),
        reportNumber: z.string().trim().max(60).nullable(),
        officer: z.string().trim().max(80).nullable(),
      })
      .nullable(),
    /** Source code system, code and text, because states merge or lack the hydrant code. */
    crashReport: z
      .strictObject({
        codeSystem: shortText.nullable(),
        code: z.string().trim().max(20).nullable(),
        text: longText.nullable(),
      })
      .nullable(),
    note: longText.nullable(),
  }),
});
