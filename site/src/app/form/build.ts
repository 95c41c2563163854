import { currentSchemaVersion, type Subject } from '../../../../shared/submissions/envelope.ts';
import { correctionKind, forms, type FactKind } from '../../../../shared/submissions/kinds.ts';
import type { System } from '../../../../shared/units/units.ts';
import type { Draft } from '../core/drafts.ts';
import type { Entry } from '../outbox/database.ts';
import type { FormSpec } from './spec.ts';

export interface Sender {
  readonly personId: string;
  readonly deviceId: string;
  readonly units: System;
  readonly now: Date;
}

/** The submission as it will be stored and sent. `body` has been read and checked. */
export function buildSubmission(
  spec: FormSpec,
  draft: Draft,
  body: Record<string, unknown> | null,
  { personId, deviceId, units, now }: Sender,
): Entry['submission'] {
  const { corrects } = draft;
  const happened = body === null ? null : spec.occurredAt(body);
  return {
    schemaVersion: currentSchemaVersion,
    submissionId: draft.submissionId,
    subject: draft.subject,
    occurredAt: happened ?? corrects?.occurredAt ?? draft.openedAt,
    sentAt: now.toISOString(),
    person: { personId },
    device: { deviceId },
    enteredUnits: units,
    ...(corrects
      ? {
          kind: correctionKind,
          body: {
            targetId: corrects.targetId,
            targetKind: draft.kind,
            reason: corrects.reason.trim(),
            replacement: body,
          },
        }
      : { kind: draft.kind, body: body ?? {} }),
  };
}

export interface About {
  readonly hydrantId: string | null;
  readonly strikeId: string | null;
  readonly claimId: string | null;
}

/**
 * What a new form will be about: the strike or claim in hand, else the hydrant, else a new strike or claim of its own
 * (a repair may be typed before its strike). Null when a hydrant must be found first.
 */
export function subjectFor(
  kind: FactKind,
  { hydrantId, strikeId, claimId }: About,
  newId: () => string,
): Subject | null {
  const { subjects } = forms[kind];
  const may = (type: Subject['type']): boolean => (subjects as readonly string[]).includes(type);
  if (may('claim')) return { type: 'claim', claimId: claimId ?? newId() };
  if (may('strike') && strikeId !== null) return { type: 'strike', strikeId };
  if (may('hydrant')) return hydrantId === null ? null : { type: 'hydrant', hydrantId };
  return may('strike') ? { type: 'strike', strikeId: newId() } : { type: 'utility' };
}
