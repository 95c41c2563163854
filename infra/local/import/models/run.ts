import { readFile, stat } from 'node:fs/promises';
import { basename } from 'node:path';
import { ImportRefused } from '../../../../shared/inventory/refused.ts';
import { readModels } from '../../../../shared/models/readModels.ts';
import { MOST_SHEET_BYTES } from '../../../../shared/models/sheet.ts';
import { problem, type Problem } from '../../../../shared/problems/problem.ts';
import { canonicalJson } from '../../../../shared/submissions/canonical.ts';
import { currentSchemaVersion } from '../../../../shared/submissions/envelope.ts';
import type { BodyOf, Fact } from '../../../../shared/submissions/submission.ts';
import { say, sayProblem, type Locale } from '../../../../shared/words/index.ts';
import type { ModelOptions } from './options.ts';

type Model = BodyOf<'hydrant-model'>;

/** The running server, asked as a manager: the same way in as the form's. */
export interface ModelServer {
  models(): Promise<readonly Model[]>;
  /** Null when it was taken; else why not, in words. */
  send(submission: Fact<'hydrant-model'>): Promise<string | null>;
}

export interface ModelImportDeps {
  /** Null when none runs on this data folder. */
  readonly openServer: (personId: string) => Promise<ModelServer | null>;
  readonly now: () => string;
  readonly newId: () => string;
  /** The account that runs the command, where `--by` names nobody. */
  readonly account: () => string;
  readonly print: (line: string) => void;
}

/** Spreadsheets save UTF-8, UTF-16 with a mark, or the system's Windows-1252. */
function textOf(bytes: Uint8Array): string {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return new TextDecoder('utf-16le').decode(bytes);
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return new TextDecoder('utf-16be').decode(bytes);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder('windows-1252').decode(bytes);
  }
}

async function read(file: string): Promise<string> {
  const found = await stat(file).catch(() => null);
  if (!found?.isFile()) throw new ImportRefused(problem('models-file-not-found', 'FILE', { file }));
  if (found.size > MOST_SHEET_BYTES)
    throw new ImportRefused(problem('models-file-too-large', 'FILE', { file, maximum: MOST_SHEET_BYTES }));
  return textOf(await readFile(file));
}

/** A doubtful cell, with where it stands. */
export function sayDoubt(found: Problem, locale: Locale): string {
  const { line, column } = found.params;
  const sentence = sayProblem(locale, found);
  return column === undefined ||
    line === undefined ||
    found.path === String(column) ||
    !found.path.includes(':')
    ? sentence
    : say(locale, 'models.at', { line, column, problem: sentence });
}

/**
 * One run: reads the whole file, and only when nothing in it is doubtful records each model that is not on record as it
 * stands in the file. Cut short, it is run again: what is recorded already is not recorded twice.
 *
 * @throws ImportRefused when the file cannot be taken, and then nothing was recorded; or when the server stopped taking
 */
export async function runModelImport(options: ModelOptions, deps: ModelImportDeps): Promise<number> {
  const { locale, dryRun } = options;
  const { print } = deps;
  const file = basename(options.file);
  const { models, problems } = readModels(await read(options.file));
  if (problems.length > 0) {
    for (const found of problems) print(sayDoubt(found, locale));
    throw new ImportRefused(problem('models-nothing-loaded', 'FILE', { count: problems.length, file }));
  }
  print(say(locale, 'models.read', { file, models: models.length }));
  const personId = (options.by ?? deps.account()).trim().slice(0, 64) || 'unknown';
  const server = await deps.openServer(personId);
  if (!server) throw new ImportRefused(problem('models-no-server'));
  const recorded = new Map((await server.models()).map((model) => [model.modelId, canonicalJson(model)]));
  const wanted = models.filter((model) => {
    const before = recorded.get(model.modelId);
    const same = before === canonicalJson(model);
    print(
      say(locale, same ? 'models.same' : before === undefined ? 'models.new' : 'models.changed', {
        model: model.modelId,
      }),
    );
    return !same;
  });
  if (dryRun) {
    print(say(locale, 'models.dry-run'));
    return 0;
  }
  for (const [index, model] of wanted.entries()) {
    const why = await server.send(submissionOf(model, personId, deps));
    if (why !== null)
      throw new ImportRefused(
        problem('models-stopped', model.modelId, {
          model: model.modelId,
          why,
          before:
            wanted
              .slice(0, index)
              .map(({ modelId }) => modelId)
              .join(', ') || '—',
        }),
      );
  }
  print(say(locale, 'models.recorded', { count: wanted.length }));
  return wanted.length;
}

function submissionOf(
  body: Model,
  personId: string,
  { now, newId }: Pick<ModelImportDeps, 'now' | 'newId'>,
): Fact<'hydrant-model'> {
  const at = now();
  return {
    schemaVersion: currentSchemaVersion,
    submissionId: newId(),
    kind: 'hydrant-model',
    subject: { type: 'utility' },
    occurredAt: at,
    sentAt: at,
    person: { personId },
    device: { deviceId: 'import' },
    enteredUnits: 'us',
    body,
  };
}
