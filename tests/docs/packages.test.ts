import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { builtSite } from '../../infra/local/buildSite.ts';
import { bundledPackages, sitePackagesFile } from '../../infra/packages/bundled.ts';
import { licenseProblem } from '../../infra/packages/licenses.ts';
import { packageAt, readLock } from '../../infra/packages/lockFile.ts';
import { ensureBuilt } from '../support/builtSite.ts';
import { holdsGenerated } from './holdsGenerated.ts';
import { buildOnlyTable, licenseTable, obligationList } from './licenses.ts';

const page = 'docs/packages.md';

describe('the page of licenses', () => {
  beforeAll(() => ensureBuilt(), 300_000);

  it('names every package that is deployed', async () => {
    const [bundled, lock] = await Promise.all([bundledPackages(), readLock()]);
    holdsGenerated(page, 'licenses', licenseTable(bundled, lock));
    holdsGenerated(page, 'obligations', obligationList());
    holdsGenerated(page, 'build-only', buildOnlyTable(bundled, lock));
  }, 240_000);

  it('and the site brings the texts of what a browser loads', () => {
    const { client } = JSON.parse(readFileSync(sitePackagesFile, 'utf8')) as { client: string[] };
    const text = readFileSync(join(builtSite.client, '_assets', 'licenses.txt'), 'utf8');
    const parts = new Map(
      text
        .split(`${'-'.repeat(72)}\n`)
        .map((part) => [/^(?:The scripts.*\n)?\n*(\S+)\n/.exec(part)?.[1], part]),
    );
    expect([...parts.keys()].sort()).toEqual(client);
    for (const [name, part] of parts)
      expect(part, name).toMatch(
        /Permission is hereby granted|Permission to use, copy|Redistribution and use|Apache License|OPEN FONT LICENSE/i,
      );
  });
});

describe('licenses', () => {
  it('of everything that is installed and not only for tests have been read', async () => {
    const problems = [...(await readLock())].flatMap(([key, locked]) => {
      const name = packageAt(key);
      return locked.dev || name === null ? [] : (licenseProblem(name, locked) ?? []);
    });
    expect(problems).toEqual([]);
  });

  it.each([
    ['a', 'MIT', null],
    ['a', 'MIT OR GPL-3.0-only', null],
    ['a', '(BSD-3-Clause AND MIT)', null],
    ['a', 'GPL-3.0-only', 'nobody has read'],
    ['a', 'MIT AND GPL-3.0-only', 'nobody has read'],
    ['a', undefined, 'names no license'],
    ['libheif-js', 'LGPL-3.0', null],
    ['libheif-js', 'AGPL-3.0', 'nobody has read'],
    // The same license in another package is another question.
    ['a', 'LGPL-3.0', 'nobody has read'],
    ['@img/sharp-libvips-linux-x64', 'LGPL-3.0-or-later', null],
  ])('%s under %s: %s', (name, license, says) => {
    const problem = licenseProblem(name, { version: '1.0.0', ...(license === undefined ? {} : { license }) });
    if (says === null) expect(problem).toBeNull();
    else expect(problem).toContain(says);
  });
});
