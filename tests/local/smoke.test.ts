import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { v7 } from 'uuid';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openChecks, signedInChecks, smoke, type SmokeCheck } from '../../infra/local/smoke/checks.ts';
import { strikeTrial } from '../../infra/local/smoke/trial.ts';
import { ports } from '../support/ports.ts';
import { runningServer, type Running } from './support/running.ts';

/** `npm run smoke` against the local server: the same handlers behind the same routes as a deployment. */
let running: Running;
let front: Server;
let origin: string;
beforeAll(async () => {
  running = await runningServer(ports.smoke);
  front = createServer((request, response) => void answer(request, response));
  origin = await listen(front);
});
afterAll(async () => {
  front.closeAllConnections();
  front.close();
  await running.close();
});

const listen = async (server: Server): Promise<string> => {
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  return `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
};

/** The server without a built site publishes no page, so that one, and the health that asks for it, stand in front. */
async function answer(request: IncomingMessage, response: ServerResponse): Promise<void> {
  const { url = '', method = 'GET', headers } = request;
  if (url === '/') {
    response.setHeader('content-security-policy', "default-src 'none'");
    response.setHeader('x-content-type-options', 'nosniff');
    response.end('<!doctype html><html lang="en"><title>Hydrants</title></html>');
    return;
  }
  if (url === '/api/health') return void response.end('{"status":"ok"}');
  const chunks: Buffer[] = [];
  for await (const chunk of request) chunks.push(chunk as Buffer);
  const passed = Object.entries(headers).filter(([name]) => !/^(host|connection|content-length)$/.test(name));
  const there = await fetch(running.server.origin + url, {
    method,
    headers: Object.fromEntries(passed) as Record<string, string>,
    ...(chunks.length > 0 ? { body: Buffer.concat(chunks) } : {}),
  });
  response.writeHead(there.status).end(Buffer.from(await there.arrayBuffer()));
}

async function run(token: string | null, at = origin) {
  const told = new Map<SmokeCheck, string | null>();
  const well = await smoke(
    { origin: at, token, now: () => new Date(), newId: () => v7(), settleMs: 300 },
    (check, found) => told.set(check, found),
  );
  return { well, told, failed: [...told].filter(([, found]) => found !== null) };
}

describe('a deployment that is well', () => {
  it('passes every check, twice, and nothing of the trials is on any list', async () => {
    const token = await running.tokenFor('manager');
    for (let time = 0; time < 2; time++) {
      const { well, told, failed } = await run(token);
      expect(failed).toEqual([]);
      expect(well).toBe(true);
      expect([...told.keys()]).toEqual([...Object.keys(openChecks), ...Object.keys(signedInChecks)]);
    }
  });

  it('and a trial that showed itself would be seen', async () => {
    const strike = strikeTrial(v7(), v7(), new Date(), 1);
    const { test: _, ...real } = strike;
    await running.ask('POST', '/api/submissions', { role: 'manager', body: real });
    const list = await running.ask('GET', '/api/strikes', { role: 'manager' });
    expect(JSON.stringify(list.body)).toContain((strike.subject as { strikeId: string }).strikeId);
  });

  it('is looked at from outside where nobody signed in', async () => {
    const { well, told } = await run(null);
    expect(well).toBe(true);
    expect([...told.keys()]).toEqual(Object.keys(openChecks));
  });
});

describe('what is not well is named', () => {
  it('a sign-in that may hand in no trial', async () => {
    const { well, failed } = await run(await running.tokenFor('crew'));
    expect(well).toBe(false);
    expect(failed.map(([name]) => name)).toEqual(expect.arrayContaining(['manager', 'taken']));
  });

  it('a door that stands open, and a page that is none', async () => {
    const open = createServer((_, response) => {
      response.end('{}');
    });
    try {
      const { failed } = await run(null, await listen(open));
      expect(failed.map(([name]) => name)).toEqual(['page', 'headers', 'closed']);
    } finally {
      open.closeAllConnections();
      open.close();
    }
  });

  it('an address where nobody answers', async () => {
    const { failed } = await run(null, 'http://127.0.0.1:9');
    expect(failed.map(([name]) => name)).toEqual(Object.keys(openChecks));
    expect(failed[0]![1]).toMatch(/fetch failed/);
  });
});
