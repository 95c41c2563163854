import { ImportRefused } from '../../../../shared/inventory/refused.ts';
import { problem, type Problem } from '../../../../shared/problems/problem.ts';
import { isLocale, type Locale } from '../../../../shared/words/index.ts';
import { readCommandLine } from '../../commandLine.ts';

/** What the command line asks for. */
export interface ModelOptions {
  readonly file: string;
  readonly dryRun: boolean;
  readonly by: string | null;
  readonly locale: Locale;
}

const valued = ['--by', '--lang'];
const flags = ['--dry-run', '--example'];

/**
 * Reads the command line.
 *
 * @returns 'help' or 'example' when that is what was asked for
 * @throws ImportRefused with every problem of the command line at once
 */
export function readModelOptions(
  argv: readonly string[],
  defaultLocale: Locale,
): ModelOptions | 'help' | 'example' {
  const problems: Problem[] = [];
  const line = readCommandLine(argv, { flags, valued });
  const { files, on } = line;
  const given = new Map(line.given);
  for (const option of line.unknown) problems.push(problem('models-option-unknown', option, { option }));
  for (const option of line.valueless)
    problems.push(problem('models-option-needs-value', option, { option }));
  if (on.has('--help')) return 'help';
  if (on.has('--example')) return 'example';
  if (files.length === 0) problems.push(problem('models-no-file', 'FILE'));
  if (files.length > 1) problems.push(problem('models-one-file', 'FILE'));
  const lang = given.get('--lang') ?? defaultLocale;
  if (!isLocale(lang)) problems.push(problem('inventory-no-such-language', '--lang', { value: lang }));
  if (problems.length > 0) throw new ImportRefused(...problems);
  return {
    file: files[0] ?? '',
    dryRun: on.has('--dry-run'),
    by: given.get('--by') ?? null,
    locale: isLocale(lang) ? lang : defaultLocale,
  };
}
