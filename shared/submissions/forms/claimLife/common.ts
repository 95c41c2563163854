import * as z from 'zod';
import { cents, exhibit, longText, shortText } from '../../fields.ts';
import type { Form } from '../../form.ts';

/** What the events of a claim have in common: who may write and read them, and the papers that prove them. */
export const deskOnly = {
  subjects: ['claim'],
  writers: ['clerk', 'manager'],
  readers: ['clerk', 'manager'],
} as const satisfies Partial<Form<string, z.ZodType>>;

/** The letter, email or picture of the cheque, declared by its hash. */
export const exhibits = z.array(exhibit).max(20);

/** Free words and papers that every event may carry. */
export const remarks = { note: longText.nullable(), exhibits };

/** A day in the utility's time zone, `YYYY-MM-DD`. */
export const day = z.iso.date();

/** How a letter or a message went, either way. */
export const channels = ['email', 'post', 'portal', 'by-hand', 'fax', 'phone'] as const;
export const channel = z.enum(channels);

/**
 * Why less was paid than asked, or a line was not accepted. The grounds are those that the published cases and
 * adjusters' handbooks name; `other` takes the payer's own words.
 */
export const shortReasons = [
  'depreciation',
  'betterment',
  'overhead',
  'hours',
  'rate',
  'crew-size',
  'equipment',
  'materials',
  'water',
  'duplicate',
  'no-evidence',
  'liability',
  'policy-limit',
  'other',
] as const;
export type ShortReason = (typeof shortReasons)[number];
export const shortReason = z.enum(shortReasons);

/** A line of the statement of costs, by the id that it has in the packet's revision. */
export const lineId = shortText;

/** More than nothing, whole cents. */
export const someCents = cents.min(1);
