import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { factKinds, forms } from '../../shared/submissions/kinds.ts';
import { serverWritten } from '../../shared/access.ts';
import { say } from '../../shared/words/index.ts';

export const repository = join(import.meta.dirname, '..', '..');
const code = (text: string): string => `\`${text}\``;

/** The table of kinds, from the forms themselves. A manager may do everything and is left out. */
export function kindsTable(): string {
  const rows = factKinds.map((kind) => {
    const { subjects, writers, readers, personal } = forms[kind];
    const but = (roles: readonly string[]): string =>
      roles.filter((role) => role !== 'manager').join(', ') || 'manager';
    const written = serverWritten.includes(kind) ? 'the server' : but(writers);
    const fields = personal.length === 0 ? '—' : personal.map(code).join(', ');
    return `| ${code(kind)} | ${say('en', `kind.${kind}`)} | ${subjects.join(', ')} | ${written} | ${but(readers)} | ${fields} |`;
  });
  return [
    '| kind | what | about | written by | read by | personal |',
    '|---|---|---|---|---|---|',
    ...rows,
  ].join('\n');
}

/** Every decision page, by number, with its title. */
export function decisionList(): string {
  const folder = join(repository, 'docs', 'decisions');
  return readdirSync(folder)
    .filter((name) => /^\d{4}-.*\.md$/.test(name))
    .sort()
    .map((name) => {
      const [, title = ''] = /^# \d{4}[:.]? +(.+)$/m.exec(readFileSync(join(folder, name), 'utf8')) ?? [];
      return `- [${name.slice(0, 4)}](${name}) ${title}`;
    })
    .join('\n');
}

/** A page with the part between its markers made anew. */
export function withGenerated(page: string, name: string, part: string): string {
  const [start, end] = [`<!-- ${name}:start -->`, `<!-- ${name}:end -->`];
  const [from, to] = [page.indexOf(start), page.indexOf(end)];
  if (from < 0 || to < from) throw new Error(`the markers ${start} and ${end} are missing`);
  return `${page.slice(0, from + start.length)}\n${part}\n${page.slice(to)}`;
}
