import * as z from 'zod';
import { newHydrantId } from '../inventory/hydrant.ts';
import { chosenId, instant, submissionId, uuidV7 } from './fields.ts';

/** The version of the forms this code writes. Every version ever released stays readable. */
export const currentSchemaVersion = 1;

/** What a submission is about. Its stream in the ledger follows from it and from nothing else. */
export const subject = z.discriminatedUnion('type', [
  z.strictObject({ type: z.literal('hydrant'), hydrantId: newHydrantId }),
  z.strictObject({ type: z.literal('strike'), strikeId: uuidV7 }),
  z.strictObject({ type: z.literal('claim'), claimId: uuidV7 }),
  z.strictObject({ type: z.literal('utility') }),
]);
export type Subject = z.infer<typeof subject>;
export type SubjectType = Subject['type'];

export type Stream = string;

/** The ledger stream of a subject: `strike:<id>`, `claim:<id>`, `hydrant:<id>` or `utility`. Injective. */
export function streamOf(of: Subject): Stream {
  switch (of.type) {
    case 'hydrant':
      return `hydrant:${of.hydrantId}`;
    case 'strike':
      return `strike:${of.strikeId}`;
    case 'claim':
      return `claim:${of.claimId}`;
    case 'utility':
      return 'utility';
  }
}

type SplitStream =
  | { readonly type: 'strike' | 'hydrant' | 'claim'; readonly id: string }
  | { readonly type: 'utility'; readonly id: '' };

/** The other way round: whose stream it is. @throws Error for a text that `streamOf` does not give */
export function splitStream(stream: Stream): SplitStream {
  if (stream === 'utility') return { type: 'utility', id: '' };
  const [, type, id] = /^(strike|hydrant|claim):([^]+)$/.exec(stream) ?? [];
  if (type === undefined || id === undefined) throw new Error('not a stream of the ledger');
  return { type: type as 'strike' | 'hydrant' | 'claim', id };
}

/** The subject whose stream it is. @throws Error for a text that `streamOf` does not give */
export function subjectOf(stream: Stream): Subject {
  const { type, id } = splitStream(stream);
  switch (type) {
    case 'hydrant':
      return { type, hydrantId: id };
    case 'strike':
      return { type, strikeId: id };
    case 'claim':
      return { type, claimId: id };
    case 'utility':
      return { type };
  }
}

/** Everything on a submission but its kind and body. */
export const envelopeShape = {
  schemaVersion: z.literal(currentSchemaVersion),
  submissionId,
  subject,
  /** The person's time: when the thing happened, or when they wrote it down. */
  occurredAt: instant,
  /** The device's clock as it first sent this; beside the server's it shows a wrong clock. Kept on a resend. */
  sentAt: instant,
  person: z.strictObject({ personId: chosenId }),
  device: z.strictObject({ deviceId: chosenId }),
  /** The units the person typed in; stored quantities are always in the unit their name says. */
  enteredUnits: z.enum(['us', 'metric']),
  /** A trial that must stay out of dispatch, public pages and totals. Managers only. */
  test: z.literal(true).optional(),
} as const;
