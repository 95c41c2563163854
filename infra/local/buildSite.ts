import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { glob, readFile, rm, writeFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { RefusedStart } from './refusedStart.ts';

export const projectRoot = join(dirname(fileURLToPath(import.meta.url)), '..', '..');

/** What `npm run build` makes: files for the browser, and the bundle that renders public pages. */
export const builtSite = {
  client: join(projectRoot, 'site', 'dist', 'client'),
  server: join(projectRoot, 'site', 'dist', 'server', 'entry.mjs'),
};
const stamp = join(projectRoot, 'site', 'dist', 'built-from.sha256');

/** Everything the built site depends on. */
const sources = [
  'site/src/**',
  'site/public/**',
  'site/*.{ts,json}',
  'shared/**/*.{ts,json}',
  'package-lock.json',
];

/** One hash over the names and bytes of all sources, so that a change of either is seen, whatever the clock says. */
async function hashOfSources(): Promise<string> {
  const names: string[] = [];
  for await (const entry of glob(sources, { cwd: projectRoot, withFileTypes: true }))
    if (entry.isFile()) names.push(join(entry.parentPath, entry.name));
  const hash = createHash('sha256');
  for (const name of names.sort()) {
    const bytes = await readFile(name);
    hash.update(`${name.slice(projectRoot.length)}\0${bytes.length}\0`).update(bytes);
  }
  return hash.digest('hex');
}

/** Whether the site has to be built: its sources have changed since, or it was never built. */
export async function siteIsCurrent(): Promise<boolean> {
  const built = await readFile(stamp, 'utf8').catch(() => null);
  return built !== null && built === (await hashOfSources());
}

/** Builds the site with Astro. Refuses with the builder's own words when it fails. */
export async function buildSite(): Promise<void> {
  const hash = await hashOfSources();
  await rm(stamp, { force: true });
  const astro = join(
    dirname(createRequire(import.meta.url).resolve('astro/package.json')),
    'bin',
    'astro.mjs',
  );
  const { code, output } = await run([astro, 'build', '--root', 'site', '--silent']);
  if (code !== 0) throw new RefusedStart('command.build-failed', { output });
  await writeFile(stamp, hash);
}

function run(args: readonly string[]): Promise<{ code: number | null; output: string }> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, args, {
      cwd: projectRoot,
      env: { ...process.env, ASTRO_TELEMETRY_DISABLED: '1', NODE_ENV: 'production' },
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    let output = '';
    for (const stream of [child.stdout, child.stderr])
      stream.on('data', (chunk: Buffer) => (output += chunk.toString()));
    child.once('error', reject);
    child.once('close', (code) => resolve({ code, output: output.trim() }));
  });
}
