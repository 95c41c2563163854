import { createHash } from 'node:crypto';
import { readFile, stat } from 'node:fs/promises';
import { extname, join, sep } from 'node:path';
import type { IncomingMessage } from 'node:http';
import { answer, type Answer } from './answer.ts';
import { compressed } from './compressed.ts';

/** A file to serve: from the built site, or from what the publisher has put out. */
export interface Served {
  readonly bytes: Uint8Array;
  readonly contentType: string;
  readonly cacheControl: string;
  readonly lastModified: Date | null;
}

const contentTypes: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.mjs': 'text/javascript; charset=utf-8',
  '.json': 'application/json',
  '.geojson': 'application/geo+json',
  '.webmanifest': 'application/manifest+json',
  '.xml': 'application/xml',
  '.csv': 'text/csv; charset=utf-8',
  '.txt': 'text/plain; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.jpg': 'image/jpeg',
  '.webp': 'image/webp',
  '.ico': 'image/vnd.microsoft.icon',
  '.woff2': 'font/woff2',
  '.woff': 'font/woff',
  '.pdf': 'application/pdf',
  '.wasm': 'application/wasm',
};

/**
 * The files an address may mean, most exact first; none for an address that could lead out of the folder. Addresses
 * are decoded once, as a web server does, and what is left over is judged, not cleaned.
 */
export function filesFor(urlPath: string): readonly string[] {
  let path: string;
  try {
    path = decodeURIComponent(urlPath);
  } catch {
    return [];
  }
  // A backslash and a colon mean something to some file systems; a NUL ends a name early on others.
  if (/[\u0000-\u001f\\:]/.test(path)) return [];
  const segments = path.split('/').filter((segment) => segment !== '');
  if (segments.some((segment) => segment === '..' || segment === '.' || segment.startsWith('.'))) return [];
  const name = segments.join('/');
  const index = name === '' ? 'index.html' : `${name}/index.html`;
  if (path.endsWith('/')) return [index];
  return extname(name) === '' ? [index, name, `${name}.html`] : [name, index];
}

/** Reads a file below a folder, or null when there is no such file. */
export async function readBelow(folder: string, name: string): Promise<Served | null> {
  const file = join(folder, name);
  if (!file.startsWith(folder.endsWith(sep) ? folder : folder + sep)) return null;
  try {
    const found = await stat(file);
    if (!found.isFile()) return null;
    return {
      bytes: await readFile(file),
      contentType: contentTypes[extname(name)] ?? 'application/octet-stream',
      // The build puts a hash in the name of each asset, so it can be kept for ever; a page cannot.
      cacheControl: /(^|\/)_assets\//.test(name) ? 'public, max-age=31536000, immutable' : 'no-cache',
      lastModified: found.mtime,
    };
  } catch (error) {
    if (['ENOENT', 'ENOTDIR', 'EISDIR', 'ENAMETOOLONG'].includes((error as NodeJS.ErrnoException).code ?? ''))
      return null;
    throw error;
  }
}

/** The answer for a file: 200, or 304 when the caller has this very version (RFC 9110 §13). */
export function answerFile(request: IncomingMessage, served: Served, status = 200): Answer {
  const etag = `"${createHash('sha256').update(served.bytes).digest('base64url').slice(0, 22)}"`;
  const headers = {
    'content-type': served.contentType,
    'cache-control': served.cacheControl,
    etag,
    ...(served.lastModified ? { 'last-modified': served.lastModified.toUTCString() } : {}),
  };
  if (status === 200 && isFresh(request, etag, served.lastModified)) return answer(304, headers);
  const { body, headers: packed } = compressed(request, { ...served, etag });
  return answer(status, { ...headers, ...packed }, body);
}

function isFresh(request: IncomingMessage, etag: string, lastModified: Date | null): boolean {
  const noneMatch = request.headers['if-none-match'];
  // With an entity tag the date does not count (RFC 9110 §13.1.3).
  if (noneMatch !== undefined)
    return noneMatch === '*' || noneMatch.split(',').some((tag) => tag.trim().replace(/^W\//, '') === etag);
  const since = Date.parse(request.headers['if-modified-since'] ?? '');
  return lastModified !== null && Math.floor(lastModified.getTime() / 1000) * 1000 <= since;
}
