import * as z from 'zod';
import { role } from '../../shared/roles.ts';
import { cents, longText } from '../../shared/submissions/fields.ts';

/** What a job is at, in order. Words: `packet.job.<code>`. */
export const jobSteps = ['queued', 'load', 'papers', 'photos', 'pages', 'sign', 'archive', 'done'] as const;
export type JobStep = (typeof jobSteps)[number];
export type Progress = (what: JobStep, done: number, total: number) => void;

export const packetRequest = z.strictObject({
  mode: z.enum(['preview', 'freeze']),
  /** Less than what is left of the statement, where several parties are liable; left out: all that is left. */
  demandCents: cents.optional(),
  /** From the second revision on: what changed and why. It stands at the front of the packet. */
  changes: longText.optional(),
  /** Answer at once with a job, and build meanwhile. */
  background: z.boolean().optional(),
});
export type PacketRequest = z.output<typeof packetRequest>;

/** A packet that is ordered: enough to build it in another process. */
export const packetOrder = z.strictObject({
  jobId: z.string().min(1).max(64),
  claimId: z.string().min(1).max(64),
  member: z.strictObject({ personId: z.string(), name: z.string(), roles: z.array(role) }),
  request: packetRequest,
});
export type PacketOrder = z.output<typeof packetOrder>;
