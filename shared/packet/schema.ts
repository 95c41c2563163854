import * as z from 'zod';
import { footingProblems } from '../costs/footing.ts';
import { lineKinds, lineUnits, sections, timeClasses } from '../costs/line.ts';
import { waterStates } from '../costs/tariffs.ts';
import { flowTestRules } from '../hydraulics/flowTestSettings.ts';
import { hydrantClasses } from '../hydraulics/hydrantClass.ts';
import { hydrantTypes } from '../inventory/hydrant.ts';
import { proofs } from '../outages/proofs.ts';
import { breachCodes } from '../procedure/holdPoints.ts';
import { procedureSteps } from '../procedure/steps.ts';
import { cents, instant, longText, position, submissionId } from '../submissions/fields.ts';
import { claimOpened } from '../submissions/forms/claimOpened.ts';
import { waitingFor } from '../submissions/forms/expectedReturn.ts';
import { letterKinds } from '../submissions/forms/letterText.ts';
import { damageClasses } from '../strikes/damage.ts';
import { found } from '../submissions/forms/strike.ts';
import { kinds } from '../submissions/kinds.ts';
import { packetTightening, packetWater } from './repairSchema.ts';
import { packetTest } from './testSchema.ts';
import { packetBasis } from './basisSchema.ts';
import { packetPaper, packetPhoto } from './exhibitSchema.ts';
import { MOST_EARLIER_TESTS } from './used.ts';

/**
 * The allow-list of a packet (design decision 12): what may leave for a payer, and nothing else. Every object is
 * strict, so a field that is not written here cannot slip in from a fact. Not in it, on purpose: names, addresses and
 * telephones of drivers, owners, callers, officers and dispatchers; names of workers (they go by id, and by name only
 * where a person answers for an exception or signs the letter); free-text notes of crews and clerks, which are written
 * for colleagues, but for the reason of a correction since which a breach shows no more; other parties of the strike; pay beyond the billed rate.
 */
const text = z.string().min(1).max(400);
const nullable = text.nullable();
const paper = z.strictObject({ kind: z.string().max(40), title: text, edition: nullable, page: nullable });

/** A worker by id and trade; `name` only where somebody answers for an exception. */
const worker = z.strictObject({ workerId: text, trade: nullable });
const answerable = z.strictObject({ workerId: text, trade: nullable, name: nullable });

const doubt = z.strictObject({
  code: z.string().max(60),
  path: z.string().max(4000),
  params: z.record(z.string(), z.union([z.string(), z.number()])),
});

const line = z.strictObject({
  lineId: text,
  section: z.enum(sections),
  kind: z.enum(lineKinds),
  description: z.string().max(4000),
  item: z.string().max(400),
  quantity: text,
  unit: z.enum(lineUnits),
  hoursWorked: nullable,
  time: z
    .strictObject({ as: z.enum(timeClasses), multiplier: text })
    .nullable()
    .default(null),
  days: z.array(z.strictObject({ date: z.iso.date(), seconds: z.number().min(0) })),
  rateUsd: nullable,
  fraction: nullable,
  /** A credit or a rounding down is below zero. */
  amountCents: z.number().int().min(-100_000_000_00).max(100_000_000_00).nullable(),
  editionId: nullable,
  authority: paper.nullable(),
  payAuthority: paper.optional(),
  dateBasis: z.strictObject({
    rule: z.enum(['day-worked', 'strike', 'issue', 'invoice']),
    dates: z.array(z.iso.date()),
  }),
  submissionIds: z.array(submissionId),
  arithmetic: z.string().max(20_000),
});

