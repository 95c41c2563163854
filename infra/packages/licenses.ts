import type { LockedPackage } from './lockFile.ts';

/**
 * Licenses that ask for no more than that the notice travels with the code. Names are SPDX's. What is not here fails a
 * test, until somebody has read it.
 */
export const allowed: ReadonlySet<string> = new Set([
  '0BSD',
  'Apache-2.0',
  'BlueOak-1.0.0',
  'BSD-2-Clause',
  'BSD-3-Clause',
  'CC0-1.0',
  'ISC',
  'MIT',
  'Python-2.0',
  'Unlicense',
]);

export interface Obligation {
  readonly name: string;
  /** Names of its packages. */
  readonly packages: RegExp;
  readonly licenses: readonly string[];
  /** What it asks for, and how that is met. */
  readonly met: string;
}

/** Packages whose license asks for more, each read for itself. */
export const obligations: readonly Obligation[] = [
  {
    name: 'libheif',
    packages: /^libheif-js$/,
    licenses: ['LGPL-3.0'],
    met: 'libheif and libde265 as WebAssembly, unchanged, in a file of its own beside the functions (`heifWorker.mjs`), where another build can take its place. It runs on the utility’s servers and is given to nobody. Whoever hands a built deployment on hands on `libheif-js.LICENSE.txt`, which lies beside it, and says where the source is: the package and the project it names.',
  },
  {
    name: 'libvips',
    packages: /^@img\/sharp-(libvips-|wasm32$|win32-)/,
    licenses: [
      'LGPL-3.0-or-later',
      'Apache-2.0 AND LGPL-3.0-or-later',
      'Apache-2.0 AND LGPL-3.0-or-later AND MIT',
    ],
    met: 'libvips and what it stands on, unchanged, a shared library that is loaded at run time from a folder of its own. Its `README.md` and `versions.json` travel with it and name each part with its license. A deployment takes the one for Linux on x86-64. The rest as for libheif.',
  },
  {
    name: 'Atkinson Hyperlegible',
    packages: /^@fontsource\/atkinson-hyperlegible$/,
    licenses: ['OFL-1.1'],
    met: 'The font, unchanged and under its own name, on the site and inside packets. `OFL.txt` travels with the files in the functions; each file carries the license in its own name table. It is not sold by itself.',
  },
  {
    name: 'Lightning CSS',
    packages: /^lightningcss(-|$)/,
    licenses: ['MPL-2.0'],
    met: 'Shortens style sheets while the site is built; unchanged, and nothing of it is in what comes out.',
  },
];

/** Licenses that a package does not name in its package.json, read from the file in it. */
const readByHand: Readonly<Record<string, string>> = {
  // `LICENSE` in the package: the MIT license, Devon Govett.
  'png-js': 'MIT',
};

export const licenseOf = (name: string, { license }: LockedPackage): string | null =>
  license ?? readByHand[name] ?? null;

/** Whether an SPDX expression is allowed: of what `OR` joins one, of what `AND` joins all. */
const isAllowed = (expression: string): boolean =>
  expression
    .replaceAll(/[()]/g, '')
    .split(' OR ')
    .some((all) => all.split(' AND ').every((one) => allowed.has(one.trim())));

/** What is wrong with a package's license, or null. */
export function licenseProblem(name: string, locked: LockedPackage): string | null {
  const license = licenseOf(name, locked);
  const said = `${name} ${locked.version}`;
  if (license === null)
    return `${said} names no license: read its files and add it to infra/packages/licenses.ts`;
  const known = obligations.find(({ packages }) => packages.test(name));
  if (known?.licenses.includes(license)) return null;
  return isAllowed(license) ? null : `${said} is under ${license}, which nobody has read yet`;
}
