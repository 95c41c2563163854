import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { decisionList, kindsTable, repository } from './generated.ts';
import { holdsGenerated } from './holdsGenerated.ts';

const read = (file: string): string => readFileSync(join(repository, file), 'utf8');

describe('what is made from the code', () => {
  it('the table of kinds is current', () => {
    holdsGenerated('docs/data-model.md', 'kinds', kindsTable());
  });
  it('the list of decisions is complete', () => {
    holdsGenerated('docs/decisions/README.md', 'decisions', decisionList());
  });
});

const pages = [
  'README.md',
  'DEVELOPERS.md',
  'CHANGELOG.md',
  ...readdirSync(join(repository, 'docs'), { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.md'))
    .map((name) => `docs/${name.replaceAll('\\', '/')}`),
].filter((file) => existsSync(join(repository, file)));

describe.each(pages)('%s', (file) => {
  const text = read(file);

  it('leads nowhere that is not there', () => {
    const links = [...text.matchAll(/\]\(([^)#\s]+)(?:#[^)]*)?\)/g)].map(([, target]) => target ?? '');
    const inside = links.filter((target) => !/^[a-z]+:/.test(target));
    expect(inside.filter((target) => !existsSync(join(repository, dirname(file), target)))).toEqual([]);
  });

  it('names commands that exist', () => {
    const { scripts } = JSON.parse(read('package.json')) as { scripts: Record<string, string> };
    const named = [...text.matchAll(/\bnpm run (?:-s )?([a-z][\w:-]*)/g)].map(([, name]) => name ?? '');
    expect(named.filter((name) => !(name in scripts))).toEqual([]);
  });
});

describe('each decision', () => {
  it.each(pages.filter((file) => /^docs\/decisions\/\d/.test(file)))(
    '%s is one page of three parts',
    (file) => {
      const text = read(file);
      expect(text).toMatch(/^# \d{4}[.:]? .+/);
      for (const part of ['Context', 'Decision', 'Consequences'])
        expect(text).toMatch(new RegExp(`^(## ${part}|\\*\\*${part}\\.?\\*\\*)`, 'm'));
      expect(text.split('\n').length).toBeLessThan(70);
    },
  );

  it('has a number of its own', () => {
    const numbers = pages
      .filter((file) => /^docs\/decisions\/\d/.test(file))
      .map((file) => file.slice(15, 19));
    expect(numbers.filter((number, index) => numbers.indexOf(number) !== index)).toEqual([]);
  });
});

describe('the two commands', () => {
  it('stand in the README as CI runs them', () => {
    expect(read('README.md')).toContain('npm ci && npm start');
    expect(read('README.md')).toContain('npm ci && npm test');
    expect(read('.ci/run')).toContain('npm ci && npm test');
  });
});
