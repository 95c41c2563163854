import * as z from 'zod';
import { problemIssue } from '../../problems/fromZod.ts';
import { relations } from '../../problems/relations.ts';
import { cents, longText, shortText } from '../fields.ts';
import { form } from '../form.ts';

/** Why nothing is taken for betterment, 23 CFR 645.117(h)(3). */
export const noBettermentBecause = [
  'none-billed',
  'required',
  'equivalent',
  'next-size-made',
  'law-or-practice',
] as const;

/**
 * What an adjuster would take off for age, betterment and salvage, worked out beforehand on the destroyed component.
 * Stored, and off the demand: a packet tells of it only where it is applied, and then says by what authority.
 */
export const counterCalculation = form({
  kind: 'counter-calculation',
  subjects: ['strike'],
  writers: ['clerk', 'manager'],
  readers: ['clerk', 'manager'],
  personal: [],
  body: z
    .strictObject({
      component: shortText,
      installedOn: z.iso.date(),
      /** The life expected of such a component, years, and who says so. */
      serviceLifeYears: z.number().min(1).max(200),
      serviceLifeSource: shortText,
      originalCostCents: cents.min(1),
      salvageCents: cents,
      bettermentCents: cents,
      noBetterment: z.enum(noBettermentBecause).nullable(),
      /** Null: not applied. The authority or the person that makes it so. */
      applied: z.strictObject({ because: longText }).nullable(),
      note: longText.nullable(),
    })
    .check(
      relations(({ bettermentCents, noBetterment }, ctx) => {
        if (bettermentCents > 0 && noBetterment !== null)
          ctx.addIssue(problemIssue('betterment-and-none', ['noBetterment']));
      }),
    ),
});
