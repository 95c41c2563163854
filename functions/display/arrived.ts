import * as z from 'zod';
import { originalOf } from '../stores/evidence/byHash.ts';

/**
 * "Object Created" as S3 tells it through EventBridge (Amazon S3 user guide, "EventBridge event message structure"). Of
 * all that it brings the key is read; there it is not URL-encoded, as it is in S3's own notifications.
 */
const objectCreated = z.object({
  source: z.literal('aws.s3'),
  'detail-type': z.literal('Object Created'),
  detail: z.object({ object: z.object({ key: z.string(), size: z.number().optional() }) }),
});

/** What a local runner hands the handler for the same. */
export const arrivalOf = (key: string): z.input<typeof objectCreated> => ({
  source: 'aws.s3',
  'detail-type': 'Object Created',
  detail: { object: { key } },
});

/** An original, and how long it is where the event says so. */
export interface Arrived {
  readonly sha256: string;
  readonly bytes: number | null;
}

/** The original that arrived; null for what is none, such as a display copy. Throws on another event. */
export function originalIn(event: unknown, evidenceUrl: string): Arrived | null {
  const { key, size } = objectCreated.parse(event).detail.object;
  const { protocol, pathname } = new URL(evidenceUrl);
  const prefix = protocol === 's3:' ? decodeURIComponent(pathname).replace(/^\/+|\/+$/g, '') : '';
  const within = prefix === '' ? key : key.startsWith(`${prefix}/`) ? key.slice(prefix.length + 1) : null;
  const sha256 = within === null ? null : originalOf(within);
  return sha256 === null ? null : { sha256, bytes: size ?? null };
}
