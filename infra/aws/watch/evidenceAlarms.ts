import { Stats } from 'aws-cdk-lib/aws-cloudwatch';
import type { Construct } from 'constructs';
import { usualUploadBudget } from '../../../shared/evidence/uploadBudget.ts';
import type { Alarmed, AlarmsProps } from './alarmed.ts';
import { loggedEvent } from './metrics.ts';

/** What is uploaded is locked for years and paid for as long, whoever sent it. */
export function evidenceAlarms(
  scope: Construct,
  { settings, functions }: AlarmsProps,
): Record<string, Alarmed> {
  const { megabytes } = settings.utility.uploadsPerPersonDay ?? usualUploadBudget;
  const page = 'evidence-growing.md';
  const day = 24 * 60;
  return {
    EvidenceGrowing: {
      metric: loggedEvent(scope, functions.evidence, 'uploadAllowed', day).with({ statistic: Stats.SUM }),
      // Half of what one sign-in may send: more than a whole department does on most days, and nobody's claim is held up.
      atLeast: (megabytes * 1e6) / 2,
      periods: 1,
      silence: 'well',
      hurts:
        'Whoever pays the bill: much more is being sent to the evidence store in one day than is usual, and what is there stays locked and is paid for.',
      todo: 'Ask who is sending so many photos. If nobody knows, end that person’s sign-ins; what is there cannot be taken back before its lock ends.',
      page,
    },
    UploadsHeldBack: {
      metric: loggedEvent(scope, functions.evidence, 'uploadHeldBack', day),
      atLeast: 1,
      periods: 1,
      silence: 'well',
      hurts:
        'A crew member or clerk whose photos wait on their device until tomorrow, because one person may send no more in a day; or a sign-in is being misused.',
      todo: 'Ask who it is. If it is honest work, raise "uploadsPerPersonDay" in the settings and deploy; if nobody knows of it, end that person’s sign-ins.',
      page,
    },
  };
}
