import * as z from 'zod';
import { decimal } from '../../costs/money.ts';
import { newHydrantId } from '../../inventory/hydrant.ts';
import { problemIssue } from '../../problems/fromZod.ts';
import { dig, hiddenDamages } from '../../procedure/ground.ts';
import { procedureSteps } from '../../procedure/steps.ts';
import { relations } from '../../problems/relations.ts';
import { stockPlace } from '../../stock/names.ts';
import { damageClasses } from '../../strikes/damage.ts';
import { tightenedJoints } from '../../tightening/tightened.ts';
import { cents, chosenId, exhibit, instant, interval, longText, sha256Hex, shortText } from '../fields.ts';
import { form } from '../form.ts';

/** One person's time. Breaks lie within the work; people are ids, names live in the utility's own roll. */
const labor = z
  .strictObject({
    workerId: chosenId,
    /** The labour class the rate book prices. */
    laborClass: chosenId,
    work: z.array(interval).min(1).max(30),
    breaks: z.array(interval).max(30),
  })
  .check(
    relations((value, ctx) => {
      const sorted = value.work
        .map((w, index) => ({ from: Date.parse(w.from), to: Date.parse(w.to), index }))
        .sort((a, b) => a.from - b.from);
      sorted.forEach((w, i) => {
        const before = sorted[i - 1];
        if (before && w.from < before.to) ctx.addIssue(problemIssue('work-overlaps', ['work', w.index]));
      });
      value.breaks.forEach((pause, index) => {
        const inside = sorted.some((w) => Date.parse(pause.from) >= w.from && Date.parse(pause.to) <= w.to);
        if (!inside) ctx.addIssue(problemIssue('break-outside-work', ['breaks', index]));
      });
    }),
  );

const machine = z.strictObject({
  /** The code the rate book or its equipment schedule prices. */
  machineCode: chosenId,
  description: shortText,
  operatorWorkerId: chosenId.nullable(),
  inUse: z.array(interval).max(30),
  standingBy: z.array(interval).max(30),
  drivenMiles: z.number().min(0).max(2000).nullable(),
});

const part = z
  .strictObject({
    partNumber: chosenId,
    description: shortText,
    quantity: z.number().gt(0).max(10_000),
    /** Better than what was destroyed, and why (23 CFR 645.117(h)(3)); left out: like for like. */
    upgrade: z.boolean().optional(),
    upgradeReason: shortText.nullable().optional(),
    source: z.discriminatedUnion('from', [
      z.strictObject({
        from: z.literal('stock'),
        issueSlip: z.string().trim().max(60).nullable(),
        /** The shelf or truck it was taken from. Left out by records of before, and where nobody said. */
        location: stockPlace.nullable().optional(),
      }),
      z.strictObject({
        from: z.literal('invoice'),
        supplier: shortText,
        invoiceNumber: z.string().trim().min(1).max(60),
        unitPriceCents: cents,
        /** Off the whole line, and sales tax on the whole line, as the invoice has them; left out: none. */
        discountCents: cents.optional(),
        taxCents: cents.optional(),
        invoiceSha256: sha256Hex.nullable(),
      }),
    ]),
  })
  .check(
    relations(({ quantity, source }, ctx) => {
      if (source.from !== 'invoice' || source.discountCents === undefined) return;
      const priceCents = decimal(source.unitPriceCents).times(quantity);
      if (priceCents.lt(source.discountCents))
        ctx.addIssue(
          problemIssue('discount-above-price', ['source', 'discountCents'], {
            discountCents: source.discountCents,
            priceCents: Math.round(priceCents.toNumber()),
          }),
        );
    }),
  );

export const repair = form({
  kind: 'repair',
  subjects: ['strike'],
  writers: ['crew', 'manager'],
  readers: ['crew', 'clerk', 'manager'],
  personal: [],
  body: z
    .strictObject({
      /** Known even when the strike's own report is still in somebody's pocket. */
      hydrantId: newHydrantId.nullable(),
      damage: z.enum(damageClasses).nullable(),
      crew: z.array(labor).max(40),
      machines: z.array(machine).max(40),
      parts: z.array(part).max(200),
      contractors: z
        .array(
          z.strictObject({
            contractor: shortText,
            invoiceNumber: z.string().trim().min(1).max(60),
            invoicedOn: z.iso.date(),
            work: shortText,
            amountCents: cents,
            invoiceSha256: sha256Hex.nullable(),
          }),
        )
        .max(40),
      steps: z
        .array(
          z.strictObject({
            step: z.enum(procedureSteps),
            doneAt: instant,
            byWorkerId: chosenId,
            note: shortText.nullable(),
          }),
        )
        .max(100),
      /** What the look for hidden damage showed. Left out: nobody said. */
      hiddenDamage: z.array(z.enum(hiddenDamages)).max(hiddenDamages.length).optional(),
      /** Whether what was found cannot be mended from the top. */
      needsDig: z.boolean().optional(),
      /** What the dig stands on. */
      dig: dig.optional(),
      /** How the joints were closed. Left out by records of before, and where none was. */
      tightened: tightenedJoints.optional(),
      /** When the hydrant was last closed up; every proof must be later than this. Null while it is still open. */
      reassembledAt: instant.nullable(),
      completedAt: instant.nullable(),
      /** Why work fell outside working hours, where it did. */
      premiumTimeReason: shortText.nullable().optional(),
      photos: z.array(exhibit).max(60),
      note: longText.nullable(),
    })
    .check(
      relations(
        (value, ctx) => {
          if (value.completedAt !== null && value.reassembledAt === null)
            ctx.addIssue(problemIssue('completed-needs-reassembled', ['reassembledAt']));
        },
        ({ hiddenDamage = [] }, ctx) => {
          if (hiddenDamage.includes('nothing') && hiddenDamage.length > 1)
            ctx.addIssue(problemIssue('nothing-and-something', ['hiddenDamage']));
        },
        (value, ctx) => {
          const seenParts = new Set<string>();
          value.crew.forEach((member, index) => {
            if (seenParts.has(member.workerId))
              ctx.addIssue(problemIssue('worker-twice', ['crew', index, 'workerId']));
            seenParts.add(member.workerId);
          });
        },
      ),
    ),
});