/** A statement that does not foot is refused wherever it comes from. */
export const statementSchema = z
  .strictObject({
    currency: z.literal('USD'),
    timeZone: text,
    strike: z.strictObject({
      date: z.string().max(10),
      basis: z.enum(['struck', 'reported', 'first-record']),
    }),
    lines: z.array(line).max(2000),
    sections: z.array(z.strictObject({ section: z.enum(sections), subtotalCents: z.number().int() })),
    totalCents: cents,
    complete: z.boolean(),
    water: z.strictObject({
      state: z.enum(waterStates),
      gallons: z.number().min(0).nullable(),
      // Sentences: method, range, limits, times and the choice of the figure.
      basis: z.string().min(1).max(4000).nullable(),
    }),
    problems: z.array(doubt).max(500),
    notes: z.array(doubt).max(500),
  })
  .superRefine((statement, ctx) => {
    for (const { code, path, params } of footingProblems(statement))
      ctx.addIssue({
        code: 'custom',
        message: code,
        path: path.split('.'),
        params: { problem: code, ...params },
      });
  });

/** What happened, for the timeline. Words: `packet.event.<code>`. */
export const eventCodes = [
  'last-seen-sound',
  'struck',
  'reported',
  'called-out',
  'arrived',
  'water-shut',
  'marked',
  'dispatch-told',
  'valve-closed',
  'valve-reopened',
  'expected-return',
  'work-began',
  'step-done',
  'closed-up',
  'completed',
  'flow-tested',
  'proof',
  'mark-removed',
  'returned',
] as const;

const event = z.strictObject({
  at: instant,
  code: z.enum(eventCodes),
  by: worker.nullable(),
  submissionId,
  /** Only what the event's sentence needs. */
  detail: z.strictObject({
    valveId: text.optional(),
    step: z.enum(procedureSteps).optional(),
    proof: z.enum(proofs).optional(),
    result: z.enum(['passed', 'failed', 'deferred']).optional(),
    source: z.enum(['police', 'fire', 'public', 'crew', 'driver', 'alarm', 'unknown']).optional(),
    basis: z.enum(['witnessed', 'reported', 'bounded', 'unknown']).optional(),
    waterShut: z.enum(['yes', 'no', 'unknown']).optional(),
    takesEffect: z.boolean().optional(),
    waitingFor: z.enum(waitingFor).optional(),
    expectedAt: instant.nullable().optional(),
  }),
});

export { photoReasons, type PhotoReason } from './exhibitSchema.ts';

