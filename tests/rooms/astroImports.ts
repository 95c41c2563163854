import { readdir, readFile } from 'node:fs/promises';
import { join, posix, relative, sep } from 'node:path';

/** What a page may import besides its own room and shared/. */
const packages =
  /^(astro$|astro[:/]|preact$|preact\/|@fontsource\/|idb$|uuid$|zod$|big\.js$|intl-messageformat$|kdbush$|geokdbush$|temporal-polyfill)/;

/** Specifiers imported by a component: its frontmatter and its script blocks, static and dynamic. */
export function importsOf(component: string): string[] {
  const frontmatter = /^---\r?\n([\s\S]*?)\r?\n---/.exec(component)?.[1] ?? '';
  const scripts = [...component.matchAll(/<script[^>]*>([\s\S]*?)<\/script>/g)].map(([, code]) => code ?? '');
  const code = [frontmatter, ...scripts].join('\n').replace(/\/\*[\s\S]*?\*\/|^\s*\/\/.*$/gm, '');
  const found = code.matchAll(
    /\b(?:import|export)\s+(?:[^'"`;]*?\sfrom\s*)?['"]([^'"]+)['"]|\bimport\(\s*['"]([^'"]+)['"]/g,
  );
  return [...found].map(([, named, dynamic]) => named ?? dynamic ?? '');
}

/** Imports of one component that break an arrow; `file` is its path from the repository's root, with slashes. */
export function wrongImports(file: string, component: string): string[] {
  return importsOf(component).filter((specifier) => {
    if (!specifier.startsWith('.')) return !packages.test(specifier);
    const target = posix.join(posix.dirname(file), specifier);
    return !/^(site\/src|shared)\//.test(target);
  });
}

/** Every component of the site with its text. */
export async function components(repository: string): Promise<{ file: string; text: string }[]> {
  const site = join(repository, 'site', 'src');
  const names = await readdir(site, { recursive: true });
  return Promise.all(
    names
      .filter((name) => name.endsWith('.astro'))
      .map(async (name) => ({
        file: relative(repository, join(site, name)).split(sep).join('/'),
        text: await readFile(join(site, name), 'utf8'),
      })),
  );
}
