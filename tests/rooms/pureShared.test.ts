import { join } from 'node:path';
import { ESLint } from 'eslint';
import tseslint from 'typescript-eslint';
import { describe, expect, it } from 'vitest';

const repository = join(import.meta.dirname, '..', '..');
// The planted text is no file of the project, so the rules that need its types stay out.
const eslint = new ESLint({
  cwd: repository,
  overrideConfig: [
    { ...tseslint.configs.disableTypeChecked, files: ['**/*.ts'] },
    { files: ['**/*.ts'], languageOptions: { parserOptions: { projectService: false } } },
  ],
});
const rulesBroken = async (file: string, code: string): Promise<(string | null)[]> => {
  const [result] = await eslint.lintText(`${code}\n`, { filePath: join(repository, file) });
  return [...new Set(result?.messages.map(({ ruleId }) => ruleId))];
};

describe('shared/ takes the clock, randomness and the machine as arguments', () => {
  it.each([
    ['the clock', 'export const at = Date.now();', 'no-restricted-syntax'],
    ['the clock as a date', 'export const at = new Date();', 'no-restricted-syntax'],
    ['the clock as a default', 'export const f = (at = new Date()) => at;', 'no-restricted-syntax'],
    ['the new clock', 'export const at = Temporal.Now.instant();', 'no-restricted-syntax'],
    ['randomness', 'export const r = Math.random();', 'no-restricted-syntax'],
    ['a random id', 'export const id = crypto.randomUUID();', 'no-restricted-syntax'],
    ['an id from a library', "import { v7 } from 'uuid';\nexport const id = v7();", 'no-restricted-syntax'],
    ['the machine’s locale', 'export const s = (12).toLocaleString();', 'no-restricted-syntax'],
    ['the environment', "export const home = process.env['HOME'];", 'no-restricted-globals'],
    ['the network', "export const got = fetch('/x');", 'no-restricted-globals'],
    ['a timer', 'setTimeout(() => 1, 5);', 'no-restricted-globals'],
    ['a file', "import { readFile } from 'node:fs';\nexport { readFile };", 'no-restricted-imports'],
    ['a file, old style', "import { readFile } from 'fs';\nexport { readFile };", 'no-restricted-imports'],
    ['a store', "import { S3 } from '@aws-sdk/client-s3';\nexport { S3 };", 'no-restricted-imports'],
    ['the console', "console.log('x');", 'no-console'],
  ])('%s', async (_, code, rule) => {
    expect(await rulesBroken('shared/planted.ts', code)).toEqual([rule]);
  });

  it('may read a given instant and compute a hash', async () => {
    const code = "export const at = new Date('2026-03-04T02:10:00Z');\nexport const h = crypto.subtle;";
    expect(await rulesBroken('shared/planted.ts', code)).toEqual([]);
  });

  it('is stricter than a handler, which has a clock but prints nothing of its own', async () => {
    expect(await rulesBroken('functions/records/planted.ts', 'export const at = new Date();')).toEqual([]);
    expect(await rulesBroken('functions/records/planted.ts', "console.log('x');")).toEqual(['no-console']);
  });
});
