import { createHash } from 'node:crypto';
import { S3Client } from '@aws-sdk/client-s3';
import { describe, expect, it } from 'vitest';
import { s3Links } from '../../functions/stores/evidence/s3Links.ts';
import {
  readDownloadGrant,
  readUploadGrant,
  tokenLinks,
} from '../../functions/stores/evidence/tokenLinks.ts';

const bytes = Buffer.from('a photo of a hydrant');
const declared = {
  sha256: createHash('sha256').update(bytes).digest('hex'),
  bytes: bytes.length,
  mediaType: 'image/jpeg' as const,
};
const now = () => new Date('2026-03-04T05:06:07Z');

// Query parameters of a presigned request: AWS Signature Version 4, "Authenticating requests: using query parameters".
describe('addresses that S3 checks', () => {
  const client = new S3Client({
    region: 'us-east-1',
    credentials: { accessKeyId: 'AKIDEXAMPLE', secretAccessKey: 'secret' },
  });
  const links = s3Links(client, 'evidence-bucket', 'e/', now);

  it('bind the sender to one object: its key, length, type, hash, and that nothing is there yet', async () => {
    const target = await links.uploadTarget('ab/abc', declared);
    const url = new URL(target.url);
    expect(url.hostname).toBe('evidence-bucket.s3.us-east-1.amazonaws.com');
    expect(url.pathname).toBe('/e/ab/abc');
    const signed = url.searchParams.get('X-Amz-SignedHeaders')?.split(';') ?? [];
    expect(signed).toEqual(
      expect.arrayContaining([
        'content-length',
        'content-type',
        'host',
        'if-none-match',
        'x-amz-checksum-sha256',
      ]),
    );
    expect(url.searchParams.get('X-Amz-Expires')).toBe('900');
    expect(target).toMatchObject({
      method: 'PUT',
      expiresAt: '2026-03-04T05:21:07.000Z',
      headers: {
        'content-type': 'image/jpeg',
        'if-none-match': '*',
        'x-amz-checksum-sha256': createHash('sha256').update(bytes).digest('base64'),
      },
    });
    // A checksum of another algorithm, which the SDK adds by default, would make S3 refuse the browser's request.
    expect([...url.searchParams.keys()].filter((name) => /checksum|crc/i.test(name))).toEqual([]);
  });

  it('are for reading one object, for five minutes, under a plain file name', async () => {
    const url = new URL(await links.downloadUrl('ab/abc', 'pho"to\r\n.jpg'));
    expect(url.searchParams.get('X-Amz-Expires')).toBe('300');
    expect(url.searchParams.get('response-content-disposition')).toBe('inline; filename="pho_to__.jpg"');
  });
});

describe('addresses of the file-backed store', () => {
  const secret = 's'.repeat(43);
  const links = tokenLinks({ base: '/local/evidence', secret, now });
  const tokenOf = (url: string): string => url.slice('/local/evidence/'.length);

  it('carry what they allow and give it back', async () => {
    const target = await links.uploadTarget('ab/abc', declared);
    expect(target.url.startsWith('/local/evidence/')).toBe(true);
    expect(target.expiresAt).toBe('2026-03-04T05:21:07.000Z');
    expect(await readUploadGrant(tokenOf(target.url), { secret, now })).toMatchObject({
      key: 'ab/abc',
      ...declared,
    });
  });

  it('work neither late, nor for the other operation, nor signed by another, nor changed', async () => {
    const put = tokenOf((await links.uploadTarget('ab/abc', declared)).url);
    const get = tokenOf(await links.downloadUrl('ab/abc', 'a.jpg'));
    const later = () => new Date('2026-03-04T06:00:00Z');
    expect(await readUploadGrant(put, { secret, now: later })).toBeNull();
    expect(await readDownloadGrant(get, { secret, now: later })).toBeNull();
    expect(await readUploadGrant(get, { secret, now })).toBeNull();
    expect(await readDownloadGrant(put, { secret, now })).toBeNull();
    expect(await readUploadGrant(put, { secret: 't'.repeat(43), now })).toBeNull();
    const [head, payload = '', mac] = put.split('.');
    const changed = Buffer.from(
      Buffer.from(payload, 'base64url').toString().replace('ab/abc', '../etc'),
    ).toString('base64url');
    expect(await readUploadGrant(`${head}.${changed}.${mac}`, { secret, now })).toBeNull();
    expect(await readDownloadGrant('', { secret, now })).toBeNull();
  });
});
