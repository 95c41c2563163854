import { readdir, readFile, writeFile } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import type { AstroIntegration } from 'astro';

/** Packages by name, each with the folder that it lies in. */
type Found = Map<string, string>;

const placed = /(.*\bnode_modules\/((?:@[^/]+\/)?[^/]+))/;

/** The license texts that a package brings, as they are. */
async function textsOf(folder: string): Promise<string> {
  const names = (await readdir(folder)).filter((name) => /^(licen[cs]e|copying|notice)/i.test(name)).sort();
  const texts = await Promise.all(names.map((name) => readFile(join(folder, name), 'utf8')));
  if (texts.length > 0) return texts.map((text) => text.trim()).join('\n\n');
  const { license = 'not stated' } = JSON.parse(await readFile(join(folder, 'package.json'), 'utf8')) as {
    license?: string;
  };
  return `License: ${license}`;
}

async function noticesOf(client: Found): Promise<string> {
  const parts = [...client].sort(([a], [b]) => (a < b ? -1 : 1));
  const texts = await Promise.all(
    parts.map(async ([name, folder]) => `${name}\n\n${await textsOf(folder)}\n`),
  );
  return `The scripts and fonts of this site hold code of these packages.\n\n${texts.join(`\n${'-'.repeat(72)}\n\n`)}`;
}

/**
 * Leaves beside the built site which packages stand in it: `dist/packages.json`, what a browser loads apart from what
 * renders pages; `infra/packages` makes the list of licenses and the bill of materials from it. And on the site, as most
 * licenses ask, their texts: `/_assets/licenses.txt`.
 */
export const packagesIn = (): AstroIntegration => {
  const found: Record<'client' | 'server', Found> = { client: new Map(), server: new Map() };
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
                      const [, folder, name] = placed.exec(source) ?? [];
                      if (folder !== undefined && name !== undefined)
                        into.set(name, resolve(this.environment.config.root, folder));
                    }
                  }
                },
              },
            ],
          },
        });
      },
      'astro:build:done': async ({ dir }) => {
        const lists = { client: [...found.client.keys()].sort(), server: [...found.server.keys()].sort() };
        await writeFile(new URL('../packages.json', dir), `${JSON.stringify(lists, null, 1)}\n`);
        await writeFile(new URL('_assets/licenses.txt', dir), await noticesOf(found.client));
      },
    },
  };
};