export const packetContentSchema = z.strictObject({
  schemaVersion: z.literal(1),
  locale: z.enum(['en', 'es']),
  units: z.enum(['us', 'metric']),
  timeZone: text,
  issue: z.discriminatedUnion('state', [
    z.strictObject({
      state: z.literal('frozen'),
      revision: z.int().min(1).max(999),
      asOf: instant,
      /** From the second revision on: what changed and why. */
      changes: longText.nullable(),
      /** Records that were not behind the revision before; empty for the first. */
      added: z.array(submissionId).max(5000),
    }),
    z.strictObject({ state: z.literal('preview'), asOf: instant }),
  ]),
  utility: z.strictObject({
    name: text,
    addressLines: z.array(text),
    phone: text,
    email: nullable,
    remitTo: z.array(text).min(1),
    /** Where the payer finds the utility's tax form, e.g. its number or who sends it. */
    taxFormReference: nullable,
    /** The page of the utility's site that checks a packet; null where the site has no address yet. */
    checkUrl: z.url().max(400).nullable().default(null),
    signedBy: z.strictObject({ name: text, trade: nullable }).nullable(),
  }),
  claim: z.strictObject({
    claimNumber: text,
    payerKind: claimOpened.body.shape.payerKind,
    payer: z.strictObject({ name: nullable, address: nullable, attention: nullable, reference: nullable }),
    demandCents: cents,
    /** Total of the statement that other claims of the same strike demand. */
    otherDemandsCents: cents,
    /** Of the utility's own policy, when that is the payer and somebody recorded it. */
    deductibleCents: cents.nullable().default(null),
  }),
  /** What the payer needs to find its insured and the crash; of the claim's own party only. */
  party: z
    .strictObject({
      hitAndRun: z.enum(['yes', 'no', 'unknown']),
      policyNumber: nullable,
      vehicles: z.array(
        z.strictObject({
          kind: z.string().max(40),
          plate: nullable,
          plateRegion: nullable,
          description: nullable,
        }),
      ),
      police: z.strictObject({ agency: nullable, reportNumber: nullable }),
      crashReport: z.strictObject({
        codeSystem: nullable,
        code: nullable,
        text: z.string().max(4000).nullable(),
      }),
    })
    .nullable(),
  hydrant: z.strictObject({
    hydrantId: nullable,
    place: nullable,
    position: z
      .strictObject({ latitudeDeg: position.shape.latitudeDeg, longitudeDeg: position.shape.longitudeDeg })
      .nullable(),
    /** Its neighbours in the inventory, nearest first, for the sketch of its place. */
    near: z
      .array(
        z.strictObject({
          hydrantId: text,
          latitudeDeg: position.shape.latitudeDeg,
          longitudeDeg: position.shape.longitudeDeg,
          distanceFt: z.number().min(0),
        }),
      )
      .max(12),
    type: z.enum(hydrantTypes),
    modelId: nullable,
    installedOn: z.iso.date().nullable(),
    /** Known condition before the strike: what answers "it was broken already". */
    lastInspection: z
      .strictObject({
        inspectedAt: instant,
        result: z.enum(['sound', 'sound-with-findings', 'not-usable']),
        submissionId,
      })
      .nullable(),
    lastFlowTest: z
      .strictObject({ testedAt: instant, hydrantClass: z.enum(hydrantClasses).nullable(), submissionId })
      .nullable(),
  }),
  strike: z.strictObject({
    struckAt: instant.nullable(),
    since: instant,
    repairedAt: instant.nullable(),
    returnedAt: instant.nullable(),
    found: z.array(found).max(20),
    damage: z.array(z.enum(damageClasses)),
    steps: z.array(z.strictObject({ step: z.enum(procedureSteps), doneAt: instant, by: worker })),
    breaches: z.array(
      z.strictObject({
        /** Left out by packets of before there were several: a take-down. */
        code: z.enum(breachCodes).optional(),
        at: instant,
        by: worker,
        missing: z.array(z.enum(procedureSteps)),
        /** The correction since which the record shows it no more; left out while it stands. */
        corrected: z
          .strictObject({
            submissionId,
            at: instant,
            by: worker,
            withdrawn: z.boolean(),
            /** As it was written, with the people of the roll by their ids. */
            reason: longText,
          })
          .optional(),
      }),
    ),
    deferred: z.array(z.strictObject({ proof: z.enum(proofs), reason: z.string().max(200), by: answerable })),
  }),
  /** The letter that it opens with, as it reads; the record of the clerk's text, null where the template served. */
  letter: z.strictObject({
    letter: z.enum(letterKinds),
    submissionId: submissionId.nullable(),
    paragraphs: z.array(z.string().min(1).max(16_000)).max(400),
  }),
  statement: statementSchema,
  timeline: z.array(event).max(2000),
  tightening: packetTightening,
  /** The record that is billed; null where nobody wrote one. */
  waterLost: packetWater,
  /** The utility's own rules of rating, where it has any: with them every figure follows from the readings. */
  flowTestRules,
  /** Of this strike. */
  flowTests: z.array(packetTest).max(50),
  /** Of the same hydrant before the strike, the latest of them. */
  earlierTests: z.array(packetTest).max(MOST_EARLIER_TESTS),
  photos: z.array(packetPhoto).max(2000),
  /** Police report, invoices and other papers, in the order of `documentKinds`. */
  papers: z.array(packetPaper).max(500),
  basis: packetBasis,
  manifest: z.strictObject({
    submissions: z.array(
      z.strictObject({
        submissionId,
        kind: z.enum(kinds as [string, ...string[]]),
        schemaVersion: z.int(),
        occurredAt: instant,
        recordedAt: instant,
        standing: z.enum(['stands', 'corrected', 'withdrawn']),
      }),
    ),
  }),
});
export type PacketContent = z.infer<typeof packetContentSchema>;
