import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';

export interface RecordingProxy {
  readonly endpoint: string;
  /** `Query submissions` and the like, since the last call of this. */
  take(): Set<string>;
  close(): Promise<void>;
}

/** One request and its answer, both as the API's JSON. */
export interface Exchange {
  readonly operation: string;
  readonly request: Readonly<Record<string, unknown>>;
  readonly answer: Readonly<Record<string, unknown>>;
}

/**
 * A DynamoDB endpoint that passes everything on and keeps which operation was asked on which table. With `heard` the
 * table's answers also say what they cost (`ReturnConsumedCapacity`), and each exchange is told.
 */
export async function recordingProxy(
  target: string,
  heard?: (exchange: Exchange) => void,
): Promise<RecordingProxy> {
  let asked = new Set<string>();
  const server = createServer((request, response) => {
    void (async () => {
      const chunks: Buffer[] = [];
      for await (const chunk of request as AsyncIterable<Buffer>) chunks.push(chunk);
      const body = Buffer.concat(chunks);
      const operation = String(request.headers['x-amz-target']).split('.')[1] ?? '';
      const sent = JSON.parse(body.toString()) as {
        TableName?: string;
        RequestItems?: Record<string, unknown>;
      };
      const { TableName, RequestItems } = sent;
      for (const table of TableName === undefined ? Object.keys(RequestItems ?? {}) : [TableName])
        asked.add(`dynamodb:${operation} ${table}`);
      const headers = Object.fromEntries(
        Object.entries(request.headers).filter(
          ([name]) => !['host', 'connection', 'content-length'].includes(name),
        ),
      ) as Record<string, string>;
      const asks = heard ? JSON.stringify({ ...sent, ReturnConsumedCapacity: 'TOTAL' }) : body;
      const answer = await fetch(target, { method: 'POST', headers, body: asks });
      response.writeHead(answer.status, {
        'content-type': answer.headers.get('content-type') ?? '',
        'x-amz-crc32': answer.headers.get('x-amz-crc32') ?? '',
      });
      const bytes = Buffer.from(await answer.arrayBuffer());
      heard?.({
        operation,
        request: sent,
        answer: JSON.parse(bytes.toString() || '{}') as Exchange['answer'],
      });
      response.end(bytes);
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
