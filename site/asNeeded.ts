import { fileURLToPath } from 'node:url';
import type { AstroUserConfig } from 'astro';
import { words as firstEn } from './src/app/words/first.en.ts';
import { words as firstEs } from './src/app/words/first.es.ts';

type Plugin = Extract<
  NonNullable<NonNullable<AstroUserConfig['vite']>['plugins']>[number],
  { readonly name: string }
>;

const fileOf = (path: string): string => fileURLToPath(new URL(path, import.meta.url));
const words = fileOf('src/app/words/catalogues.ts');
const temporal = fileOf('src/app/core/temporal.ts');
const first: ReadonlyMap<string, Readonly<Record<string, string>>> = new Map([
  [fileOf('src/app/words/first.en.ts'), firstEn],
  [fileOf('src/app/words/first.es.ts'), firstEs],
]);

/**
 * In what browsers run, the catalogue of words is one that is filled as it is needed (`src/app/words/`), what the first
 * screens say is picked already, and calendars are the browser's own where it has them. What renders pages at build time
 * or in the publisher has all of them.
 */
export const asNeeded = (): Plugin => ({
  name: 'as-needed',
  enforce: 'pre',
  resolveId(source, importer, options) {
    if (options.ssr === true) return null;
    if (source === './catalogues.ts' && importer?.endsWith('/shared/words/index.ts') === true) return words;
    return source === 'temporal-polyfill' && importer !== temporal ? temporal : null;
  },
  load(id, options) {
    const picked = options?.ssr === true ? undefined : first.get(id);
    return picked === undefined ? null : `export const words = ${JSON.stringify(picked)};`;
  },
});
