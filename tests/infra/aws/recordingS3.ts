import { createHash } from 'node:crypto';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';

export interface RecordingS3 {
  readonly endpoint: string;
  /** `s3:PutObject bucket/key` and the like, since the last call of this. Listing has the prefix for a key. */
  take(): Set<string>;
  close(): Promise<void>;
}

/** One request as S3 bills it. A listing is a request of the dearer kind, like a PUT. */
export interface ObjectRequest {
  readonly kind: 'put' | 'get' | 'list';
  readonly bucket: string;
  readonly bytes: number;
}

const rightOf: Record<string, string> = {
  PUT: 's3:PutObject',
  GET: 's3:GetObject',
  HEAD: 's3:GetObject',
  DELETE: 's3:DeleteObject',
};

/**
 * As much of S3 over HTTP, with path-style addresses, as handlers use: PutObject with its conditions, GetObject,
 * HeadObject, ListObjectsV2 (Amazon S3 API Reference). It keeps which right every request would have needed; the
 * rights are those of the Service Authorization Reference (HeadObject needs s3:GetObject). `heard` is told each request.
 */
export async function recordingS3(heard?: (request: ObjectRequest) => void): Promise<RecordingS3> {
  let asked = new Set<string>();
  const objects = new Map<string, { bytes: Buffer; headers: Record<string, string> }>();
  const server = createServer((request, response) => {
    const chunks: Buffer[] = [];
    request.on('data', (chunk: Buffer) => chunks.push(chunk));
    request.on('end', () => {
      const url = new URL(request.url ?? '/', 'http://x.invalid');
      const method = request.method ?? '';
      const path = decodeURIComponent(url.pathname).slice(1);
      const [bucket = ''] = path.split('/');
      const fail = (status: number, code: string) => {
        response.writeHead(status, { 'content-type': 'application/xml' });
        response.end(method === 'HEAD' ? undefined : `<Error><Code>${code}</Code></Error>`);
      };
      if (url.searchParams.has('list-type')) {
        heard?.({ kind: 'list', bucket, bytes: 0 });
        const prefix = url.searchParams.get('prefix') ?? '';
        asked.add(`s3:ListBucket ${bucket}/${prefix}`);
        const keys = [...objects.keys()].filter((key) => key.startsWith(`${bucket}/${prefix}`)).sort();
        const contents = keys.map((key) => `<Contents><Key>${key.slice(bucket.length + 1)}</Key></Contents>`);
        response.writeHead(200, { 'content-type': 'application/xml' });
        return response.end(
          `<ListBucketResult><IsTruncated>false</IsTruncated>${contents.join('')}</ListBucketResult>`,
        );
      }
      asked.add(`${rightOf[method] ?? method} ${path}`);
      const there = objects.get(path);
      if (method === 'PUT') {
        const { 'if-match': match, 'if-none-match': noneMatch } = request.headers;
        // A condition on what is there needs the right to read it.
        if (match !== undefined) asked.add(`s3:GetObject ${path}`);
        if (noneMatch === '*' && there) return fail(412, 'PreconditionFailed');
        if (match !== undefined && !there) return fail(404, 'NoSuchKey');
        if (match !== undefined && there?.headers['etag'] !== match) return fail(412, 'PreconditionFailed');
        const bytes = Buffer.concat(chunks);
        heard?.({ kind: 'put', bucket, bytes: bytes.length });
        const kept = Object.entries(request.headers).filter(([name]) =>
          /^(x-amz-meta-|content-type$)/.test(name),
        );
        const etag = `"${createHash('md5').update(bytes).digest('hex')}"`;
        objects.set(path, {
          bytes,
          headers: { ...(Object.fromEntries(kept) as Record<string, string>), etag },
        });
        response.writeHead(200, { etag });
        return response.end();
      }
      heard?.({ kind: 'get', bucket, bytes: method === 'HEAD' ? 0 : (there?.bytes.length ?? 0) });
      if (!there) {
        // What is missing answers "not found" only to who may list; everyone else hears "forbidden".
        asked.add(`s3:ListBucket ${path}`);
        return fail(404, 'NoSuchKey');
      }
      response.writeHead(200, { ...there.headers, 'content-length': there.bytes.length });
      return response.end(method === 'HEAD' ? undefined : there.bytes);
    });
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  return {
    endpoint: `http://127.0.0.1:${(server.address() as AddressInfo).port}`,
    take: () => {
      const taken = asked;
      asked = new Set();
      return taken;
    },
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}
