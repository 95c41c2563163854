import { createHash } from 'node:crypto';
import type { BodyOf, Fact } from '../../../shared/submissions/submission.ts';
import { bareStrike } from '../demo/bodies.ts';

/** A picture of one dot. Its bytes are the same in each run, and so is its name in the store. */
const dot = Buffer.from(
  'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==',
  'base64',
);
export const trialPhoto = {
  bytes: new Uint8Array(dot),
  sha256: createHash('sha256').update(dot).digest('hex'),
} as const;

/** A report of no hydrant, marked as a trial: kept like every fact, and shown, told and counted nowhere. */
export function strikeTrial(
  submissionId: string,
  strikeId: string,
  now: Date,
  schemaVersion: Fact<'strike'>['schemaVersion'],
): Fact<'strike'> {
  const at = now.toISOString();
  const body: BodyOf<'strike'> = {
    ...bareStrike,
    placeDescription: `Trial of a deployment ${strikeId.slice(-12)}`,
    reportedBy: { source: 'crew', name: null, phone: null, reportedAt: null },
    struckAt: at,
    struckAtBasis: 'reported',
    photos: [
      {
        sha256: trialPhoto.sha256,
        bytes: trialPhoto.bytes.length,
        mediaType: 'image/png',
        takenAt: null,
        view: 'other',
        caption: null,
      },
    ],
  };
  const subject = { type: 'strike', strikeId } as const;
  return {
    schemaVersion,
    submissionId,
    kind: 'strike',
    subject,
    occurredAt: at,
    sentAt: at,
    person: { personId: 'smoke' },
    device: { deviceId: 'smoke' },
    enteredUnits: 'us',
    test: true,
    body,
  };
}
