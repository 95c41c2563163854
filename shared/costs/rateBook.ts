import * as z from 'zod';
import { problemIssue } from '../problems/fromZod.ts';
import { flatTariff, jobFee, overhead, salesTax, totalRounding, waterPrice } from './book/additions.ts';
import { accounts } from './book/accounts.ts';
import { authority } from './book/authority.ts';
import { code, dollars, fraction, title } from './book/decimals.ts';
import { laborRate, payRules } from './book/labor.ts';
import { machineRate, stockPrice } from './book/machines.ts';

export type { AuthorityKind } from './book/authority.ts';

/** The codes by which the lists of an edition are read; none may stand twice in its list. */
const keyed = [
  ['authorities', 'authorityId'],
  ['labor', 'laborClass'],
  ['machines', 'machineCode'],
  ['stock', 'partNumber'],
  ['payRules', 'payRulesId'],
  ['overheads', 'overheadId'],
  ['flatTariffs', 'tariffId'],
  ['jobFees', 'feeId'],
] as const;

/** What names an authority: lists of rates, and single ones. */
const authorised = [
  'labor',
  'machines',
  'stock',
  'payRules',
  'overheads',
  'flatTariffs',
  'jobFees',
  'materialHandling',
  'salesTax',
  'water',
  'flowTest',
  'minimumCharge',
  'totalRounding',
  'claimHandling',
] as const;

/**
 * One dated edition of the utility's rates. Each kind of line chooses its edition by its own date: labour by the day
 * worked, machines and tariffs by the strike, stock by issue; what is laid on the whole (overheads, flat prices, fees,
 * tax, minimum, rounding) by the strike. A later edition never edits an earlier one: where two cover a day, the one in
 * force from the later day counts. What came after the first editions may be left out, so that those stay readable.
 */
export const rateBookEdition = z
  .strictObject({
    editionId: code,
    title,
    effectiveFrom: z.iso.date(),
    /** Last day in force; null while it still is. */
    effectiveTo: z.iso.date().nullable(),
    currency: z.literal('USD'),
    /**
     * What is rounded once, half up, to the cent: each line, or each section's exact sum, whose cents then go to its
     * lines by largest remainder. Either way the lines add up to the total exactly.
     */
    rounding: z.enum(['line-to-cent', 'section-to-cent']),
    authorities: z.array(authority).min(1).max(60),
    labor: z.array(laborRate).max(200),
    payRules: z.array(payRules).max(20).optional(),
    machines: z.array(machineRate).max(1000),
    stock: z.array(stockPrice).max(5000),
    /** Handling added to stock and invoiced parts, as a share; null: none is charged. */
    materialHandling: z.strictObject({ fraction, authorityId: code }).nullable(),
    salesTax: salesTax.nullable().optional(),
    water: z.union([z.strictObject({ per1000GalUsd: dollars, authorityId: code }), waterPrice]).nullable(),
    flowTest: z.strictObject({ eachUsd: dollars, authorityId: code }).nullable(),
    overheads: z.array(overhead).max(20).optional(),
    flatTariffs: z.array(flatTariff).max(40).optional(),
    jobFees: z.array(jobFee).max(40).optional(),
    /** The least that is charged for a strike. */
    minimumCharge: z.strictObject({ usd: dollars, authorityId: code }).nullable().optional(),
    totalRounding: totalRounding.nullable().optional(),
    /** Whether time spent on the claim itself is demanded; only where an ordinance or the like is named. */
    claimHandling: z.strictObject({ authorityId: code }).nullable().optional(),
    /** What the journal for finance books to. */
    accounts: accounts.nullable().optional(),
  })
  .superRefine((edition, ctx) => {
    if (edition.effectiveTo !== null && edition.effectiveTo < edition.effectiveFrom)
      ctx.addIssue(problemIssue('edition-ends-before-start', ['effectiveTo']));
    // A rate found twice would be chosen by its place in the list, which no reader of the book could know.
    const codes = new Map<string, Set<string>>();
    for (const [list, key] of keyed) {
      const known = new Set<string>();
      codes.set(list, known);
      (edition[list] ?? []).forEach((item, index) => {
        const value = (item as unknown as Record<string, string>)[key] ?? '';
        if (known.has(value)) ctx.addIssue(problemIssue('listed-twice', [list, index, key], { code: value }));
        known.add(value);
      });
    }
    const needs = (path: readonly (string | number)[], authorityId: string): void => {
      if (!codes.get('authorities')?.has(authorityId))
        ctx.addIssue(problemIssue('authority-not-listed', [...path, 'authorityId'], { authorityId }));
    };
    for (const name of authorised) {
      const item = edition[name];
      if (Array.isArray(item)) item.forEach((one, index) => needs([name, index], one.authorityId));
      else if (item) needs([name], item.authorityId);
    }
    edition.labor.forEach(({ payRulesId }, index) => {
      if (payRulesId !== undefined && !codes.get('payRules')?.has(payRulesId))
        ctx.addIssue(problemIssue('pay-rules-not-listed', ['labor', index, 'payRulesId'], { payRulesId }));
    });
    // A share may stand only on shares listed before it: no circle, and a reader can work down the list.
    const before = new Set<string>();
    (edition.overheads ?? []).forEach(({ overheadId, on, onOverheads }, index) => {
      if (on.length + onOverheads.length === 0)
        ctx.addIssue(problemIssue('overhead-without-base', ['overheads', index, 'on']));
      onOverheads.forEach((other, at) => {
        if (!before.has(other))
          ctx.addIssue(
            problemIssue('overhead-not-listed-before', ['overheads', index, 'onOverheads', at], {
              overheadId: other,
            }),
          );
      });
      before.add(overheadId);
    });
    const claimAuthority = edition.authorities.find(
      ({ authorityId }) => authorityId === edition.claimHandling?.authorityId,
    );
    if (claimAuthority && !['ordinance', 'resolution', 'tariff'].includes(claimAuthority.kind))
      ctx.addIssue(problemIssue('claim-handling-needs-ordinance', ['claimHandling', 'authorityId']));
  });
export type RateBookEdition = z.infer<typeof rateBookEdition>;
