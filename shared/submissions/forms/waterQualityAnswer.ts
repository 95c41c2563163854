import * as z from 'zod';
import { problemIssue } from '../../problems/fromZod.ts';
import { relations } from '../../problems/relations.ts';
import { chosenId, instant, longText, seen, shortText } from '../fields.ts';
import { form } from '../form.ts';

export const waterQualityDecisions = ['notice', 'no-notice', 'samples-first'] as const;

/**
 * What the person responsible for water quality answered when a main was shut: whether customers are given a notice.
 * The answer is theirs; this records who gave it.
 */
export const waterQualityAnswer = form({
  kind: 'water-quality-answer',
  subjects: ['hydrant', 'strike'],
  writers: ['crew', 'clerk', 'manager'],
  readers: ['crew', 'clerk', 'manager'],
  personal: ['answeredBy'],
  body: z
    .strictObject({
      /** `samples-first` keeps the question open. */
      decision: z.enum(waterQualityDecisions),
      /** Asked for by the form; null only where it was erased, or where the position says who it is. */
      answeredBy: shortText.nullable(),
      position: shortText.nullable(),
      answeredAt: instant,
      because: longText,
      agencyTold: seen,
      noticeGivenAt: instant.nullable(),
      /** Who asked and wrote it down. */
      byWorkerId: chosenId,
      note: longText.nullable(),
    })
    .check(
      relations(({ answeredBy, position }, ctx) => {
        if (answeredBy === null && position === null)
          ctx.addIssue(problemIssue('answer-needs-a-name', ['answeredBy']));
      }),
    ),
});
