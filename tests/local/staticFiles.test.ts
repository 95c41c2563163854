import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import type { IncomingMessage } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { answerPage } from '../../infra/local/pages.ts';
import { filesFor, readBelow, type Served } from '../../infra/local/staticFiles.ts';

let base: string;
let client: string;
beforeAll(async () => {
  base = await mkdtemp(join(tmpdir(), 'hsl-static-'));
  client = join(base, 'client');
  await mkdir(join(client, 'crew'), { recursive: true });
  await mkdir(join(client, '_assets'), { recursive: true });
  await writeFile(join(client, 'crew', 'index.html'), '<h1>crew</h1>');
  await writeFile(join(client, '_assets', 'a.8f2.css'), 'p{}');
  await writeFile(join(base, 'secret.txt'), 'secret');
});
afterAll(() => rm(base, { recursive: true, force: true }));

const published = {
  read: async (key: string): Promise<Served | null> =>
    key === 'index.html' || key === '404.html'
      ? {
          bytes: Buffer.from(key),
          contentType: 'text/html',
          cacheControl: 'max-age=60',
          lastModified: new Date('2026-01-02T03:04:05.678Z'),
        }
      : null,
};
const ask = (path: string, headers: Record<string, string> = {}, method = 'GET') =>
  answerPage({ method, headers } as unknown as IncomingMessage, path, { client, published });

describe('addresses', () => {
  it.each([
    ['/', ['index.html']],
    ['/crew/', ['crew/index.html']],
    ['/crew', ['crew/index.html', 'crew', 'crew.html']],
    ['/_assets/a.css', ['_assets/a.css', '_assets/a.css/index.html']],
    ['/es/hydrants/H-1/', ['es/hydrants/H-1/index.html']],
    // What leads out, is hidden, or could mean something else to a file system leads nowhere.
    ['/../secret.txt', []],
    ['/%2e%2e/secret.txt', []],
    ['/crew/..%2f..%2fsecret.txt', []],
    ['/crew/..%5c..%5csecret.txt', []],
    ['/.published/meta/index.html.json', []],
    ['/a%00.html', []],
    ['/c:/windows', []],
    ['/%E0%A4%A', []],
  ])('%s means %j', (path, names) => {
    expect(filesFor(path)).toEqual(names);
  });

  it('below a folder never leave it', async () => {
    expect(await readBelow(client, '../secret.txt')).toBeNull();
    expect(await readBelow(client, 'crew')).toBeNull();
    expect(await readBelow(client, `${'a'.repeat(300)}.html`)).toBeNull();
    expect(Buffer.from((await readBelow(client, 'crew/index.html'))!.bytes).toString()).toBe('<h1>crew</h1>');
  });
});

// RFC 9110 §13 (conditional requests) and §15.4.5 (304).
describe('pages', () => {
  it('of the built site come first, then what is published, then the published 404', async () => {
    expect(await ask('/crew/')).toMatchObject({
      status: 200,
      headers: { 'content-type': 'text/html; charset=utf-8', 'cache-control': 'no-cache' },
    });
    expect(await ask('/')).toMatchObject({
      status: 200,
      headers: { 'cache-control': 'max-age=60', 'last-modified': 'Fri, 02 Jan 2026 03:04:05 GMT' },
    });
    expect(await ask('/nothing/here')).toMatchObject({ status: 404, body: Buffer.from('404.html') });
    expect(await ask('/', {}, 'POST')).toMatchObject({ status: 405 });
  });

  it('may take pictures of streets from the source that is set, and say nothing of it where none is', async () => {
    expect((await ask('/')).headers).not.toHaveProperty('content-security-policy');
    const { headers } = await answerPage({ method: 'GET', headers: {} } as unknown as IncomingMessage, '/', {
      client,
      published,
      streets: 'https://tiles.example.gov',
    });
    expect(headers['content-security-policy']).toContain(
      "img-src 'self' data: blob: https://tiles.example.gov; connect-src 'self'",
    );
  });

  it('with a hash in their name are kept for ever', async () => {
    expect((await ask('/_assets/a.8f2.css')).headers['cache-control']).toContain('immutable');
  });

  it('are not sent again to who has them', async () => {
    const { headers } = await ask('/');
    const etag = String(headers['etag']);
    const statusFor = async (given: Record<string, string>): Promise<number> =>
      (await ask('/', given)).status;
    expect(await statusFor({ 'if-none-match': etag })).toBe(304);
    expect(await statusFor({ 'if-none-match': `"other", W/${etag}` })).toBe(304);
    expect(await statusFor({ 'if-none-match': '*' })).toBe(304);
    expect(await statusFor({ 'if-none-match': '"other"' })).toBe(200);
    expect(await statusFor({ 'if-modified-since': 'Fri, 02 Jan 2026 03:04:05 GMT' })).toBe(304);
    expect(await statusFor({ 'if-modified-since': 'Fri, 02 Jan 2026 03:04:04 GMT' })).toBe(200);
    expect(
      await statusFor({ 'if-none-match': '"other"', 'if-modified-since': 'Fri, 02 Jan 2026 03:04:05 GMT' }),
    ).toBe(200);
    expect(await statusFor({ 'if-modified-since': 'yesterday' })).toBe(200);
  });
});
