import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { build } from 'esbuild';
import { asInstalled, handlerBundle, programsOf } from '../aws/bundling.ts';
import { permissions, type FunctionName } from '../aws/permissions.ts';
import { packageAt } from './lockFile.ts';
import { root } from './root.ts';

/** Where a package ends up: in which functions, in what a browser loads, in what renders the public pages. */
export interface Places {
  readonly functions: readonly string[];
  readonly browser: boolean;
  readonly renderer: boolean;
}

/** What `site/packagesIn.ts` leaves beside a built site. */
export const sitePackagesFile = join(root, 'site', 'dist', 'packages.json');

/** Every package of which code leaves this repository, and where to. Needs a built site. */
export async function bundledPackages(): Promise<ReadonlyMap<string, Places>> {
  const functions = await inFunctions();
  const { client, server } = JSON.parse(await readFile(sitePackagesFile, 'utf8')) as {
    client: string[];
    server: string[];
  };
  return new Map(
    [...new Set([...functions.keys(), ...client, ...server])].sort().map((name) => [
      name,
      {
        functions: [...(functions.get(name) ?? [])],
        browser: client.includes(name),
        renderer: server.includes(name),
      },
    ]),
  );
}

/** What esbuild takes into each function and its threads, and what lies beside as it is installed: package → functions. */
async function inFunctions(): Promise<ReadonlyMap<string, ReadonlySet<FunctionName>>> {
  const entries = (Object.keys(permissions) as FunctionName[]).flatMap((name) =>
    [`functions/${name}/handler.ts`, ...(programsOf[name] ?? []).map(({ from }) => from)].map(
      (file) => [file, name] as const,
    ),
  );
  const { metafile } = await build({
    absWorkingDir: root,
    entryPoints: [...new Set(entries.map(([file]) => file))],
    outdir: 'none',
    write: false,
    metafile: true,
    bundle: true,
    external: [...new Set(Object.values(asInstalled).flat())],
    platform: 'node',
    target: handlerBundle.target,
    format: handlerBundle.format,
    mainFields: [...handlerBundle.mainFields],
    logLevel: 'error',
  });
  const found = new Map<string, Set<FunctionName>>();
  const put = (one: string, name: FunctionName): void =>
    void found.set(one, (found.get(one) ?? new Set()).add(name));
  for (const { entryPoint, inputs } of Object.values(metafile.outputs))
    for (const [file, name] of entries) {
      if (file !== entryPoint) continue;
      // What was looked at and left out by the bundler is no part of it.
      const used = Object.entries(inputs).filter(([, { bytesInOutput }]) => bytesInOutput > 0);
      for (const one of [...used.flatMap(([path]) => packageAt(path) ?? []), ...(asInstalled[name] ?? [])])
        put(one, name);
    }
  return found;
}
