import { createServer, request as httpRequest, type IncomingMessage, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';

/** What happens to one request on its way: `lose-answer` lets it take effect and cuts the connection before the answer. */
export type Fate = 'pass' | 'lose-answer' | 'lose-request' | 'hang' | 'fail-500';

export interface FaultyProxy {
  readonly endpoint: string;
  /** Decides the fate of each request; `operation` is DynamoDB's, e.g. `PutItem`, `number` counts from 1. */
  fate: (operation: string, number: number) => Fate;
  readonly close: () => Promise<void>;
}

/** Stands between the SDK and a server of the DynamoDB API, to see what the SDK and the stores make of a bad line. */
export async function faultyProxy(target: string): Promise<FaultyProxy> {
  let number = 0;
  const server = createServer((incoming, answer) => {
    number += 1;
    const operation = String(incoming.headers['x-amz-target']).split('.').at(-1) ?? '';
    const fate = proxy.fate(operation, number);
    if (fate === 'hang') return;
    if (fate === 'lose-request') return void incoming.socket.destroy();
    if (fate === 'fail-500') {
      incoming.resume();
      answer.writeHead(500, { 'content-type': 'application/x-amz-json-1.0' }).end('{}');
      return;
    }
    forward(target, incoming, answer, fate === 'lose-answer');
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const proxy: FaultyProxy = {
    endpoint: `http://127.0.0.1:${(server.address() as AddressInfo).port}`,
    fate: () => 'pass',
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
  return proxy;
}

function forward(
  target: string,
  incoming: IncomingMessage,
  answer: ServerResponse,
  loseAnswer: boolean,
): void {
  const { hostname, port } = new URL(target);
  const { method, url, headers } = incoming;
  const onward = httpRequest({ hostname, port, method, path: url, headers }, (reply) => {
    if (loseAnswer) {
      // The answer has come, so the write is done; the one who asked will never know.
      reply.resume().once('end', () => incoming.socket.destroy());
      return;
    }
    answer.writeHead(reply.statusCode ?? 502, reply.headers);
    reply.pipe(answer);
  });
  onward.once('error', () => answer.destroy());
  incoming.pipe(onward);
}
