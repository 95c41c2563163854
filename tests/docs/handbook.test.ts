import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { permissions } from '../../infra/aws/permissions.ts';
import { deploymentSettings } from '../../infra/aws/settings.ts';
import { resourcesOf, synthesise } from '../infra/aws/synthesised.ts';
import { repository } from './generated.ts';

/**
 * What the handbook for operators names must be there: who is woken at night by an alarm follows it to the letter, and
 * nobody has deployed it yet who would have noticed.
 */
const { data, service } = synthesise();
const folder = join(repository, 'docs', 'operations');
const pages = readdirSync(folder).filter((name) => name.endsWith('.md'));
const read = (name: string): string => readFileSync(join(repository, name), 'utf8');
const page = (name: string): string => readFileSync(join(folder, name), 'utf8');
const handbook = pages.map((name) => [name, page(name)] as const);
/** Every match of the first group, with the page that it stands on. */
const named = (pattern: RegExp): [string, string][] =>
  handbook.flatMap(([name, text]) =>
    [...text.matchAll(pattern)].map(([, found]): [string, string] => [name, found ?? '']),
  );

/** The text of a folder's sources, for names that are written as they are. */
const sources = (of: string): string =>
  readdirSync(join(repository, of), { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts'))
    .map((name) => read(join(of, name)))
    .join('\n');
const code = ['functions', 'shared', 'infra/local', 'infra/aws'].map(sources).join('\n');

describe('alarms and pages', () => {
  const alarms = Object.entries(resourcesOf(service)).flatMap(([id, { Type, Properties }]) =>
    Type === 'AWS::CloudWatch::Alarm'
      ? [[/^Watch(\w+)Alarm/.exec(id)?.[1] ?? id, Properties['AlarmDescription'] as string] as const]
      : [],
  );

  it.each(alarms)('%s is explained on the page that it names', (name, description) => {
    const [, where] = /docs\/operations\/([\w-]+\.md)/.exec(description) ?? [];
    expect(page(where ?? '')).toMatch(new RegExp(`_Alarms:[^_]*\`${name}\``));
    // And again where it is said what to do, by itself or with those it belongs to.
    expect(
      page(where ?? '')
        .split('_Alarms:')[1]
        ?.match(new RegExp(name, 'g'))?.length,
    ).toBeGreaterThan(0);
  });

  it('no page explains an alarm that is not there', () => {
    const explained = handbook.flatMap(([, text]) =>
      [...(/_Alarms: ([^_]*)_/.exec(text)?.[1] ?? '').matchAll(/`(\w+)`/g)].map(([, name]) => name ?? ''),
    );
    expect(explained.sort()).toEqual(alarms.map(([name]) => name).sort());
  });
});

/** Every field of the settings, by its path; lists are passed through. */
function* fields(schema: unknown, path: readonly string[] = []): Generator<readonly string[]> {
  const { def, shape } = schema as {
    def: { type: string; innerType?: unknown; in?: unknown; element?: unknown; options?: unknown[] };
    shape: Record<string, unknown>;
  };
  const inner = def.innerType ?? def.in ?? def.element;
  if (inner !== undefined) yield* fields(inner, path);
  for (const option of def.options ?? []) if (typeof option === 'object') yield* fields(option, path);
  if (def.type !== 'object') return;
  for (const [name, below] of Object.entries(shape)) {
    yield [...path, name];
    yield* fields(below, [...path, name]);
  }
}

describe('settings', () => {
  /** Settings of several screens have a page of their own. */
  const elsewhere: Record<string, string> = {
    'utility.clocks': 'docs/clocks.md',
    'utility.claimRules.fullPayment.confirmedBy': 'docs/clocks.md',
    'utility.claimRules.depreciation.confirmedBy': 'docs/clocks.md',
    'utility.limitation': 'docs/clocks.md',
    'utility.digest': 'docs/clocks.md',
    'utility.dispatchMessages': 'docs/dispatch.md',
    'utility.publishing.alerts': 'docs/public-data.md',
  };
  const all = [...new Set([...fields(deploymentSettings)].map((path) => path.join('.')))];

  it('are many', () => {
    expect(all.length).toBeGreaterThan(100);
  });

  it.each(all)('%s is documented', (path) => {
    const key = path.split('.').at(-1) ?? '';
    const [, other] = Object.entries(elsewhere).find(([start]) => path.startsWith(`${start}.`)) ?? [];
    const where = other ?? 'docs/operations/settings.md';
    // As code, by itself or in a path or an example: `letterhead`, `evidence.lockedDays`, `{"by": "date"}`.
    const code = [...read(where).matchAll(/```[^]*?```|`[^`\n]+`/g)].join(' ');
    expect(code).toMatch(new RegExp(`\\b${key}\\b`));
  });
});

describe('what is named', () => {
  it('outputs are those of the stacks', () => {
    const outputs = [data, service].flatMap((template) =>
      Object.keys((template.toJSON() as { Outputs: object }).Outputs),
    );
    const asked = named(/outputs?(?: of the (?:data|service) stack)? (?:\()?`(\w+)`/g);
    expect(asked.length).toBeGreaterThan(3);
    expect(asked.filter(([, name]) => name !== 'nextN' && !outputs.includes(name))).toEqual([]);
    expect(outputs).toEqual(expect.arrayContaining(['submissionsTableName', 'next1']));
  });

  it('functions are those that are deployed', () => {
    const asked = named(/log of (?:the function )?`(\w+)`/g);
    expect(asked.length).toBeGreaterThan(3);
    expect(asked.filter(([, name]) => !(name in permissions))).toEqual([]);
  });

  it('lines of the log are written somewhere', () => {
    const asked = [
      ...named(/\$\.event = "([\w-]+)"/g),
      ...named(/`((?:[a-z]+-)+(?:kept|failed|behind|made|checked|unavailable))`/g),
    ];
    expect(asked.length).toBeGreaterThan(5);
    expect(asked.filter(([, event]) => !code.includes(`'${event}'`))).toEqual([]);
  });

  it('variables are read by a command or a function', () => {
    const asked = named(/\b((?:[A-Z]+_)+(?:URL|TABLE|TOKEN|CONCURRENCY|ENDPOINT))\b/g);
    expect(asked.length).toBeGreaterThan(8);
    expect(asked.filter(([, name]) => !code.includes(name))).toEqual([]);
  });

  it('files are there', () => {
    const asked = named(/((?:infra|shared|functions|site|tests|docs)\/[\w./-]+\.(?:ts|md|json|mjs))\b/g);
    // What the operator makes from the example.
    const made = ['infra/aws/settings.json'];
    expect(asked.length).toBeGreaterThan(3);
    expect(asked.filter(([, file]) => !made.includes(file) && !existsSync(join(repository, file)))).toEqual(
      [],
    );
  });

  it('every page is reached from the first', () => {
    const first = page('README.md');
    expect(pages.filter((name) => name !== 'README.md' && !first.includes(`(${name})`))).toEqual([]);
  });
});
