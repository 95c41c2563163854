import { ImportRefused } from '../../../shared/inventory/refused.ts';
import { problem, type Problem } from '../../../shared/problems/problem.ts';
import { isLocale, type Locale } from '../../../shared/words/index.ts';
import { readCommandLine } from '../commandLine.ts';

/** What the command line asks for. */
export interface NetworkOptions {
  readonly file: string;
  readonly datedOn: string;
  readonly crs: string | null;
  /** File of the list "hydrantId,nodeId". */
  readonly nodes: string | null;
  readonly withinFt: number;
  readonly hour: number;
  readonly by: string | null;
  readonly dryRun: boolean;
  readonly locale: Locale;
}

const valued = ['--dated', '--crs', '--nodes', '--within', '--hour', '--by', '--lang'] as const;
const flags = ['--dry-run'];
type Valued = (typeof valued)[number];

const isDay = (text: string): boolean =>
  /^\d{4}-\d{2}-\d{2}$/.test(text) &&
  !Number.isNaN(Date.parse(`${text}T00:00:00Z`)) &&
  new Date(`${text}T00:00:00Z`).toISOString().startsWith(text);

/**
 * Reads the command line.
 *
 * @returns 'help' when that is what was asked for
 * @throws ImportRefused with every problem of the command line at once
 */
export function readNetworkOptions(argv: readonly string[], defaultLocale: Locale): NetworkOptions | 'help' {
  const problems: Problem[] = [];
  const line = readCommandLine(argv, { flags, valued });
  const { files, on } = line;
  const given = new Map(line.given);
  if (on.has('--help')) return 'help';
  for (const option of line.unknown) problems.push(problem('network-option-unknown', option, { option }));
  for (const option of line.valueless)
    problems.push(problem('network-option-needs-value', option, { option }));
  if (files.length === 0) problems.push(problem('network-no-file', 'FILE'));
  if (files.length > 1) problems.push(problem('network-one-file', 'FILE'));

  const number = (option: Valued, usual: number, minimum: number, maximum: number): number => {
    const text = given.get(option);
    if (text === undefined) return usual;
    const value = Number(text);
    if (text.trim() === '' || !(value >= minimum && value <= maximum))
      problems.push(problem('network-number-wrong', option, { value: text, minimum, maximum }));
    return value;
  };
  const datedOn = given.get('--dated');
  if (datedOn === undefined) problems.push(problem('network-needs-date', '--dated'));
  else if (!isDay(datedOn)) problems.push(problem('network-date-wrong', '--dated', { value: datedOn }));
  if (!given.has('--crs') && !given.has('--nodes')) problems.push(problem('network-needs-rule', '--crs'));
  const lang = given.get('--lang') ?? defaultLocale;
  if (!isLocale(lang)) problems.push(problem('inventory-no-such-language', '--lang', { value: lang }));
  const withinFt = number('--within', 300, 1, 5000);
  const hour = number('--hour', 0, 0, 8760);
  if (problems.length > 0) throw new ImportRefused(...problems);
  return {
    file: files[0] ?? '',
    datedOn: datedOn ?? '',
    crs: given.get('--crs') ?? null,
    nodes: given.get('--nodes') ?? null,
    withinFt,
    hour,
    by: given.get('--by') ?? null,
    dryRun: on.has('--dry-run'),
    locale: isLocale(lang) ? lang : defaultLocale,
  };
}
