import { openObjectStore } from '../objects/open.ts';
import { createEvidenceStore } from './byHash.ts';
import type { EvidenceStore } from './evidence.ts';
import { OperatorFault } from '../../log/wordless.ts';

export interface EvidenceSettings {
  /** `s3://bucket/prefix` or `file:///folder`. */
  readonly evidenceUrl: string;
  /** Where the signed addresses of a file store lead, and what signs them; unused with S3. */
  readonly evidenceLinks: { readonly base: string; readonly secret: string } | null;
}

/** The evidence store at an address, with the signed addresses that belong to it. */
export async function openEvidenceStore(
  { evidenceUrl, evidenceLinks }: EvidenceSettings,
  now: () => Date,
): Promise<EvidenceStore> {
  const objects = await openObjectStore(evidenceUrl);
  const url = new URL(evidenceUrl);
  if (url.protocol === 's3:') {
    const [{ S3Client }, { s3Links }] = await Promise.all([
      import('@aws-sdk/client-s3'),
      import('./s3Links.ts'),
    ]);
    const prefix = decodeURIComponent(url.pathname).replace(/^\/+|\/+$/g, '');
    return createEvidenceStore(
      objects,
      s3Links(new S3Client({}), url.hostname, prefix === '' ? '' : `${prefix}/`, now),
    );
  }
  if (evidenceLinks === null)
    throw new OperatorFault('a file-backed evidence store needs a base and a secret for its links');
  const { tokenLinks } = await import('./tokenLinks.ts');
  return createEvidenceStore(objects, tokenLinks({ ...evidenceLinks, now }));
}
