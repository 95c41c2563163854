import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { gzipSync } from 'node:zlib';
import type { PublishedStore } from '../../functions/stores/published/published.ts';

/** As strict as a deployment sends it: the pages must work under it, so the tests serve them under it. The pages' own
 * policy is stricter still, where a page reads nothing (`publicPolicy`). */
export const contentSecurityPolicy =
  "default-src 'none'; style-src 'self'; script-src 'self'; font-src 'self'; img-src 'self'; connect-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

/**
 * Serves published objects as a static host would: index pages, the 404 page, types and cache times; `compressed`, as a
 * deployment sends them, for whoever counts bytes.
 */
export async function servePublished(
  store: PublishedStore,
  { compressed = false }: { readonly compressed?: boolean } = {},
): Promise<{ url: string; close: () => Promise<void> }> {
  const server: Server = createServer((request, response) => {
    void (async () => {
      const path = new URL(request.url ?? '/', 'http://x.invalid').pathname.slice(1);
      const key = path === '' || path.endsWith('/') ? `${path}index.html` : path;
      const found = await store.get(key).catch(() => null);
      const shown = found ?? (await store.get('404.html'));
      const packed = compressed && shown !== null && !key.endsWith('.woff2');
      response.writeHead(found ? 200 : 404, {
        'content-type': shown?.contentType ?? 'text/plain',
        'cache-control': shown?.cacheControl ?? 'no-store',
        'content-security-policy': contentSecurityPolicy,
        ...(packed ? { 'content-encoding': 'gzip' } : {}),
      });
      response.end(packed ? gzipSync(shown.bytes) : (shown?.bytes ?? 'nothing published'));
    })();
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.address() as AddressInfo;
  return {
    url: `http://127.0.0.1:${port}`,
    close: () =>
      new Promise((resolve) => {
        server.close(() => {
          resolve();
        });
        server.closeAllConnections();
      }),
  };
}
