import { readFile } from 'node:fs/promises';
import { parseArgs } from 'node:util';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { problem, type Problem } from '../../../shared/problems/problem.ts';
import { pageTextReader } from '../../../shared/verify/file/pageText.ts';
import { sayVerification } from '../../../shared/verify/say.ts';
import { sayFinding } from '../../../shared/verify/finding.ts';
import { verifyPacket, type Verification } from '../../../shared/verify/verify.ts';
import { say } from '../../../shared/words/index.ts';
import { fromCaller } from '../options.ts';
import { askedLocale, command } from '../terminal.ts';

/**
 * `npm run -s verify -- PACKET.pdf [ARCHIVE.zip]`: recomputes a packet from its own file. Exit 0 consistent, 1 it
 * differs, 2 it could not be checked. `--json` prints the whole answer, with each finding's sentence.
 */

class Refused extends Error {
  readonly problem: Problem;
  constructor(found: Problem) {
    super(found.code);
    this.problem = found;
  }
}
const refuse = (code: string, params: Problem['params'] = {}): never => {
  throw new Refused(problem(code, '', params));
};

const exitCodes: Record<Verification['outcome'], number> = { consistent: 0, differs: 1, unreadable: 2 };

const read = (file: string): Promise<Uint8Array> =>
  readFile(fromCaller(file)).catch((error: unknown) =>
    refuse('file-unreadable', { file, reason: (error as NodeJS.ErrnoException).code ?? String(error) }),
  );
const readText = async (file: string | undefined): Promise<string | null> =>
  file === undefined ? null : new TextDecoder().decode(await read(file));

const options = {
  signature: { type: 'string' },
  keys: { type: 'string' },
  lang: { type: 'string' },
  json: { type: 'boolean' },
  help: { type: 'boolean', short: 'h' },
} as const;

function readArguments() {
  const { values, positionals, tokens } = parseArgs({
    options,
    allowPositionals: true,
    strict: false,
    tokens: true,
  });
  const unknown = tokens.find((token) => token.kind === 'option' && !(token.name in options));
  if (unknown?.kind === 'option') refuse('verify-unknown-option', { option: unknown.rawName });
  const text = (value: string | boolean | undefined): string | undefined =>
    typeof value === 'string' ? value : undefined;
  return {
    files: positionals,
    signature: text(values.signature),
    keys: text(values.keys),
    json: values.json === true,
    help: values.help === true,
  };
}

await command(async () => {
  const locale = askedLocale(process.argv);
  try {
    const { files, signature, keys, json, help } = readArguments();
    if (help) {
      console.log(say(locale, 'verify.command.usage'));
      return;
    }
    const [packet, archive, ...more] = files;
    if (packet === undefined || more.length > 0) return refuse('verify-one-file', { count: files.length });
    if (signature !== undefined && keys === undefined) return refuse('verify-keys-missing');
    const found = await verifyPacket(
      {
        pdf: await read(packet),
        archive: archive === undefined ? null : await read(archive),
        jws: await readText(signature),
        keys: await readText(keys),
      },
      pageTextReader({ getDocument }),
    );
    if (json) {
      const findings = found.findings.map((each) => ({ ...each, sentence: sayFinding(locale, each) }));
      console.log(JSON.stringify({ ...found, findings }, null, 2));
    } else console.log(sayVerification(locale, found).join('\n'));
    process.exitCode = exitCodes[found.outcome];
  } catch (error) {
    if (!(error instanceof Refused)) throw error;
    console.error(sayFinding(locale, error.problem));
    process.exitCode = 2;
  }
});
