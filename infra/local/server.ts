import { randomUUID } from 'node:crypto';
import { createServer, type IncomingMessage, type Server } from 'node:http';
import { problem } from '../../shared/problems/problem.ts';
import type { Locale } from '../../shared/words/index.ts';
import { problemDocument } from '../../functions/http/problemDocument.ts';
import { describeError, type Log } from '../../functions/log/log.ts';
import { answer, send, type Answer } from './answer.ts';
import { RefusedStart } from './refusedStart.ts';

/** Answers one request. `url` is its address on this server. */
export type Answering = (request: IncomingMessage, url: URL) => Promise<Answer>;

export interface Listening {
  readonly port: number;
  /** Until this is called every request is asked to come again in a moment. */
  open(answering: Answering): void;
  /** Lets requests that are being answered finish, for at most five seconds. */
  close(): Promise<void>;
}

const FINISH_MS = 5000;

/** One Node server on one port. Refuses a port that is taken before anything else is started. */
export async function listen(options: {
  readonly port: number;
  readonly host: string;
  readonly log: Log;
  readonly locale: Locale;
}): Promise<Listening> {
  const { port, host, log, locale } = options;
  let answering: Answering | null = null;
  const server = createServer((request, response) => {
    void (async () => {
      try {
        send(request, response, answering ? await answering(request, urlOf(request)) : starting(locale));
      } catch (error) {
        // The caller went away in the middle; there is nobody to answer.
        if (request.destroyed && !request.complete) return;
        const reference = randomUUID();
        log({ level: 'error', event: 'request-failed', reference, ...describeError(error) });
        if (response.headersSent) response.destroy();
        else send(request, response, ourFault(locale, reference));
      }
    })();
  });
  await listenOn(server, port, host);
  const address = server.address();
  return {
    port: typeof address === 'object' && address ? address.port : port,
    open: (next) => {
      answering = next;
    },
    close: () =>
      new Promise((resolve) => {
        const late = setTimeout(() => server.closeAllConnections(), FINISH_MS);
        server.close(() => {
          clearTimeout(late);
          resolve();
        });
        server.closeIdleConnections();
      }),
  };
}

/** Refuses a port that is taken, without keeping it. */
export async function assertPortFree(port: number, host: string): Promise<void> {
  const server = createServer();
  await listenOn(server, port, host);
  await new Promise((resolve) => server.close(resolve));
}

function listenOn(server: Server, port: number, host: string): Promise<void> {
  return new Promise((resolve, reject) => {
    server.once('error', (error: NodeJS.ErrnoException) =>
      reject(refusalOf(error.code ?? '', port, host) ?? error),
    );
    server.listen(port, host, resolve);
  });
}

/** What the person who started it can change, or null when it is nothing of theirs. */
function refusalOf(code: string, port: number, host: string): RefusedStart | null {
  if (['EADDRINUSE', 'EACCES'].includes(code))
    return new RefusedStart('command.port-taken', { port: String(port) });
  if (['EADDRNOTAVAIL', 'ENOTFOUND', 'EAI_AGAIN', 'EINVAL'].includes(code))
    return new RefusedStart('command.host-wrong', { host });
  return null;
}

/** The address as sent. One that cannot be read leads nowhere. */
function urlOf(request: IncomingMessage): URL {
  const target = request.url ?? '/';
  // Two slashes at the start would be read as a host name.
  return (
    URL.parse(`http://localhost${target.startsWith('/') ? target : `/${target}`}`) ??
    new URL('http://localhost/%00')
  );
}

const json = (status: number, headers: Record<string, string>, document: object): Answer =>
  answer(
    status,
    { 'content-type': 'application/problem+json', 'cache-control': 'no-store', ...headers },
    JSON.stringify(document),
  );

/** What every request is answered while the server starts. */
export const starting = (locale: Locale): Answer =>
  json(
    503,
    { 'retry-after': '2' },
    problemDocument(locale, { reason: 'unavailable', problems: [problem('try-again')], extra: {} }),
  );
const ourFault = (locale: Locale, reference: string): Answer =>
  json(
    500,
    {},
    problemDocument(locale, {
      reason: 'fault',
      problems: [problem('our-fault', '', { reference })],
      extra: { reference },
    }),
  );
