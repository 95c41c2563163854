import { createHash } from 'node:crypto';
import { readFile, writeFile } from 'node:fs/promises';
import { stripTypeScriptTypes } from 'node:module';
import { fileURLToPath } from 'node:url';
import type { AstroIntegration } from 'astro';

const PAGE = '/crew/';
const WORKER = 'crew/sw.js';

const sha256 = (bytes: Uint8Array | string): string => createHash('sha256').update(bytes).digest('hex');

/** Addresses of the site's own files that a page, a script or a style names; a script names its parts by file name. */
function namedIn(text: string): string[] {
  const full = [...text.matchAll(/\/?(_assets\/[\w.~@-]+\.\w+)/g)].map(([, path]) => `/${path ?? ''}`);
  const beside = [...text.matchAll(/["'`]\.\/([\w.~@-]+\.\w+)["'`]/g)].map(
    ([, name]) => `/_assets/${name ?? ''}`,
  );
  return [...full, ...beside];
}

/** Everything that can be asked for from the page on, by following names from file to file. */
async function reachable(client: URL): Promise<Map<string, Buffer>> {
  const found = new Map<string, Buffer>();
  const wanted = [PAGE];
  for (let url = wanted.shift(); url !== undefined; url = wanted.shift()) {
    if (found.has(url)) continue;
    const file = new URL(`.${url === PAGE ? `${PAGE}index.html` : url}`, client);
    const bytes = await readFile(file).catch(() => null);
    // Something that looks like a name and is none; the page itself is another matter.
    if (bytes === null && url === PAGE) throw new Error(`the build has no ${url}`);
    if (bytes === null) continue;
    found.set(url, bytes);
    if (/\.(html|js|mjs|css)$/.test(file.pathname)) wanted.push(...namedIn(bytes.toString('utf8')));
  }
  return found;
}

/**
 * Writes the crew app's service worker beside its page: the list of every file the app can ask for, each with its
 * SHA-256, then `src/app/offline/worker.ts` with its types taken off. The version is the hash of both.
 */
export const offline: AstroIntegration = {
  name: 'offline',
  hooks: {
    'astro:build:done': async ({ dir }) => {
      const source = await readFile(new URL('src/app/offline/worker.ts', import.meta.url), 'utf8');
      const files = [...(await reachable(dir))]
        .map(([url, bytes]) => ({ url, sha256: sha256(bytes), fixed: url.startsWith('/_assets/') }))
        .sort((a, b) => (a.url < b.url ? -1 : 1));
      const code = stripTypeScriptTypes(source);
      const version = sha256(JSON.stringify(files) + code).slice(0, 16);
      const text = `const BUILD = ${JSON.stringify({ version, page: PAGE, files }, null, 1)};\n${code}`;
      await writeFile(fileURLToPath(new URL(WORKER, dir)), text);
    },
  },
};
