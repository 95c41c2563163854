import { createHash } from 'node:crypto';
import type { IncomingMessage } from 'node:http';
import { uploadHeaders } from '../../functions/stores/evidence/byHash.ts';
import type { EvidenceObjects } from '../../functions/stores/evidence/evidenceObjects.ts';
import { readDownloadGrant, readUploadGrant } from '../../functions/stores/evidence/tokenLinks.ts';
import { answer, readBody, type Answer } from './answer.ts';

export interface EvidenceFiles {
  readonly objects: EvidenceObjects;
  readonly secret: string;
  readonly now: () => Date;
  /** Told when an object was written, as S3 tells. */
  readonly arrived?: (key: string) => void;
}

/** Where the signed addresses of the file-backed evidence store lead. */
export const EVIDENCE_PATH = '/local/evidence';

/** Answers a signed address as S3 would: what was signed is held to, byte for byte. */
export async function answerEvidence(
  request: IncomingMessage,
  token: string,
  files: EvidenceFiles,
): Promise<Answer> {
  if (request.method === 'PUT') return put(request, token, files);
  if (request.method === 'GET' || request.method === 'HEAD') return get(token, files);
  return answer(405, { allow: 'GET, HEAD, PUT' });
}

async function put(
  request: IncomingMessage,
  token: string,
  { objects, secret, now, arrived }: EvidenceFiles,
): Promise<Answer> {
  const grant = await readUploadGrant(token, { secret, now });
  if (!grant) return plain(403, 'This upload address is not valid, or has expired.');
  for (const [name, value] of Object.entries(uploadHeaders(grant)))
    if (request.headers[name] !== value)
      return plain(403, `The header ${name} must be sent as it was given.`);
  if (request.headers['content-length'] !== String(grant.bytes))
    return plain(403, `The declared length is ${grant.bytes} bytes.`);
  if ((await objects.head(grant.key)) !== null) return plain(412, 'These bytes have already arrived.');

  // A connection cut half way throws here, before anything is written.
  const body = await readBody(request, grant.bytes);
  if (body.byteLength !== grant.bytes) return plain(400, 'The body ended early.');
  if (createHash('sha256').update(body).digest('hex') !== grant.sha256)
    return plain(400, 'The bytes are not those declared by SHA-256.');
  const { written } = await objects.put(grant.key, body, { contentType: grant.mediaType, ifAbsent: true });
  if (written) arrived?.(grant.key);
  return written ? answer(200) : plain(412, 'These bytes have already arrived.');
}

async function get(token: string, { objects, secret, now }: EvidenceFiles): Promise<Answer> {
  const grant = await readDownloadGrant(token, { secret, now });
  if (!grant) return plain(403, 'This address is not valid, or has expired.');
  const found = await objects.get(grant.key);
  if (!found) return plain(404, 'There is no such document.');
  const ending = grant.filename.split('.').at(-1) ?? '';
  return answer(
    200,
    {
      'content-type': typeOf(ending),
      'content-disposition': `inline; filename="${grant.filename.replaceAll(/[^\w.-]/g, '_')}"`,
      'cache-control': 'private, max-age=300',
    },
    found.bytes,
  );
}

const types: Readonly<Record<string, string>> = {
  jpg: 'image/jpeg',
  png: 'image/png',
  webp: 'image/webp',
  heic: 'image/heic',
  heif: 'image/heif',
  pdf: 'application/pdf',
};
const typeOf = (ending: string): string => types[ending] ?? 'application/octet-stream';

const plain = (status: number, text: string): Answer =>
  answer(status, { 'content-type': 'text/plain; charset=utf-8' }, text);
