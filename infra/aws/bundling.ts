import type { FunctionName } from './permissions.ts';

/**
 * How a handler becomes one file. The CDK app, the tests and the bench read the same settings, so that what is tried
 * and measured is what is deployed. The AWS SDK is bundled too: its version is then the one in package-lock.json and
 * not the runtime's of the day.
 */
export const handlerBundle = {
  target: 'node24',
  format: 'esm',
  minify: true,
  sourceMap: true,
  sourcesContent: false,
  mainFields: ['module', 'main'],
  // Some packages are CommonJS inside and call `require`, which an ES module does not have.
  banner: "import{createRequire as __cr}from'node:module';const require=__cr(import.meta.url);",
} as const;

export interface Beside {
  /** From the repository's root. */
  readonly from: string;
  readonly as: string;
}

/** Its license asks that whoever hands libheif on hands this on too (`docs/packages.md`). */
const heifLicense = { from: 'node_modules/libheif-js/LICENSE', as: 'libheif-js.LICENSE.txt' } as const;

/** What a bundle reads at run time and cannot hold, or has to travel with it; it lies beside it under this name. */
export const besideBundle: Partial<Record<FunctionName, readonly Beside[]>> = {
  packets: [{ from: 'functions/packets/fonts', as: 'fonts' }, heifLicense],
  packetJobs: [{ from: 'functions/packets/fonts', as: 'fonts' }, heifLicense],
  display: [heifLicense],
  publish: [{ from: 'site/dist', as: 'site' }],
};

/**
 * Threads that a handler starts: each a bundle of its own beside the handler's, because a bundle of one file has no second
 * one to start. `functions/network/program.ts` looks for it by this name.
 */
const heif = [{ from: 'functions/evidence/pictures/heifWorker.ts', as: 'heifWorker.mjs' }] as const;
export const programsOf: Partial<Record<FunctionName, readonly Beside[]>> = {
  packets: heif,
  packetJobs: heif,
  display: heif,
  network: [{ from: 'functions/network/worker.ts', as: 'worker.mjs' }],
};

/** The esbuild command that makes such a bundle, with the handlers' own settings. */
export function programCommand(root: string, { from, as }: Beside, output: string): string {
  const quoted = (text: string): string => JSON.stringify(text);
  const { target, format, mainFields, banner } = handlerBundle;
  return [
    quoted(`${root}/node_modules/.bin/esbuild`),
    quoted(from),
    '--bundle --minify --sourcemap --sources-content=false --platform=node --log-level=warning',
    `--target=${target} --format=${format} --main-fields=${mainFields.join(',')}`,
    `--banner:js=${quoted(banner)}`,
    `--outfile=${quoted(`${output}/${as}`)}`,
  ].join(' ');
}

/** Compiled for one system, and therefore not part of a bundle: the picture library with what it needs. */
const pictures = [
  'sharp',
  'detect-libc',
  'semver',
  '@img/colour',
  '@img/sharp-linux-x64',
  '@img/sharp-libvips-linux-x64',
] as const;
export const asInstalled: Partial<Record<FunctionName, readonly string[]>> = {
  packets: pictures,
  packetJobs: pictures,
  display: pictures,
};

/** Copies packages beside a bundle. One that is not installed (another system's machine) fails the deployment, not a packet. */
export const installedCommands = (root: string, packages: readonly string[], output: string): string[] =>
  packages.flatMap((name) => {
    const to = `${output}/node_modules/${name}`;
    return [
      `mkdir -p ${JSON.stringify(to)}`,
      `cp -RL ${JSON.stringify(`${root}/node_modules/${name}/.`)} ${JSON.stringify(to)}`,
    ];
  });
