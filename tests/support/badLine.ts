import { createServer, request as httpRequest, type IncomingMessage, type ServerResponse } from 'node:http';
import type { Socket } from 'node:net';

/**
 * What happens to one request between a phone and the server: `lose-answer` lets it take effect and ends the line before
 * the answer; `cut` ends it after half of the body; `hold` takes it and never answers; `down` refuses every connection;
 * `portal` answers with a page of its own, as the network of a hotel does before one has agreed to its terms.
 */
export type LineFate = 'pass' | 'lose-answer' | 'cut' | 'hold' | 'down' | 'portal';

export interface BadLine {
  readonly origin: string;
  /** Decides the fate of each request; `number` counts those of this method and path from 1. */
  fate: (method: string, path: string, number: number) => LineFate;
  /** Requests that reached this line, as `METHOD /path`. */
  readonly seen: string[];
  /** Takes connections from now on. */
  readonly open: () => Promise<void>;
  readonly close: () => Promise<void>;
}

/** A line between a browser and the local server that fails where a test says. Both are called localhost. */
export function badLine(target: string, port: number): BadLine {
  const counts = new Map<string, number>();
  const server = createServer((incoming, answer) => {
    const [path = ''] = (incoming.url ?? '').split('?');
    const key = `${incoming.method ?? ''} ${path}`;
    counts.set(key, (counts.get(key) ?? 0) + 1);
    line.seen.push(key);
    const fate = line.fate(incoming.method ?? '', path, counts.get(key) ?? 1);
    if (fate === 'down') return void incoming.socket.destroy();
    if (fate === 'hold') return;
    if (fate === 'portal') {
      incoming.resume();
      answer.writeHead(403, { 'content-type': 'text/html' }).end('<p>Please agree to our terms.');
      return;
    }
    forward(target, incoming, answer, fate);
  });
  const open = new Set<Socket>();
  server.on('connection', (socket) => {
    open.add(socket);
    socket.once('close', () => open.delete(socket));
  });
  const line: BadLine = {
    origin: `http://localhost:${port}`,
    fate: () => 'pass',
    seen: [],
    open: () => new Promise((resolve) => server.listen(port, '127.0.0.1', resolve)),
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        for (const socket of open) socket.destroy();
      }),
  };
  return line;
}

function forward(target: string, incoming: IncomingMessage, answer: ServerResponse, fate: LineFate): void {
  const { hostname, port } = new URL(target);
  const { method, url, headers } = incoming;
  const onward = httpRequest({ hostname, port, method, path: url, headers }, (reply) => {
    if (fate === 'lose-answer') {
      reply.resume().once('end', () => incoming.socket.destroy());
      return;
    }
    answer.writeHead(reply.statusCode ?? 502, reply.headers);
    reply.pipe(answer);
  });
  onward.once('error', () => answer.destroy());
  if (fate !== 'cut') return void incoming.pipe(onward);
  const half = Number(headers['content-length'] ?? 0) / 2;
  let passed = 0;
  incoming.on('data', (chunk: Buffer) => {
    const rest = Math.max(0, Math.floor(half - passed));
    passed += chunk.length;
    onward.write(chunk.subarray(0, rest));
    if (passed < half) return;
    // Both ends see the line go in the middle of the body.
    onward.destroy();
    incoming.socket.destroy();
  });
}
