import { waterQualityDecisions } from '../../../../../shared/submissions/forms/waterQualityAnswer.ts';
import { localMinute } from '../localTime.ts';
import { firstInstant, type FormSpec } from '../spec.ts';
import { answered, note } from './parts.ts';

/** Who answered whether a shut main calls for a notice to customers, and what. */
export const waterQualityAnswerSpec: FormSpec = {
  kind: 'water-quality-answer',
  nullable: [],
  nodes: [
    {
      type: 'choice',
      name: 'decision',
      list: 'waterQuality',
      choices: waterQualityDecisions,
      required: true,
    },
    { type: 'text', name: 'answeredBy', required: true },
    { type: 'text', name: 'position' },
    { type: 'instant', name: 'answeredAt', required: true },
    { type: 'text', name: 'because', lines: 3, required: true },
    {
      type: 'when',
      test: answered('decision', 'notice'),
      nodes: [{ type: 'instant', name: 'noticeGivenAt' }],
    },
    {
      type: 'choice',
      name: 'agencyTold',
      list: 'seen',
      choices: ['yes', 'no', 'unknown'],
      whenBlank: 'unknown',
    },
    { type: 'person', name: 'byWorkerId', words: 'field.byWorkerId', required: true },
    note,
  ],
  blank: ({ personId, now, zone }) => ({ answeredAt: localMinute(now, zone), byWorkerId: personId }),
  occurredAt: firstInstant('answeredAt'),
};
