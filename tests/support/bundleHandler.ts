import { cp, mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import { build } from 'esbuild';
import { asInstalled, besideBundle, handlerBundle, programsOf } from '../../infra/aws/bundling.ts';
import type { FunctionName } from '../../infra/aws/permissions.ts';

const repository = join(import.meta.dirname, '..', '..');
export const handlerFile = (name: string): string => join(repository, 'functions', name, 'handler.ts');

type Entry = ({ readonly file: string } | { readonly text: string }) & {
  /** Packages that are not bundled but lie beside, as they are installed. */
  readonly external?: readonly string[];
};

/** Bundles as the CDK app does. `text` is a handler given as its source, resolved from the repository's root. */
export async function bundleHandler(entry: Entry, outfile: string): Promise<void> {
  await build({
    ...('file' in entry
      ? { entryPoints: [entry.file] }
      : { stdin: { contents: entry.text, resolveDir: repository, loader: 'ts' } }),
    outfile,
    bundle: true,
    external: [...(entry.external ?? [])],
    platform: 'node',
    target: handlerBundle.target,
    format: handlerBundle.format,
    minify: handlerBundle.minify,
    mainFields: [...handlerBundle.mainFields],
    banner: { js: handlerBundle.banner },
    logLevel: 'error',
  });
}

/** A function as it lies in Lambda's task folder: the bundle and what it reads beside it. Answers the bundle's path. */
export async function deployTo(folder: string, name: FunctionName): Promise<string> {
  await mkdir(folder, { recursive: true });
  const outfile = join(folder, 'index.mjs');
  const external = asInstalled[name] ?? [];
  await bundleHandler({ file: handlerFile(name), external }, outfile);
  for (const name of external)
    await cp(join(repository, 'node_modules', name), join(folder, 'node_modules', name), {
      recursive: true,
      dereference: true,
    });
  for (const { from, as } of besideBundle[name] ?? [])
    await cp(join(repository, from), join(folder, as), { recursive: true });
  for (const { from, as } of programsOf[name] ?? [])
    await bundleHandler({ file: join(repository, from) }, join(folder, as));
  return outfile;
}
