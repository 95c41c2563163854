import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { components, wrongImports } from './astroImports.ts';

const repository = join(import.meta.dirname, '..', '..');
const page = (imports: string, script = ''): string =>
  `---\n${imports}\n---\n<p>import x from '../../../functions/no.ts'</p>\n<script>${script}</script>\n`;

describe('what an Astro component may import', () => {
  it.each([
    ['its own room', page("import Layout from '../layouts/Page.astro';"), []],
    ['the domain', page("import { say } from '../../../shared/words/index.ts';"), []],
    [
      'a type of the domain',
      page("import type { Hydrant } from '../../../shared/inventory/hydrant.ts';"),
      [],
    ],
    ['a face', page("import '@fontsource/atkinson-hyperlegible/400.css';"), []],
    [
      'a handler',
      page("import { handler } from '../../../functions/records/handler.ts';"),
      ['../../../functions/records/handler.ts'],
    ],
    [
      'a handler, lazily',
      page("const h = await import('../../../functions/a.ts');"),
      ['../../../functions/a.ts'],
    ],
    [
      'a re-export of infra',
      page("export { x } from '../../../infra/local/x.ts';"),
      ['../../../infra/local/x.ts'],
    ],
    [
      'a store client in a script block',
      page('', "import { S3 } from '@aws-sdk/client-s3';"),
      ['@aws-sdk/client-s3'],
    ],
    ['node', page("import fs from 'node:fs';"), ['node:fs']],
  ])('%s', (_, text, wrong) => {
    expect(wrongImports('site/src/pages/status.astro', text)).toEqual(wrong);
  });

  it.skipIf(!existsSync(join(repository, 'site', 'src')))('holds in this repository', async () => {
    const wrong = (await components(repository)).flatMap(({ file, text }) =>
      wrongImports(file, text).map((specifier) => `${file}: ${specifier}`),
    );
    expect(wrong).toEqual([]);
  });
});
