import { acceptable, type Acceptable, type ImportChoices } from '../../../shared/inventory/choices.ts';
import {
  fieldRules,
  importFields,
  isImportField,
  type ImportField,
} from '../../../shared/inventory/mapping/fields.ts';
import { ImportRefused } from '../../../shared/inventory/refused.ts';
import { readUnit, type SourceUnit } from '../../../shared/inventory/values/quantity.ts';
import { problem, type Problem } from '../../../shared/problems/problem.ts';
import { isLocale, type Locale } from '../../../shared/words/index.ts';
import { readCommandLine } from '../commandLine.ts';

/** What the command line asks for. */
export interface ImportOptions {
  readonly file: string;
  readonly dryRun: boolean;
  readonly json: boolean;
  readonly report: string | null;
  readonly allowFewer: boolean;
  readonly by: string | null;
  readonly locale: Locale;
  readonly choices: ImportChoices;
}

/** Options that take a value, with its form for the person who left it out. */
const valued: Readonly<Record<string, string>> = {
  '--crs': 'EPSG:2263',
  '--map': 'hydrantId=COLUMN',
  '--unit': 'mainSizeIn=mm',
  '--date-order': 'mdy | dmy',
  '--accept': acceptable.join(' | '),
  '--by': 'NAME',
  '--report': 'FILE.csv',
  '--lang': 'en | es',
};
const flags = ['--dry-run', '--json', '--allow-fewer'];

/**
 * Reads the command line.
 *
 * @returns 'help' when that is what was asked for
 * @throws ImportRefused with every problem of the command line at once
 */
export function readOptions(
  argv: readonly string[],
  today: string,
  defaultLocale: Locale,
): ImportOptions | 'help' {
  const problems: Problem[] = [];
  const { files, given, on, unknown, valueless } = readCommandLine(argv, {
    flags,
    valued: Object.keys(valued),
  });
  for (const option of unknown) problems.push(problem('inventory-unknown-option', option, { option }));
  for (const option of valueless)
    problems.push(problem('inventory-option-needs-value', option, { option, form: valued[option] ?? '' }));
  if (on.has('--help')) return 'help';
  if (files.length === 0) problems.push(problem('inventory-no-file', 'FILE'));
  if (files.length > 1) problems.push(problem('inventory-one-file', 'FILE'));
  const all = (option: string): string[] =>
    given.filter(([name]) => name === option).map(([, value]) => value);
  const last = (option: string): string | null => all(option).at(-1) ?? null;

  const map: Partial<Record<ImportField, readonly string[]>> = {};
  for (const value of all('--map')) readMap(value, map, problems);
  const units: Partial<Record<ImportField, SourceUnit>> = {};
  for (const value of all('--unit')) readFieldUnit(value, units, problems);
  const accept = new Set<Acceptable>();
  for (const value of all('--accept').flatMap((list) => list.split(','))) {
    const known = acceptable.find((each) => each === value.trim());
    if (known) accept.add(known);
    else
      problems.push(
        problem('inventory-not-acceptable', '--accept', { value, values: acceptable.join(', ') }),
      );
  }
  const dateOrder = last('--date-order');
  if (dateOrder !== null && dateOrder !== 'mdy' && dateOrder !== 'dmy')
    problems.push(problem('inventory-no-such-date-order', '--date-order', { value: dateOrder }));
  const lang = last('--lang');
  if (lang !== null && !isLocale(lang))
    problems.push(problem('inventory-no-such-language', '--lang', { value: lang }));
  if (problems.length > 0) throw new ImportRefused(...problems);
  return {
    file: files[0] ?? '',
    dryRun: on.has('--dry-run'),
    json: on.has('--json'),
    report: last('--report'),
    allowFewer: on.has('--allow-fewer'),
    by: last('--by'),
    locale: isLocale(lang) ? lang : defaultLocale,
    choices: {
      map,
      units,
      crs: last('--crs'),
      dateOrder: dateOrder === 'mdy' || dateOrder === 'dmy' ? dateOrder : null,
      accept,
      today,
    },
  };
}

function readMap(
  value: string,
  map: Partial<Record<ImportField, readonly string[]>>,
  problems: Problem[],
): void {
  const at = value.indexOf('=');
  const field = value.slice(0, at).trim();
  if (at < 1) problems.push(problem('inventory-map-form', '--map', { value }));
  else if (!isImportField(field))
    problems.push(problem('inventory-unknown-field', '--map', { field, fields: importFields.join(', ') }));
  else
    map[field] = value
      .slice(at + 1)
      .split('+')
      .map((column) => column.trim())
      .filter(Boolean);
}

function readFieldUnit(
  value: string,
  units: Partial<Record<ImportField, SourceUnit>>,
  problems: Problem[],
): void {
  const [field = '', spelled = ''] = value.split('=').map((part) => part.trim());
  if (!isImportField(field)) {
    problems.push(problem('inventory-unknown-field', '--unit', { field, fields: importFields.join(', ') }));
    return;
  }
  const { quantity } = fieldRules[field];
  if (!quantity) {
    problems.push(
      problem('inventory-field-has-no-unit', '--unit', {
        field,
        fields: importFields.filter((each) => fieldRules[each].quantity).join(', '),
      }),
    );
    return;
  }
  const unit = readUnit(spelled)?.unit;
  if (unit && measures(unit, quantity.target)) units[field] = unit;
  else
    problems.push(
      problem('inventory-no-such-unit', '--unit', {
        unit: spelled,
        field,
        units: quantity.target === 'gpm' ? 'gpm, L/min, L/s, m3/h' : 'in, mm, ft, m, tenth-in',
      }),
    );
}

function measures(unit: SourceUnit, target: 'in' | 'ft' | 'gpm' | (string & {})): boolean {
  const flow = unit === 'gpm' || unit === 'MGD' || unit === 'L/s' || unit === 'L/min' || unit === 'm3/h';
  return flow === (target === 'gpm');
}
