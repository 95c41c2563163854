import { isLocale, say, type Locale, type WordKey, type WordParams } from '../../shared/words/index.ts';
import { RefusedStart } from './refusedStart.ts';

/** The language of the terminal, from the variables that POSIX gives it (LC_ALL before LC_MESSAGES before LANG). */
export function terminalLocale(
  variables: Readonly<Record<string, string | undefined>> = process.env,
): Locale {
  const named = [variables['LC_ALL'], variables['LC_MESSAGES'], variables['LANG']].find(
    (value) => value !== undefined && value !== '',
  );
  return named?.toLowerCase().startsWith('es') ? 'es' : 'en';
}

/** The language that a command line asks for (`--lang es`), read before the rest of it may be refused; else the terminal's. */
export function askedLocale(argv: readonly string[]): Locale {
  const asked = argv.map((word, at) =>
    word === '--lang' ? argv[at + 1] : word.startsWith('--lang=') ? word.slice('--lang='.length) : undefined,
  );
  return asked.findLast(isLocale) ?? terminalLocale();
}

/** Prints a sentence of the catalogue. */
export function tell(key: WordKey, params: WordParams = {}): void {
  console.log(say(terminalLocale(), key, params));
}

/** Runs a command: a refusal is one line on standard error and exit code 1, a fault of ours keeps its stack. */
export async function command(run: () => Promise<void>): Promise<void> {
  try {
    await run();
  } catch (error) {
    console.error(error instanceof RefusedStart ? say(terminalLocale(), error.key, error.params) : error);
    process.exitCode = 1;
  }
}
