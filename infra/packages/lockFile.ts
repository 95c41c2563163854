import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { root } from './root.ts';

export interface LockedPackage {
  readonly version: string;
  /** Installed only to build or test. */
  readonly dev?: boolean;
  /** As its own package.json says it. */
  readonly license?: string;
}

/** What is installed, by where it lies (`node_modules/…`), from `package-lock.json`. */
export async function readLock(): Promise<ReadonlyMap<string, LockedPackage>> {
  const { packages } = JSON.parse(await readFile(join(root, 'package-lock.json'), 'utf8')) as {
    packages: Record<string, LockedPackage>;
  };
  return new Map(Object.entries(packages).filter(([key]) => key !== ''));
}

/** The package that a place in the lock file, or a file of it, belongs to: `node_modules/a/node_modules/@b/c/x.js` → `@b/c`. */
export function packageAt(path: string): string | null {
  const [, last] = /.*\bnode_modules\/((?:@[^/]+\/)?[^/]+)/.exec(path) ?? [];
  return last ?? null;
}
