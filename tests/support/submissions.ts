import type { Subject } from '../../shared/submissions/envelope.ts';
import { correctionKind, type FactKind } from '../../shared/submissions/kinds.ts';
import { ofTheFuture } from '../../shared/submissions/futures.ts';
import type { Recorded } from '../../shared/submissions/recorded.ts';
import type { BodyOf, Correction, Envelope, Fact, Submission } from '../../shared/submissions/submission.ts';
import { sampleBodies } from './sampleBodies.ts';

/** A valid UUIDv7 that says its number; larger numbers sort later. */
export function uuid(number: number): string {
  return `019c0000-0000-7000-8000-${number.toString(16).padStart(12, '0')}`;
}

export const onStrike = (number: number): Subject => ({ type: 'strike', strikeId: uuid(number) });
export const onClaim = (number: number): Subject => ({ type: 'claim', claimId: uuid(number) });
export const onHydrant = (hydrantId: string): Subject => ({ type: 'hydrant', hydrantId });
export const onUtility: Subject = { type: 'utility' };

/** An instant of one invented night: minutes after 02:00 UTC. */
export function at(minutes: number): string {
  return new Date(Date.UTC(2026, 2, 4, 2, 0, 0) + minutes * 60_000).toISOString();
}

function envelope(number: number, subject: Subject): Envelope {
  return {
    schemaVersion: 1,
    submissionId: uuid(number),
    subject,
    occurredAt: at(number),
    sentAt: at(number + 1),
    person: { personId: 'w-7' },
    device: { deviceId: 'tablet-3' },
    enteredUnits: 'us',
  };
}

/** A valid submission of the kind, with `body` over the sample's fields and `more` over the envelope's. */
export function fact<K extends FactKind>(
  kind: K,
  number: number,
  subject: Subject,
  body: Partial<BodyOf<K>> = {},
  more: Partial<Envelope> = {},
): Fact<K> {
  const whole = { ...(sampleBodies[kind] as BodyOf<K>), ...body };
  const bare = { ...envelope(number, subject), ...more };
  // Sent after the last thing that it tells, as people do; what is planned or expected lies beyond that.
  const toCome = kind in ofTheFuture;
  const sentAt = more.sentAt ?? (toCome ? bare.sentAt : lastTimeIn(bare, whole));
  return { ...bare, sentAt, kind, body: whole };
}

/** A correction of `target` (a fact, or the latest correction of it); `replacement` null withdraws. */
export function correction(
  number: number,
  target: Submission,
  replacement: Record<string, unknown> | null,
  more: Partial<Envelope> = {},
): Correction {
  const targetKind = target.kind === correctionKind ? target.body.targetKind : target.kind;
  const bare = { ...envelope(number, target.subject), ...more };
  const toCome = targetKind in ofTheFuture;
  const sentAt = more.sentAt ?? (toCome ? bare.sentAt : lastTimeIn(bare, replacement));
  return {
    ...bare,
    sentAt,
    kind: correctionKind,
    body: { targetId: target.submissionId, targetKind, reason: 'Typed in the dark', replacement },
  };
}

/** As the ledger would hold it. */
/** The last time that a submission tells of, or its sending: it cannot have been recorded before. */
function lastTimeIn({ occurredAt, sentAt }: Envelope, body: unknown): string {
  const text = JSON.stringify([occurredAt, sentAt, body]);
  const times = text.matchAll(/"(\d{4}-\d{2}-\d{2}T[\d:.]+Z)"/g);
  // The day on which something happened, by the field's name; the evening of UTC is that day in all of America.
  const days = text.matchAll(
    /"(?:sent|received|assigned|asked|given|said|answered|offered|reversed|paid|denied|referred|ordered|agreed|writtenOff|closed|reopened|invoiced)On":"(\d{4}-\d{2}-\d{2})"/g,
  );
  return [...times, ...[...days].map(([whole, day]) => [whole, `${day}T20:00:00.000Z`])]
    .map(([, at = '']) => at)
    .reduce((last, at) => (Date.parse(at) > Date.parse(last) ? at : last), sentAt);
}

export function recorded(
  submission: Submission,
  recordedAt = lastTimeIn(submission, submission.body),
): Recorded {
  return { submission, recordedAt, deliveredBy: null, erased: false };
}
