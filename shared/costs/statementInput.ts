import * as z from 'zod';
import { problemIssue } from '../problems/fromZod.ts';
import { damageClasses } from '../strikes/damage.ts';
import { cents, chosenId, instant, shortText } from '../submissions/fields.ts';
import { repair } from '../submissions/forms/repair.ts';
import { isTimeZone } from '../utility/settings.ts';
import { hours } from './book/decimals.ts';
import { localDate } from './days.ts';
import { dollarText } from './money.ts';
import { rateBookEdition } from './rateBook.ts';
import { beganAt, type Work } from './work.ts';

const { crew, machines, parts, contractors } = repair.body.shape;

/**
 * A statement asked for on the command line: the rate book as one edition or several, and the work in the same words as
 * the repair form, for one record.
 */
export const statementInput = z.strictObject({
  rateBook: z.union([
    rateBookEdition,
    z
      .array(rateBookEdition)
      .min(1)
      .max(50)
      .superRefine((editions, ctx) => {
        // Lines are grouped and printed by the id, so two editions of one id would be taken for one.
        editions.forEach(({ editionId }, index) => {
          if (editions.findIndex((other) => other.editionId === editionId) < index)
            ctx.addIssue(problemIssue('listed-twice', [index, 'editionId'], { code: editionId }));
        });
      }),
  ]),
  work: z.strictObject({
    /** IANA name, e.g. America/Chicago: it says on which day an hour was worked. */
    timeZone: z.string().superRefine((name, ctx) => {
      if (!isTimeZone(name)) ctx.addIssue(problemIssue('time-zone'));
    }),
    struckAt: instant,
    /** How far the damage went: flat prices and fees hang on it. */
    damage: z.array(z.enum(damageClasses)).max(damageClasses.length).default([]),
    /** Hours of each worker in the fixed week before this job, where the pay rules know weekly overtime. */
    weekHours: z
      .array(z.strictObject({ workerId: chosenId, weekStartsOn: z.iso.date(), hours }))
      .max(200)
      .default([]),
    credits: z
      .array(z.strictObject({ title: shortText, amountCents: cents.min(1) }))
      .max(40)
      .default([]),
    /** Time spent on the claim itself, in the words of the crew's time. */
    claimHandling: crew.default([]),
    crew: crew.default([]),
    machines: machines.default([]),
    parts: parts.default([]),
    contractors: contractors.default([]),
    /** How many flow tests were made after the repair. */
    flowTests: z.int().min(0).max(20).default(0),
    /** The main valve held and nothing flowed: no water was lost. */
    mainValveHeld: z.boolean().default(false),
    waterLost: z
      .strictObject({
        gallons: z.number().min(0).max(100_000_000),
        basis: z.string().trim().min(1).max(3000),
      })
      .nullable()
      .default(null),
  }),
});
export type StatementInput = z.output<typeof statementInput>;

/** The work as the engine takes it. The one record goes by the id `work`. */
export function workFromInput({ work }: StatementInput): Work {
  const {
    timeZone,
    struckAt,
    damage,
    weekHours,
    credits,
    claimHandling,
    flowTests,
    mainValveHeld,
    waterLost,
    ...record
  } = work;
  return {
    timeZone,
    damage,
    weekHours,
    credits: credits.map((credit, index) => ({
      submissionId: `credit-${index + 1}`,
      title: credit.title,
      amountCents: credit.amountCents,
      arithmetic: `-$${dollarText(credit.amountCents)}`,
    })),
    claimHandling:
      claimHandling.length === 0
        ? []
        : [
            {
              submissionId: 'claim-handling',
              issuedOn: localDate(struckAt, timeZone),
              crew: claimHandling,
              machines: [],
              parts: [],
              contractors: [],
            },
          ],
    strike: { date: localDate(struckAt, timeZone), basis: 'struck' },
    records: [
      { ...record, submissionId: 'work', issuedOn: localDate(beganAt(record) ?? struckAt, timeZone) },
    ],
    flowTests: Array.from({ length: flowTests }, (_, index) => ({
      submissionId: `flow-test-${index + 1}`,
      // Each a test of its own: two of one moment would be one.
      testedAt: new Date(Date.parse(struckAt) + (index + 1) * 60_000).toISOString(),
      purpose: 'after-repair' as const,
    })),
    mainValveHeld,
    waterLost,
  };
}
