import { writeFile } from 'node:fs/promises';
import type { AstroIntegration } from 'astro';

type Found = Record<'client' | 'server', Set<string>>;

const nameIn = (moduleId: string): string | undefined =>
  /.*\bnode_modules\/((?:@[^/]+\/)?[^/]+)/.exec(moduleId)?.[1];

/**
 * Leaves beside the built site which packages stand in it: `dist/packages.json`, what a browser loads apart from what
 * renders pages. `infra/packages` makes the list of licenses and the bill of materials from it.
 */
export const packagesIn = (): AstroIntegration => {
  const found: Found = { client: new Set(), server: new Set() };
  return {
    name: 'packages-in',
    hooks: {
      'astro:config:setup': ({ updateConfig }) => {
        updateConfig({
          vite: {
            plugins: [
              {
                name: 'packages-in',
                generateBundle(_options, bundle) {
                  const here = this.environment.name === 'client' ? found.client : found.server;
                  for (const file of Object.values(bundle)) {
                    const sources = file.type === 'chunk' ? file.moduleIds : file.originalFileNames;
                    // A font or a picture is for the browser, whichever of the two named it.
                    const into = file.type === 'chunk' ? here : found.client;
                    for (const source of sources) {
                      const name = nameIn(source);
                      if (name !== undefined) into.add(name);
                    }
                  }
                },
              },
            ],
          },
        });
      },
      'astro:build:done': async ({ dir }) => {
        const lists = { client: [...found.client].sort(), server: [...found.server].sort() };
        await writeFile(new URL('../packages.json', dir), `${JSON.stringify(lists, null, 1)}\n`);
      },
    },
  };
};
