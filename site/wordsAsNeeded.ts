import { fileURLToPath } from 'node:url';
import type { AstroUserConfig } from 'astro';

type Plugin = Extract<
  NonNullable<NonNullable<AstroUserConfig['vite']>['plugins']>[number],
  { readonly name: string }
>;

const own = fileURLToPath(new URL('src/app/words/catalogues.ts', import.meta.url));

/**
 * In what browsers run, the catalogue of words is one that is filled as it is needed (`src/app/words/`). What renders
 * pages at build time or in the publisher has all of it.
 */
export const wordsAsNeeded = (): Plugin => ({
  name: 'words-as-needed',
  enforce: 'pre',
  resolveId(source, importer, options) {
    const wanted = source === './catalogues.ts' && importer?.endsWith('/shared/words/index.ts') === true;
    return wanted && options.ssr !== true ? own : null;
  },
});
