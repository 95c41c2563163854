import * as z from 'zod';
import { rateBookEdition } from '../costs/rateBook.ts';
import { damageClasses } from '../strikes/damage.ts';
import { hours } from '../costs/book/decimals.ts';
import { chosenId, shortText } from '../submissions/fields.ts';
import { repair } from '../submissions/forms/repair.ts';

const { crew, machines, parts, contractors } = repair.body.shape;
const id = z.string().min(1).max(200);
/** The day of a strike that nobody dated is an empty text. */
const day = z.union([z.iso.date(), z.literal('')]);

const record = z.strictObject({
  submissionId: id,
  issuedOn: day,
  crew,
  machines,
  parts,
  contractors,
});

/**
 * What a statement of costs is computed from, so that a reader can compute it again from the packet alone:
 * `statementOf(basis.work, basis.editions)` gives `statement`, to the cent and to the word.
 */
export const packetBasis = z.strictObject({
  work: z.strictObject({
    timeZone: z.string().min(1).max(60),
    damage: z.array(z.enum(damageClasses)).max(damageClasses.length),
    weekHours: z.array(z.strictObject({ workerId: chosenId, weekStartsOn: z.iso.date(), hours })).max(2000),
    credits: z
      .array(
        z.strictObject({
          submissionId: id,
          title: shortText,
          amountCents: z.int().min(1),
          arithmetic: z.string().max(1000),
        }),
      )
      .max(200),
    claimHandling: z.array(record).max(500),
    strike: z.strictObject({ date: day, basis: z.enum(['struck', 'reported', 'first-record']) }),
    records: z.array(record).max(500),
    flowTests: z
      .array(
        z.strictObject({
          submissionId: id,
          testedAt: z.iso.datetime(),
          purpose: z.enum(['after-repair', 'routine', 'request', 'other']),
        }),
      )
      .max(100),
    mainValveHeld: z.boolean(),
    waterLost: z
      .strictObject({
        gallons: z.number().min(0),
        basis: z.string().min(1).max(4000),
        submissionId: id.optional(),
      })
      .nullable(),
  }),
  /** Those that the statement used, with the entries that it used, and no other rate. */
  editions: z.array(rateBookEdition).max(50),
});
export type PacketBasis = z.infer<typeof packetBasis>;
