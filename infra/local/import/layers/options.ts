import { ImportRefused } from '../../../../shared/inventory/refused.ts';
import { isLayerKind, layerKinds, type LayerKind } from '../../../../shared/layers/kinds.ts';
import type { LayerChoices } from '../../../../shared/layers/readLayer.ts';
import { problem, type Problem } from '../../../../shared/problems/problem.ts';
import { isLocale, type Locale } from '../../../../shared/words/index.ts';
import { readCommandLine } from '../../commandLine.ts';

/** What the command line asks for. */
export interface LayerOptions {
  /** Null: the layer is to be taken out. */
  readonly file: string | null;
  readonly choices: LayerChoices;
  readonly dryRun: boolean;
  readonly report: string | null;
  readonly by: string | null;
  readonly locale: Locale;
}

/** Options that take a value, with its form for the person who left it out. */
const valued = {
  '--as': layerKinds.join(' | '),
  '--crs': 'EPSG:2263',
  '--snap': '300',
  '--join-within': '3',
  '--name': 'PROPERTY',
  '--report': 'FILE.csv',
  '--by': 'NAME',
  '--lang': 'en | es',
} as const;
type Valued = keyof typeof valued;
const flags = ['--dry-run', '--join-crossings', '--take-out'];
/** Options that one kind of layer alone has. */
const ofKind: readonly (readonly [option: string, kind: LayerKind])[] = [
  ['--snap', 'streets'],
  ['--join-within', 'streets'],
  ['--join-crossings', 'streets'],
  ['--name', 'stations'],
];

/** A hydrant stands at the curb and a house behind its yard; farther off, a street passes by and does not serve. */
const usualSnapFt = 300;

/**
 * Reads the command line.
 *
 * @returns 'help' when that is what was asked for
 * @throws ImportRefused with every problem of the command line at once
 */
export function readLayerOptions(argv: readonly string[], defaultLocale: Locale): LayerOptions | 'help' {
  const problems: Problem[] = [];
  const line = readCommandLine(argv, { flags, valued: Object.keys(valued) });
  const { files, on } = line;
  const given = new Map(line.given);
  if (on.has('--help')) return 'help';
  for (const option of line.unknown) problems.push(problem('layers-option-unknown', option, { option }));
  for (const option of line.valueless)
    problems.push(problem('layers-option-needs-value', option, { option, form: valued[option as Valued] }));

  const kind = given.get('--as');
  if (!isLayerKind(kind)) problems.push(problem('layers-as-what', '--as', { value: kind ?? 'none' }));
  else
    for (const [option, only] of ofKind)
      if (only !== kind && (given.has(option) || on.has(option)))
        problems.push(problem('layers-option-of-other-kind', option, { option, only, kind }));
  const takeOut = on.has('--take-out');
  if (takeOut && files.length > 0) problems.push(problem('layers-file-and-take-out', '--take-out'));
  if (!takeOut && files.length === 0) problems.push(problem('layers-no-file', 'FILE'));
  if (files.length > 1) problems.push(problem('layers-one-file', 'FILE'));
  const lang = given.get('--lang') ?? defaultLocale;
  if (!isLocale(lang)) problems.push(problem('inventory-no-such-language', '--lang', { value: lang }));

  const number = (option: Valued, usual: number, minimum: number, maximum: number): number => {
    const text = given.get(option);
    if (text === undefined) return usual;
    const value = Number(text);
    if (!(value >= minimum && value <= maximum))
      problems.push(problem('layers-number-wrong', option, { option, value: text, minimum, maximum }));
    return value;
  };
  const snapFt = number('--snap', usualSnapFt, 20, 2000);
  const joinWithinFt = number('--join-within', 0, 0, 50);
  if (problems.length > 0 || !isLayerKind(kind)) throw new ImportRefused(...problems);
  return {
    file: files[0] ?? null,
    choices: {
      kind,
      crs: given.get('--crs') ?? null,
      snapFt,
      joinCrossings: on.has('--join-crossings'),
      joinWithinFt,
      nameField: given.get('--name') ?? null,
    },
    dryRun: on.has('--dry-run'),
    report: given.get('--report') ?? null,
    by: given.get('--by') ?? null,
    locale: isLocale(lang) ? lang : defaultLocale,
  };
}
