import { fileURLToPath } from 'node:url';
import { S3Client } from '@aws-sdk/client-s3';
import { filePublished } from './filePublished.ts';
import { memoryPublished } from './memoryPublished.ts';
import type { PublishedStore } from './published.ts';
import { s3Published } from './s3Published.ts';
import { waits } from '../patience.ts';
import { OperatorFault } from '../../log/wordless.ts';

/**
 * Opens the store of published files named by a URL: `s3://bucket/prefix`, `file:///folder`, or `memory:` for a trial.
 *
 * @throws Error for any other URL.
 */
export function openPublishedStore(url: string): PublishedStore {
  const parsed = new URL(url);
  switch (parsed.protocol) {
    case 's3:':
      return s3Published(new S3Client(waits()), parsed.hostname, parsed.pathname.replace(/^\/+|\/+$/g, ''));
    case 'file:':
      return filePublished(fileURLToPath(parsed));
    case 'memory:':
      return memoryPublished();
    default:
      throw new OperatorFault(`published files cannot be kept at ${url}: use s3:, file: or memory:`);
  }
}
