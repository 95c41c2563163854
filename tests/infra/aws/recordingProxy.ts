import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';

export interface RecordingProxy {
  readonly endpoint: string;
  /** `Query submissions` and the like, since the last call of this. */
  take(): Set<string>;
  close(): Promise<void>;
}

/** A DynamoDB endpoint that passes everything on and keeps which operation was asked on which table. */
export async function recordingProxy(target: string): Promise<RecordingProxy> {
  let asked = new Set<string>();
  const server = createServer((request, response) => {
    void (async () => {
      const chunks: Buffer[] = [];
      for await (const chunk of request as AsyncIterable<Buffer>) chunks.push(chunk);
      const body = Buffer.concat(chunks);
      const operation = String(request.headers['x-amz-target']).split('.')[1] ?? '';
      const { TableName, RequestItems } = JSON.parse(body.toString()) as {
        TableName?: string;
        RequestItems?: Record<string, unknown>;
      };
      for (const table of TableName === undefined ? Object.keys(RequestItems ?? {}) : [TableName])
        asked.add(`dynamodb:${operation} ${table}`);
      const headers = Object.fromEntries(
        Object.entries(request.headers).filter(([name]) => name !== 'host' && name !== 'connection'),
      ) as Record<string, string>;
      const answer = await fetch(target, { method: 'POST', headers, body });
      response.writeHead(answer.status, {
        'content-type': answer.headers.get('content-type') ?? '',
        'x-amz-crc32': answer.headers.get('x-amz-crc32') ?? '',
      });
      response.end(Buffer.from(await answer.arrayBuffer()));
    })().catch((error: unknown) => response.destroy(error as Error));
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
