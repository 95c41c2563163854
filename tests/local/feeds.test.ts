import type { IncomingMessage } from 'node:http';
import { describe, expect, it } from 'vitest';
import { answerPage } from '../../infra/local/pages.ts';
import { publishedFiles } from '../../infra/local/publishedFiles.ts';
import { publishOnce } from '../../functions/publish/publish.ts';
import { memoryPublished } from '../../functions/stores/published/memoryPublished.ts';
import { feedsOf, INDEX_KEY } from '../../shared/feeds/catalogue.ts';
import { aPublisher } from '../support/aPublisher.ts';
import { alerting, oneOut } from '../support/feeds.ts';
import { townNow } from '../support/town.ts';

const store = memoryPublished();
await publishOnce(aPublisher(store, oneOut, alerting), townNow);
const ask = (path: string, headers: Record<string, string> = {}, method = 'GET') =>
  answerPage({ method, headers } as unknown as IncomingMessage, path, {
    client: null,
    published: publishedFiles(store),
  });

describe('a feed on this server', () => {
  it.each([...feedsOf({ alerts: true }), { key: INDEX_KEY, type: 'application/json' }])(
    '$key comes as $type, to be asked for again within a minute, and only when it changed',
    async ({ key, type }) => {
      const { status, headers } = await ask(`/${key}`);
      expect(status).toBe(200);
      expect(String(headers['content-type']).split(';')[0]).toBe(type);
      expect(Number(/max-age=(\d+)/.exec(String(headers['cache-control']))?.[1])).toBeLessThanOrEqual(60);
      const etag = String(headers['etag']);
      expect(etag).toMatch(/^"[^"]+"$/);
      expect(await ask(`/${key}`, { 'if-none-match': etag })).toMatchObject({ status: 304 });
      expect(await ask(`/${key}`, { 'if-none-match': '"another"' })).toMatchObject({ status: 200 });
    },
  );

  it('may be read by a page of any other site, which may ask by a tag (Fetch standard, CORS protocol)', async () => {
    const { headers } = await ask('/v1/out-of-service.geojson', { origin: 'https://elsewhere.example' });
    expect(headers['access-control-allow-origin']).toBe('*');
    expect(headers['access-control-expose-headers']).toContain('ETag');
    // With credentials a browser would refuse the star; none are wanted.
    expect(headers).not.toHaveProperty('access-control-allow-credentials');
    const preflight = await ask('/v1/out-of-service.geojson', {}, 'OPTIONS');
    expect(preflight).toMatchObject({ status: 204, headers: { 'access-control-allow-origin': '*' } });
    expect(preflight.headers['access-control-allow-headers']).toContain('If-None-Match');
    expect(preflight.headers['access-control-allow-methods']).not.toMatch(/POST|PUT|DELETE/);
    expect(await ask('/v1/out-of-service.geojson', {}, 'POST')).toMatchObject({ status: 405 });
  });

  it('and nothing else of the site may be', async () => {
    for (const path of ['/', '/desk/', '/hydrants/H-1/', '/v1', '/api/strikes'])
      expect((await ask(path)).headers, path).not.toHaveProperty('access-control-allow-origin');
  });

  it('that there is not is said to be missing, to other sites too', async () => {
    expect(await ask('/v1/none.json')).toMatchObject({
      status: 404,
      headers: { 'access-control-allow-origin': '*' },
    });
  });
});
