import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { bundledPackages } from '../../packages/bundled.ts';
import { packageAt, readLock } from '../../packages/lockFile.ts';
import { npm } from '../../packages/npm.ts';
import { root } from '../../packages/root.ts';
import { completed, type Sbom } from '../../packages/sbom.ts';
import { buildSite, siteIsCurrent } from '../buildSite.ts';

/**
 * `npm run sbom`: writes the software bill of materials of what is deployed, CycloneDX 1.5 in JSON, to
 * `out/sbom.cdx.json`. Needs no network.
 */
const LIMIT_MS = 120_000;
const jsonAt = async <T>(...path: string[]): Promise<T> =>
  JSON.parse(await readFile(join(root, ...path), 'utf8')) as T;

if (!(await siteIsCurrent())) await buildSite();
const said = await npm(['sbom', '--sbom-format', 'cyclonedx', '--package-lock-only'], LIMIT_MS);
if (said === null) throw new Error('npm made no bill of materials; is everything installed (npm ci)?');
const { name, version } = await jsonAt<{ name: string; version: string }>('package.json');
const libvips = '@img/sharp-libvips-linux-x64';
const production = new Set(
  [...(await readLock())].flatMap(([key, locked]) =>
    locked.dev ? [] : [`${packageAt(key) ?? ''}@${locked.version}`],
  ),
);
const sbom = completed(JSON.parse(said) as Sbom, {
  product: { name, version },
  isProduction: (named, its) => production.has(`${named}@${its}`),
  places: await bundledPackages(),
  compiled: {
    [libvips]: await jsonAt('node_modules', libvips, 'versions.json'),
    // As their README files say it; neither package holds it as data.
    'libheif-js': { libheif: '1.23' },
    'epanet-js': { 'OWA-EPANET': '2.2' },
  },
});
const file = join('out', 'sbom.cdx.json');
await mkdir(join(root, 'out'), { recursive: true });
await writeFile(join(root, file), `${JSON.stringify(sbom, null, 2)}\n`);
console.log(`${file}: ${sbom.components.length} packages`);
