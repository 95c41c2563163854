import { defineConfig, passthroughImageService } from 'astro/config';
import type { AstroIntegration } from 'astro';
import { offline } from './offlineBuild.ts';
import { preloadFirst } from './preloadFirst.ts';
import { asNeeded } from './asNeeded.ts';
import { firstChunk } from './firstChunk.ts';
import { packagesIn } from './packagesIn.ts';

/**
 * Public pages are rendered by the publisher, not by a web server: the build gives `dist/server/entry.mjs`, which
 * exports `createApp()` and needs no node_modules, and `dist/client` with assets and the prerendered pages of crew and
 * desk. That is all the adapter a publisher needs.
 */
const publisher: AstroIntegration = {
  name: 'publisher',
  hooks: {
    'astro:config:done': ({ setAdapter }) =>
      setAdapter({
        name: 'publisher',
        // eslint-disable-next-line @typescript-eslint/no-deprecated -- only the other value of this field is deprecated
        entrypointResolution: 'auto',
        serverEntrypoint: new URL('src/render/entry.ts', import.meta.url),
        supportedAstroFeatures: { serverOutput: 'stable', staticOutput: 'stable', hybridOutput: 'stable' },
      }),
  },
};

export default defineConfig({
  output: 'server',
  outDir: './dist',
  cacheDir: './.astro/cache',
  adapter: publisher,
  // In this order: the offline list holds the hash of the finished page.
  integrations: [preloadFirst, offline, packagesIn()],
  image: { service: passthroughImageService() },
  devToolbar: { enabled: false },
  trailingSlash: 'ignore',
  // A strict content security policy stands on every page: no style and no script inside the HTML.
  build: { inlineStylesheets: 'never', assets: '_assets' },
  vite: {
    plugins: [asNeeded(), firstChunk()],
    build: { assetsInlineLimit: 0, target: 'es2022' },
    oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
    // The bundle runs inside a function with nothing beside it.
    ssr: { noExternal: true },
  },
});
