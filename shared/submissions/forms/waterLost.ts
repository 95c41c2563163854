import * as z from 'zod';
import { problemIssue } from '../../problems/fromZod.ts';
import { waterBases } from '../../water/estimate.ts';
import { waterLostInput } from '../../water/input.ts';
import { flowMethods, limitKinds, waterRecordProblems } from '../../water/record.ts';
import { chosenId, instant, longText } from '../fields.ts';
import { form } from '../form.ts';

/** US gallons. Ten million is two days at the most that any one hydrant could give. */
const gallons = z.number().min(0).max(10_000_000);

/**
 * Water lost at a strike, as a named person puts it: a figure and what it stands on. The latest one stands.
 *
 * `question` is what was seen and known, in the words of `compute water-lost`, which gives the figures again; a record
 * without it is one of before, and holds a figure with a sentence alone.
 */
export const waterLost = form({
  kind: 'water-lost',
  subjects: ['strike'],
  writers: ['crew', 'clerk', 'manager'],
  readers: ['crew', 'clerk', 'manager'],
  personal: [],
  body: z
    .strictObject({
      /** The figure that is claimed: the low one of the estimate, unless somebody chose another and said why. */
      waterLostGal: gallons,
      method: z.enum(['metered', 'flow-times-duration', 'none-lost', 'other']),
      /** What the figure stands on, in sentences that an insurer may read. */
      basis: z.string().trim().min(1).max(3000),
      flowingFrom: instant.nullable(),
      flowingTo: instant.nullable(),
      /** Who stands for the record, its choice of figure included. */
      byWorkerId: chosenId,
      note: longText.nullable(),
      question: waterLostInput.nullish(),
      estimate: z
        .strictObject({
          by: z.enum(waterBases),
          lowGal: z.number().min(0),
          bestGal: z.number().min(0),
          /** Null when nobody can say how long it ran at most. */
          highGal: z.number().min(0).nullable(),
          flowMethod: z.enum(flowMethods).nullable(),
          accuracyFraction: z.number().min(0).nullable(),
          limitedBy: z.enum(limitKinds).nullable(),
          /** Used on the repair and not lost: counted apart, in no figure above. */
          flushingGal: z.number().min(0),
          flowTestGal: z.number().min(0),
        })
        .nullish(),
      /** How a figure that the hydrant cannot have given could be so all the same; needed where it is challenged. */
      challengeAnswer: z.strictObject({ text: longText, byWorkerId: chosenId }).nullish(),
    })
    .superRefine((value, ctx) => {
      const { flowingFrom, flowingTo } = value;
      if (flowingFrom !== null && flowingTo !== null && Date.parse(flowingTo) <= Date.parse(flowingFrom))
        ctx.addIssue(problemIssue('interval-ends-before-start', ['flowingTo']));
      // What is wrong within the question is said there; nothing follows from it.
      if (!value.question || !waterLostInput.safeParse(value.question).success) return;
      for (const { code, path, params } of waterRecordProblems(value))
        ctx.addIssue(problemIssue(code, path.split('.'), params));
    }),
});
