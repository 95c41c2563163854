import { readFile } from 'node:fs/promises';
import { allComputations, computeHere, isComputation } from '../compute/compute.ts';
import { problem, type Problem } from '../../../shared/problems/problem.ts';
import { sayQuantityProblem } from '../../../shared/water/say.ts';
import type { Reader } from '../../../shared/units/format.ts';
import type { System } from '../../../shared/units/units.ts';
import { isLocale, say, type Locale } from '../../../shared/words/index.ts';

/**
 * `npm run -s compute -- NAME [FILE]`: JSON in, JSON out. Exit 0 with the result on standard output; exit 2 with every
 * problem on standard error, as sentences; exit 1 for a fault of ours. Without a name it lists what there is.
 * `--locale es` answers in Spanish, `--units metric` in metric; a question may be typed in either system all the same.
 */

const MOST_BYTES = 20_000_000;

class Refused extends Error {
  readonly problems: readonly Problem[];
  constructor(problems: readonly Problem[]) {
    super('refused');
    this.problems = problems;
  }
}

const refuse = (code: string, params: Problem['params'] = {}): never => {
  throw new Refused([problem(code, '', params)]);
};

interface Asked {
  readonly name: string | undefined;
  readonly file: string | undefined;
  readonly reader: Reader;
}

const isSystem = (value: unknown): value is System => value === 'us' || value === 'metric';

/** Takes an option and its value out of the words; undefined when it is not there. */
function take<T extends string>(
  words: string[],
  option: string,
  is: (value: unknown) => value is T,
  choices: readonly T[],
): T | undefined {
  const at = words.indexOf(option);
  if (at === -1) return undefined;
  const [, value] = words.splice(at, 2);
  if (is(value)) return value;
  return refuse('not-one-of', { values: choices.map((choice) => `${option} ${choice}`).join(', ') });
}

function readArguments(given: readonly string[]): Asked {
  const words = [...given];
  const locale = take<Locale>(words, '--locale', isLocale, ['en', 'es']) ?? 'en';
  const system = take(words, '--units', isSystem, ['us', 'metric']) ?? 'us';
  const [name, file, ...extra] = words.filter((word) => word !== '--help' && word !== '-h');
  if (extra.length > 0) refuse('too-many-arguments', { extra: extra.join(' ') });
  return { name, file, reader: { locale, system } };
}

async function readStandardInput(): Promise<Buffer> {
  if (process.stdin.isTTY) return Buffer.alloc(0);
  const chunks: Buffer[] = [];
  let bytes = 0;
  for await (const chunk of process.stdin as AsyncIterable<Buffer>) {
    chunks.push(chunk);
    bytes += chunk.length;
    if (bytes > MOST_BYTES) break;
  }
  return Buffer.concat(chunks);
}

async function readInput(file: string | undefined): Promise<unknown> {
  const bytes =
    file === undefined || file === '-'
      ? await readStandardInput()
      : await readFile(file).catch((error: unknown) =>
          refuse('file-unreadable', { file, reason: (error as NodeJS.ErrnoException).code ?? String(error) }),
        );
  if (bytes.length > MOST_BYTES) refuse('input-too-large', { megabytes: MOST_BYTES / 1_000_000 });
  // A byte-order mark is what some editors put before JSON; it is not part of it.
  const text = bytes.toString('utf8').replace(/^\uFEFF/, '');
  if (text.trim() === '') refuse('no-input');
  try {
    return JSON.parse(text) as unknown;
  } catch (error) {
    const message = (error as Error).message;
    const [where, line = 'none', column = ''] = /\s*\(line (\d+) column (\d+)\)/.exec(message) ?? [''];
    const detail = message
      .replace(where, '')
      .replace(/ in JSON at position \d+/, '')
      .replace(/, (\.\.\.)?".*"(\.\.\.)? is not valid JSON$/s, '');
    return refuse('input-not-json', { line, column, detail });
  }
}

function list(locale: Locale): string {
  const entries = allComputations.map(({ name, summary, output, example }) =>
    [
      name,
      `  ${say(locale, summary)}`,
      `  ${say(locale, 'hydraulics.command.gives', { output: say(locale, output) })}`,
      `  ${say(locale, 'hydraulics.command.example')}`,
      `    echo '${JSON.stringify(example)}' | npm run -s compute -- ${name}`,
    ].join('\n'),
  );
  return [say(locale, 'hydraulics.command.usage'), say(locale, 'hydraulics.command.names'), ...entries].join(
    '\n\n',
  );
}

function report(problems: readonly Problem[], reader: Reader): string {
  const lines = problems.map((found) => {
    const sentence = sayQuantityProblem(found, reader);
    return found.path === '' ? `  ${sentence}` : `  ${found.path}: ${sentence}`;
  });
  return [say(reader.locale, 'hydraulics.command.refused', { count: problems.length }), ...lines].join('\n');
}

let reader: Reader = { locale: 'en', system: 'us' };
try {
  const asked = readArguments(process.argv.slice(2));
  reader = asked.reader;
  if (asked.name === undefined) {
    process.stdout.write(`${list(reader.locale)}\n`);
  } else {
    // An unknown name is answered before the input is waited for.
    const input =
      asked.name === 'equipment-schedule' && asked.file?.toLowerCase().endsWith('.csv')
        ? { scheduleFile: asked.file }
        : isComputation(asked.name)
          ? await readInput(asked.file)
          : undefined;
    const computed = await computeHere(asked.name, input, reader);
    if (!computed.ok) throw new Refused(computed.problems);
    process.stdout.write(`${JSON.stringify(computed.output, null, 2)}\n`);
  }
} catch (error) {
  if (!(error instanceof Refused)) throw error;
  process.stderr.write(`${report(error.problems, reader)}\n`);
  process.exitCode = 2;
}
