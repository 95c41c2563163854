import type { IncomingMessage } from 'node:http';
import { brotliDecompressSync, gunzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { compressed } from '../../infra/local/compressed.ts';

const text = Buffer.from('let hydrant = 1;\n'.repeat(500));
const ask = (acceptEncoding?: string, bytes: Uint8Array = text, contentType = 'text/javascript') =>
  compressed({ headers: { 'accept-encoding': acceptEncoding } } as unknown as IncomingMessage, {
    bytes,
    contentType,
    etag: `"${bytes.length}"`,
  });

// RFC 9110, sections 12.5.3 (what a caller takes), 12.5.5 (Vary) and 8.8.3.3 (a tag of its own for a coding).
describe('a file on its way', () => {
  it('is packed as the caller takes it, and unpacks to the same bytes', () => {
    const br = ask('gzip, deflate, br, zstd');
    expect(br.headers).toEqual({ vary: 'accept-encoding', 'content-encoding': 'br', etag: 'W/"8500"' });
    expect(brotliDecompressSync(br.body)).toEqual(text);
    const gzip = ask('gzip;q=0.5, br;q=0');
    expect(gzip.headers['content-encoding']).toBe('gzip');
    expect(gunzipSync(gzip.body)).toEqual(text);
    // The second caller gets what was packed for the first, and never what was packed otherwise.
    expect(ask('br').body).toEqual(br.body);
    expect(ask('gzip').body).toEqual(gzip.body);
  });

  it.each([[undefined], ['identity'], ['br;q=0, gzip;q=0.0'], ['zstd']])(
    'goes as it is to who takes %j',
    (taken) => {
      expect(ask(taken)).toEqual({ body: text, headers: { vary: 'accept-encoding' } });
    },
  );

  it('that is a picture, a font or tiny is left alone', () => {
    expect(ask('br', text, 'font/woff2')).toEqual({ body: text, headers: {} });
    expect(ask('br', text, 'image/jpeg').headers).toEqual({});
    expect(ask('br', text, 'image/svg+xml').headers['content-encoding']).toBe('br');
    expect(ask('br', Buffer.from('p{}'), 'text/css').headers).toEqual({});
  });
});
