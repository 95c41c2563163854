import { createHash } from 'node:crypto';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { S3Client } from '@aws-sdk/client-s3';

interface Stored {
  readonly bytes: Buffer;
  readonly headers: Record<string, string>;
  readonly etag: string;
}

/**
 * As much of S3 over HTTP as the published store uses: PUT with If-Match and If-None-Match, GET, HEAD. Answers follow
 * the Amazon S3 API Reference (PutObject, GetObject): 412 PreconditionFailed, 404 NoSuchKey, ETag the MD5 of the bytes.
 * `fail` makes every request answer 503, as S3 does when it wants to be asked less.
 */
export async function fakeS3(): Promise<{
  client: S3Client;
  stored: ReadonlyMap<string, Stored>;
  fail: (failing: boolean) => void;
  close: () => Promise<void>;
}> {
  const stored = new Map<string, Stored>();
  let failing = false;
  const server = createServer((request, response) => {
    const chunks: Buffer[] = [];
    request.on('data', (chunk: Buffer) => chunks.push(chunk));
    request.on('end', () => {
      const error = (status: number, code: string): void => {
        response.writeHead(status, { 'content-type': 'application/xml' });
        response.end(
          request.method === 'HEAD' ? undefined : `<?xml version="1.0"?><Error><Code>${code}</Code></Error>`,
        );
      };
      const key = decodeURIComponent(new URL(request.url ?? '/', 'http://x.invalid').pathname);
      const there = stored.get(key);
      if (failing) {
        error(503, 'SlowDown');
        return;
      }
      if (request.method === 'PUT') {
        const { 'if-match': match, 'if-none-match': noneMatch } = request.headers;
        if (noneMatch === '*' && there) {
          error(412, 'PreconditionFailed');
          return;
        }
        if (match !== undefined && !there) {
          error(404, 'NoSuchKey');
          return;
        }
        if (match !== undefined && there?.etag !== match) {
          error(412, 'PreconditionFailed');
          return;
        }
        const bytes = Buffer.concat(chunks);
        const etag = `"${createHash('md5').update(bytes).digest('hex')}"`;
        const headers = Object.fromEntries(
          Object.entries(request.headers).filter(
            ([name]) => name.startsWith('x-amz-meta-') || name === 'content-type' || name === 'cache-control',
          ),
        ) as Record<string, string>;
        stored.set(key, { bytes, headers, etag });
        response.writeHead(200, { etag });
        return response.end();
      }
      if (!there) {
        error(404, 'NoSuchKey');
        return;
      }
      response.writeHead(200, { ...there.headers, etag: there.etag, 'content-length': there.bytes.length });
      return response.end(request.method === 'HEAD' ? undefined : there.bytes);
    });
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const client = new S3Client({
    endpoint: `http://127.0.0.1:${(server.address() as AddressInfo).port}`,
    region: 'us-east-1',
    credentials: { accessKeyId: 'test', secretAccessKey: 'test' },
    forcePathStyle: true,
    maxAttempts: 1,
    // The plain body, not one in chunks with a trailing checksum, which this fake does not take apart.
    requestChecksumCalculation: 'WHEN_REQUIRED',
  });
  return {
    client,
    stored,
    fail: (value) => {
      failing = value;
    },
    close: () =>
      new Promise((resolve) => {
        client.destroy();
        server.close(() => {
          resolve();
        });
        server.closeAllConnections();
      }),
  };
}
