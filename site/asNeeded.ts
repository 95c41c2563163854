import { fileURLToPath } from 'node:url';
import type { AstroUserConfig } from 'astro';

type Plugin = Extract<
  NonNullable<NonNullable<AstroUserConfig['vite']>['plugins']>[number],
  { readonly name: string }
>;

const fileOf = (path: string): string => fileURLToPath(new URL(path, import.meta.url));
const words = fileOf('src/app/words/catalogues.ts');
const temporal = fileOf('src/app/core/temporal.ts');

/**
 * In what browsers run, the catalogue of words is one that is filled as it is needed (`src/app/words/`), and calendars
 * are the browser's own where it has them. What renders pages at build time or in the publisher has all of both.
 */
export const asNeeded = (): Plugin => ({
  name: 'as-needed',
  enforce: 'pre',
  resolveId(source, importer, options) {
    if (options.ssr === true) return null;
    if (source === './catalogues.ts' && importer?.endsWith('/shared/words/index.ts') === true) return words;
    return source === 'temporal-polyfill' && importer !== temporal ? temporal : null;
  },
});
