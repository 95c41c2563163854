import { readFile, writeFile } from 'node:fs/promises';
import type { AstroIntegration } from 'astro';

const PAGE = 'crew/index.html';

/** Files that a script imports before it runs, by name. */
const importedBy = (code: string): string[] =>
  [...code.matchAll(/(?:from|import)\s*["'`]\.\/([\w.~@-]+\.js)["'`]/g)].map(([, name]) => name ?? '');

/**
 * Names on the crew's page what its script imports, so that a phone asks for all of it at once and not file by file as
 * each is read: on a slow line every turn is 150 ms.
 */
export const preloadFirst: AstroIntegration = {
  name: 'preload-first',
  hooks: {
    'astro:build:done': async ({ dir }) => {
      const page = new URL(PAGE, dir);
      const html = await readFile(page, 'utf8');
      const entry = /<script type="module" src="\/_assets\/([^"]+)"/.exec(html)?.[1];
      if (entry === undefined) throw new Error(`${PAGE} has no script of its own`);
      const found = new Set([entry]);
      for (const name of found) {
        const code = await readFile(new URL(`_assets/${name}`, dir), 'utf8');
        for (const next of importedBy(code)) found.add(next);
      }
      found.delete(entry);
      const links = [...found].map((name) => `<link rel="modulepreload" href="/_assets/${name}">`).join('');
      await writeFile(page, html.replace('</head>', `${links}</head>`));
    },
  },
};
