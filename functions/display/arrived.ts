import * as z from 'zod';
import { MOST_DISPLAYED_BYTES } from '../../shared/evidence/displayCopy.ts';
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

/** The hash of the original that arrived; null for what is none, such as a display copy, or is too large to have a copy. Throws on another event. */
export function originalIn(event: unknown, evidenceUrl: string): string | null {
  const { key, size = 0 } = objectCreated.parse(event).detail.object;
  // An archive that the server made may be too large to be held here, and is no picture.
  if (size > MOST_DISPLAYED_BYTES) return null;
  const { protocol, pathname } = new URL(evidenceUrl);
  const prefix = protocol === 's3:' ? decodeURIComponent(pathname).replace(/^\/+|\/+$/g, '') : '';
  if (prefix === '') return originalOf(key);
  return key.startsWith(`${prefix}/`) ? originalOf(key.slice(prefix.length + 1)) : null;
}
