import { execFile } from 'node:child_process';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { Spec, Validation } from '@cyclonedx/cyclonedx-library';
import { beforeAll, describe, expect, it } from 'vitest';
import { bundledPackages } from '../../../infra/packages/bundled.ts';
import { completed, type Sbom } from '../../../infra/packages/sbom.ts';
import { ensureBuilt } from '../../support/builtSite.ts';

const root = join(import.meta.dirname, '..', '..', '..');
/** CycloneDX's own library with the published schema. */
const problemsOf = (text: string) => new Validation.JsonStrictValidator(Spec.Version.v1dot5).validate(text);

describe('the bill of materials', () => {
  let text: string;
  let bill: Sbom;
  beforeAll(async () => {
    await ensureBuilt();
    await promisify(execFile)(process.execPath, ['infra/local/commands/sbom.ts'], { cwd: root });
    text = await readFile(join(root, 'out', 'sbom.cdx.json'), 'utf8');
    bill = JSON.parse(text) as Sbom;
  }, 400_000);
  const placesOf = (name: string): string[] =>
    bill.components
      .find((one) => one.name === name)!
      .properties!.filter((one) => one.name === 'hydrant-strike-ledger:in')
      .map(({ value }) => value);

  it('is what the standard says, by its own schema', async () => {
    expect(await problemsOf(text)).toBeNull();
    expect(await problemsOf(text.replace('"CycloneDX"', '"Other"'))).not.toBeNull();
  });

  it('is of this product, whatever the folder is called', () => {
    expect(bill.metadata.component.name).toBe('hydrant-strike-ledger');
  });

  it('says where a package ends up', () => {
    expect(placesOf('preact')).toEqual(['browser']);
    expect(placesOf('zod')).toEqual(expect.arrayContaining(['functions:submissions', 'browser', 'renderer']));
    expect(placesOf('epanet-js')).toEqual(['functions:network']);
    expect(placesOf('aws-cdk-lib')).toEqual(['build']);
  });

  it('names what is compiled into a package', () => {
    const parts = (name: string) =>
      bill.components.find((one) => one.name === name)?.components?.map((part) => part.name) ?? [];
    expect(parts('libheif-js')).toEqual(['libheif']);
    expect(parts('epanet-js')).toEqual(['OWA-EPANET']);
    expect(parts('@img/sharp-libvips-linux-x64')).toContain('vips');
  });

  it('holds every package that is deployed, and nothing that is only for tests', async () => {
    const names = bill.components.map(({ name }) => name);
    expect([...(await bundledPackages()).keys()].filter((name) => !names.includes(name))).toEqual([]);
    expect(names).not.toContain('vitest');
    expect(names).not.toContain('dynalite');
  }, 120_000);
});

describe('completing a bill', () => {
  const component = (name: string) => ({ type: 'library', 'bom-ref': `${name}@1`, name, version: '1' });
  const npms: Sbom = {
    bomFormat: 'CycloneDX',
    specVersion: '1.5',
    metadata: { component: component('folder') },
    components: [component('a'), component('tool'), component('b')],
    dependencies: [
      { ref: 'folder@1', dependsOn: ['a@1', 'tool@1'] },
      { ref: 'a@1', dependsOn: ['b@1'] },
      { ref: 'tool@1', dependsOn: ['b@1'] },
      { ref: 'b@1' },
    ],
  };
  const of = (value: string) => ({ properties: [{ name: 'hydrant-strike-ledger:in', value }] });

  it('leaves tools out, and whatever leads to them, and says where the rest is', () => {
    const places = new Map([['b', { functions: ['submissions'], browser: false, renderer: false }]]);
    const isProduction = (name: string): boolean => name !== 'tool';
    const product = { name: 'product', version: '2' };
    expect(completed(npms, { product, isProduction, places, compiled: { b: { zlib: '1.3' } } })).toEqual({
      ...npms,
      metadata: { component: { ...component('folder'), ...product } },
      components: [
        { ...component('a'), ...of('build') },
        {
          ...component('b'),
          ...of('functions:submissions'),
          components: [{ type: 'library', 'bom-ref': 'b@1#zlib', name: 'zlib', version: '1.3' }],
        },
      ],
      dependencies: [
        { ref: 'folder@1', dependsOn: ['a@1'] },
        { ref: 'a@1', dependsOn: ['b@1'] },
        { ref: 'b@1', dependsOn: [] },
      ],
    });
  });
});
