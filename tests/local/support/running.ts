import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { LogEntry } from '../../../functions/log/log.ts';
import { logTo } from '../../../functions/log/log.ts';
import { openDataFolder, type DataFolder } from '../../../infra/local/dataFolder.ts';
import { demoUtility } from '../../../infra/local/demo/index.ts';
import { demoPeople } from '../../../infra/local/demoState.ts';
import { startLocalServer, type LocalServer } from '../../../infra/local/localServer.ts';
import type { Role } from '../../../shared/roles.ts';

export interface Answered {
  readonly status: number;
  readonly headers: Headers;
  readonly body: any;
}

/** The real server on the embedded store over HTTP, in this process, on a folder of its own. One a test file. */
export async function runningServer(port: number) {
  const base = await mkdtemp(join(tmpdir(), 'hsl-running-'));
  const folder: DataFolder = await openDataFolder(join(base, 'data'));
  const logged: LogEntry[] = [];
  const log = (entry: LogEntry): void => void logged.push(entry);
  logTo((line) => logged.push(JSON.parse(line) as LogEntry));
  const server: LocalServer = await startLocalServer({
    folder,
    port,
    host: '127.0.0.1',
    settings: demoUtility,
    members: demoPeople,
    client: null,
    log,
    replaying: () => undefined,
  });
  const tokenFor = (role: Role): Promise<string> => server.issuer.tokenFor(demoPeople[role]);
  const ask = async (
    method: string,
    path: string,
    {
      token,
      role,
      body,
      headers,
    }: { token?: string; role?: Role; body?: unknown; headers?: Record<string, string> } = {},
  ): Promise<Answered> => {
    const bearer = token ?? (role === undefined ? undefined : await tokenFor(role));
    const response = await fetch(server.origin + path, {
      method,
      redirect: 'manual',
      headers: {
        'content-type': 'application/json',
        ...(bearer === undefined ? {} : { authorization: `Bearer ${bearer}` }),
        ...headers,
      },
      ...(body === undefined ? {} : { body: typeof body === 'string' ? body : JSON.stringify(body) }),
    });
    const text = await response.text();
    const isJson = /json/.test(response.headers.get('content-type') ?? '');
    return { status: response.status, headers: response.headers, body: isJson ? JSON.parse(text) : text };
  };
  return {
    server,
    folder,
    logged,
    tokenFor,
    ask,
    submit: (role: Role, submission: unknown) => ask('POST', '/api/submissions', { role, body: submission }),
    close: async () => {
      await server.close();
      await rm(base, { recursive: true, force: true });
    },
  };
}
export type Running = Awaited<ReturnType<typeof runningServer>>;
