import { parseArgs } from 'node:util';

/** What stands on a command line, by its parts. Options keep their dashes, since people read them so. */
export interface CommandLine {
  readonly files: readonly string[];
  /** Options with their values, in order; one may be given several times. */
  readonly given: readonly (readonly [option: string, value: string])[];
  readonly on: ReadonlySet<string>;
  /** What must be said to the person: options that are none, and those whose value was left out. */
  readonly unknown: readonly string[];
  readonly valueless: readonly string[];
}

/**
 * Sorts a command line and says everything that is wrong with it at once. A value may itself begin with a plus or a
 * minus (`+proj=…`, `-3`), but not with `--`: that is the next option, and the value was forgotten. `--help` and `-h`
 * are known to every command.
 */
export function readCommandLine(
  argv: readonly string[],
  { flags, valued }: { readonly flags: readonly string[]; readonly valued: readonly string[] },
): CommandLine {
  const bare = (option: string): string => option.replace(/^--/, '');
  const { tokens, positionals } = parseArgs({
    // An option whose value was forgotten must not swallow the next one, which may be wrong as well.
    args: argv.map((word, at) =>
      valued.includes(word) && (argv[at + 1]?.startsWith('--') ?? true) ? `${word}=` : word,
    ),
    options: {
      help: { type: 'boolean', short: 'h' },
      ...Object.fromEntries(flags.map((flag) => [bare(flag), { type: 'boolean' as const }])),
      ...Object.fromEntries(valued.map((option) => [bare(option), { type: 'string' as const }])),
    },
    strict: false,
    allowPositionals: true,
    tokens: true,
  });
  const given: [string, string][] = [];
  const on = new Set<string>();
  const unknown: string[] = [];
  const valueless: string[] = [];
  for (const token of tokens) {
    if (token.kind !== 'option') continue;
    const option = token.name === 'help' ? '--help' : token.rawName;
    const value = token.value?.trim() ?? '';
    if (valued.includes(option)) {
      if (value === '') valueless.push(option);
      else given.push([option, value]);
    } else if (option === '--help' || (flags.includes(option) && token.value === undefined)) on.add(option);
    else unknown.push(option);
  }
  return { files: positionals, given, on, unknown, valueless };
}
