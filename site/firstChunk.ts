import { fileURLToPath } from 'node:url';
import type { AstroUserConfig } from 'astro';

type Plugin = Extract<
  NonNullable<NonNullable<AstroUserConfig['vite']>['plugins']>[number],
  { readonly name: string }
>;

const fileOf = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

/** Where the crew's app begins, and the other scripts whose readers should not carry the crew's. */
const crew = fileOf('src/app/crew/main.tsx');
const others = [fileOf('src/verify/main.tsx')];

type Modules = (id: string) => { readonly importedIds: readonly string[] } | null;

/** Everything that a module imports before it can run, itself included. */
function carriedBy(start: string, moduleOf: Modules): Set<string> {
  const found = new Set([start]);
  for (const id of found) for (const next of moduleOf(id)?.importedIds ?? []) found.add(next);
  return found;
}

/**
 * What the crew's first screen needs travels as one file. Left alone the bundler makes some eighty of it, one for each
 * set of screens that share a module, and on a slow line each costs a turn of its own.
 */
export const firstChunk = (): Plugin => ({
  name: 'first-chunk',
  applyToEnvironment: ({ name }) => name === 'client',
  // Nobody imports from an entry: what it holds may stand in another file.
  options: (options) => ({ ...options, preserveEntrySignatures: false }),
  outputOptions(options) {
    let first: Set<string> | null = null;
    return {
      ...options,
      codeSplitting: {
        includeDependenciesRecursively: false,
        groups: [
          {
            name(id, bundle) {
              const moduleOf: Modules = (each) => bundle.getModuleInfo(each);
              if (first === null) {
                first = carriedBy(crew, moduleOf);
                // What starts the app stays by itself: the desk reads the same file and starts its own.
                first.delete(crew);
                for (const other of others) for (const each of carriedBy(other, moduleOf)) first.delete(each);
              }
              return first.has(id) ? 'first' : null;
            },
          },
        ],
      },
    };
  },
});
