import * as z from 'zod';
import { newHydrantId } from '../../inventory/hydrant.ts';
import { problemIssue } from '../../problems/fromZod.ts';
import { relations } from '../../problems/relations.ts';
import { dispatchTold, exhibit, instant, longText, position, shortText } from '../fields.ts';
import { form } from '../form.ts';
import { seenParts } from './seenParts.ts';

export const hazards = [
  'traffic',
  'energised-lines',
  'gas',
  'fuel',
  'unstable-vehicle',
  'ice',
  'flooding',
  'undermined-ground',
  'other',
] as const;

/** What the crew found at the hydrant. Everything may be unknown: a crew cannot know yet what it has not seen. */
export const found = z
  .strictObject({
    flow: z.enum(['none', 'leak', 'jet', 'full-bore', 'unknown']),
    /** Height of an upright jet above the opening, inches. */
    jetHeightIn: z.number().gt(0).max(2400).nullable(),
    /** Horizontal distance at which a sideways stream has fallen one foot, inches. */
    throwDistanceIn: z.number().gt(0).max(2400).nullable(),
    openingDiameterIn: z.number().gt(0).max(24).nullable(),
    ...seenParts,
  })
  .check(
    relations(
      ({ flow, jetHeightIn }, ctx) => {
        if (flow === 'none' && jetHeightIn !== null)
          ctx.addIssue(problemIssue('jet-without-flow', ['jetHeightIn']));
      },
      ({ flow, throwDistanceIn }, ctx) => {
        if (flow === 'none' && throwDistanceIn !== null)
          ctx.addIssue(problemIssue('jet-without-flow', ['throwDistanceIn']));
      },
    ),
  );

const isBefore = (one: string | null, other: string | null): boolean =>
  one !== null && other !== null && Date.parse(one) < Date.parse(other);

export const strike = form({
  kind: 'strike',
  subjects: ['strike'],
  writers: ['crew', 'manager'],
  readers: ['crew', 'clerk', 'manager'],
  personal: ['reportedBy.name', 'reportedBy.phone', 'dispatch.takenBy'],
  body: z
    .strictObject({
      hydrantId: newHydrantId.nullable(),
      position: position.nullable(),
      placeDescription: shortText.nullable(),
      reportedBy: z.strictObject({
        source: z.enum(['police', 'fire', 'public', 'crew', 'driver', 'alarm', 'unknown']),
        name: shortText.nullable(),
        phone: z.string().trim().max(40).nullable(),
        reportedAt: instant.nullable(),
      }),
      struckAt: instant.nullable(),
      /** How the time of the strike is known; a bound by calls is not a witness. */
      struckAtBasis: z.enum(['witnessed', 'reported', 'bounded', 'unknown']),
      lastSeenSoundAt: instant.nullable(),
      calledOutAt: instant.nullable(),
      arrivedAt: instant.nullable(),
      waterShutAt: instant.nullable(),
      markedOutOfServiceAt: instant.nullable(),
      dispatch: dispatchTold.nullable(),
      found: found.nullable(),
      hazards: z.array(z.enum(hazards)).max(hazards.length),
      hazardNote: longText.nullable(),
      photos: z.array(exhibit).max(60),
      note: longText.nullable(),
    })
    .check(
      relations(
        ({ hydrantId: named, position: at, placeDescription }, ctx) => {
          if (named === null && at === null && placeDescription === null)
            ctx.addIssue(problemIssue('hydrant-or-place', ['hydrantId']));
        },
        ({ struckAt, struckAtBasis }, ctx) => {
          if (struckAt === null && (struckAtBasis === 'witnessed' || struckAtBasis === 'reported'))
            ctx.addIssue(problemIssue('basis-needs-time', ['struckAt']));
        },
        // Water can be shut before this crew arrives (a passer-by, another crew), so only the strike bounds it.
        ({ struckAt, arrivedAt }, ctx) => {
          if (isBefore(arrivedAt, struckAt)) ctx.addIssue(problemIssue('before-the-strike', ['arrivedAt']));
        },
        ({ struckAt, waterShutAt }, ctx) => {
          if (isBefore(waterShutAt, struckAt))
            ctx.addIssue(problemIssue('before-the-strike', ['waterShutAt']));
        },
      ),
    ),
});
