import * as z from 'zod';
import { problemIssue } from '../../problems/fromZod.ts';
import { relations } from '../../problems/relations.ts';
import { QUESTION_BELOW_PSI } from '../../shutMain/pressure.ts';
import { chosenId, instant, longText, seen, valveId } from '../fields.ts';
import { form } from '../form.ts';

/** A main that a closing shuts: who is without water, and what became of the pressure. Everything may be unknown. */
const mainShut = z
  .strictObject({
    /** Connections without water. */
    customers: z.number().int().min(0).max(1_000_000).nullable(),
    /** As typed: a line each, or a stretch of street. */
    addresses: longText.nullable(),
    /** How many lines they are, so that the record still says that somebody listed them when they are erased. */
    addressLines: z.number().int().min(1).max(4000).optional(),
    /** Lowest that anybody saw where people draw water. */
    lowestPsi: z.number().min(0).max(300).nullable(),
    under20Psi: seen,
  })
  .check(
    relations(({ lowestPsi, under20Psi }, ctx) => {
      if (lowestPsi === null || under20Psi === 'unknown') return;
      if (lowestPsi < QUESTION_BELOW_PSI !== (under20Psi === 'yes'))
        ctx.addIssue(problemIssue('pressure-not-as-answered', ['under20Psi']));
    }),
  );

/** A valve turned. Closed valves must be recorded reopened before a return to service takes effect. */
export const valveOperation = form({
  kind: 'valve-operation',
  subjects: ['hydrant', 'strike'],
  writers: ['crew', 'manager'],
  readers: ['crew', 'clerk', 'manager'],
  personal: ['mainShut.addresses'],
  body: z.strictObject({
    valveId,
    valve: z.enum(['isolation', 'main-line', 'other']),
    action: z.enum(['closed', 'reopened']),
    at: instant,
    byWorkerId: chosenId,
    /** On closing: did it stop the water at the hydrant? */
    waterShut: z.enum(['yes', 'no', 'unknown']),
    turns: z.number().min(0).max(500).nullable(),
    /** On closing, where it shuts a main. Left out where it does not, and by records of before. */
    mainShut: mainShut.optional(),
    note: longText.nullable(),
  }),
});
