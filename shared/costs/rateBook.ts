import * as z from 'zod';
import { problemIssue } from '../problems/fromZod.ts';

/**
 * A rate is a decimal number of dollars kept as text, so that no digit is lost on the way: "38.4150".
 * Up to six decimals, because published schedules and ordinances print up to four and fringe steps six.
 */
export const dollars = z.string().regex(/^\d{1,7}(\.\d{1,6})?$/);
/** A share such as 0.2848, as text for the same reason. */
export const fraction = z.string().regex(/^\d{1,2}(\.\d{1,6})?$/);

const code = z.string().trim().min(1).max(64);
const title = z.string().trim().min(1).max(200);

/** Who says so: the paper an adjuster can ask for. */
export const authority = z.strictObject({
  authorityId: code,
  kind: z.enum([
    'resolution',
    'ordinance',
    'tariff',
    'schedule',
    'labor-agreement',
    'contract',
    'price-list',
    'other',
  ]),
  title,
  edition: z.string().trim().max(120).nullable(),
  page: z.string().trim().max(40).nullable(),
});

/** The codes by which the lists of an edition are read; none may stand twice in its list. */
const keyed = [
  ['authorities', 'authorityId'],
  ['labor', 'laborClass'],
  ['machines', 'machineCode'],
  ['stock', 'partNumber'],
] as const;

const priced = ['labor', 'machines', 'stock'] as const;
const flat = ['materialHandling', 'water', 'flowTest'] as const;

/**
 * One dated edition of the utility's rates. Each kind of line chooses its edition by its own date: labour by the day
 * worked, machines and tariffs by the strike, stock by issue. A later edition never edits an earlier one: where two
 * cover a day, the one in force from the later day counts.
 */
export const rateBookEdition = z
  .strictObject({
    editionId: code,
    title,
    effectiveFrom: z.iso.date(),
    /** Last day in force; null while it still is. */
    effectiveTo: z.iso.date().nullable(),
    currency: z.literal('USD'),
    /** Each line is rounded once, half up, to the cent; the total is the sum of the rounded lines. */
    rounding: z.literal('line-to-cent'),
    authorities: z.array(authority).min(1).max(60),
    labor: z
      .array(
        z.strictObject({
          laborClass: code,
          title,
          hourlyUsd: dollars,
          /** Fringe as a share of the hourly rate; "0" where the rate already holds it. */
          fringeFraction: fraction,
          authorityId: code,
        }),
      )
      .max(200),
    machines: z
      .array(
        z.strictObject({
          machineCode: code,
          title,
          unit: z.enum(['hour', 'mile']),
          rateUsd: dollars,
          /** Rate while standing by, per hour; null: standing by is not billed. */
          standbyUsd: dollars.nullable(),
          authorityId: code,
        }),
      )
      .max(1000),
    stock: z
      .array(z.strictObject({ partNumber: code, title, unitPriceUsd: dollars, authorityId: code }))
      .max(5000),
    /** Handling added to stock and invoiced parts, as a share; null: none is charged. */
    materialHandling: z.strictObject({ fraction, authorityId: code }).nullable(),
    water: z.strictObject({ per1000GalUsd: dollars, authorityId: code }).nullable(),
    flowTest: z.strictObject({ eachUsd: dollars, authorityId: code }).nullable(),
  })
  .superRefine((edition, ctx) => {
    if (edition.effectiveTo !== null && edition.effectiveTo < edition.effectiveFrom)
      ctx.addIssue(problemIssue('edition-ends-before-start', ['effectiveTo']));
    // A rate found twice would be chosen by its place in the list, which no reader of the book could know.
    for (const [list, key] of keyed) {
      const known = new Set<string>();
      edition[list].forEach((item, index) => {
        const value = (item as unknown as Record<string, string>)[key] ?? '';
        if (known.has(value)) ctx.addIssue(problemIssue('listed-twice', [list, index, key], { code: value }));
        known.add(value);
      });
    }
    const authorities = new Set(edition.authorities.map(({ authorityId }) => authorityId));
    const needs = (path: readonly (string | number)[], authorityId: string): void => {
      if (!authorities.has(authorityId))
        ctx.addIssue(problemIssue('authority-not-listed', [...path, 'authorityId'], { authorityId }));
    };
    for (const list of priced)
      edition[list].forEach(({ authorityId }, index) => needs([list, index], authorityId));
    for (const name of flat) {
      const item = edition[name];
      if (item !== null) needs([name], item.authorityId);
    }
  });
export type RateBookEdition = z.infer<typeof rateBookEdition>;
export type AuthorityKind = z.infer<typeof authority>['kind'];
