import { execFile } from 'node:child_process';
import { cp, mkdir, mkdtemp, rm, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { promisify } from 'node:util';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

const repository = join(import.meta.dirname, '..', '..');

/** Every file of the planted tree, with what it imports and the rules that must catch it (none: it is allowed). */
const planted: Record<string, { imports: string[]; caughtBy: string[] }> = {
  'shared/allowed.ts': { imports: ['./leaf.ts', 'zod', 'big.js'], caughtBy: [] },
  'shared/leaf.ts': { imports: [], caughtBy: [] },
  'shared/toFunctions.ts': {
    imports: ['../functions/records/handler.ts'],
    caughtBy: ['shared-imports-only-shared'],
  },
  'shared/toSite.ts': { imports: ['../site/src/page.ts'], caughtBy: ['shared-imports-only-shared'] },
  'shared/toNode.ts': { imports: ['node:fs'], caughtBy: ['shared-imports-only-shared'] },
  'shared/toAws.ts': {
    imports: ['@aws-sdk/client-s3'],
    caughtBy: ['only-stores-know-aws', 'shared-imports-only-shared'],
  },
  'shared/toImpure.ts': { imports: ['jose'], caughtBy: ['shared-imports-only-shared'] },
  'shared/verify/toReader.ts': { imports: ['jose'], caughtBy: [] },
  'shared/verify/toImpure.ts': { imports: ['pdfkit'], caughtBy: ['verifier-imports-readers'] },
  'shared/toCalendarWriter.ts': { imports: ['ical-generator'], caughtBy: ['shared-imports-only-shared'] },
  'shared/calendar/toWriter.ts': { imports: ['ical-generator'], caughtBy: [] },
  'shared/calendar/toImpure.ts': { imports: ['pdfkit'], caughtBy: ['calendar-imports-writer'] },
  'shared/toNowhere.ts': { imports: ['./gone.ts'], caughtBy: ['resolvable', 'shared-imports-only-shared'] },
  'shared/cycleA.ts': { imports: ['./cycleB.ts'], caughtBy: ['no-cycles'] },
  // A cycle is reported at one of its files.
  'shared/cycleB.ts': { imports: ['./cycleA.ts'], caughtBy: [] },
  'functions/records/handler.ts': {
    imports: ['../../shared/leaf.ts', '../stores/ledger/open.ts'],
    caughtBy: [],
  },
  'functions/stores/ledger/open.ts': { imports: ['@aws-sdk/client-dynamodb'], caughtBy: [] },
  'functions/records/toAws.ts': { imports: ['@aws-sdk/client-dynamodb'], caughtBy: ['only-stores-know-aws'] },
  'functions/records/toInfra.ts': {
    imports: ['../../infra/local/server.ts'],
    caughtBy: ['functions-import-shared'],
  },
  'functions/records/toDev.ts': { imports: ['dynalite'], caughtBy: ['shipped-code-needs-shipped-packages'] },
  'functions/records/toCdk.ts': { imports: ['aws-cdk-lib'], caughtBy: ['cdk-only-in-infra-aws'] },
  'functions/records/toTests.ts': {
    imports: ['../../tests/some.test.ts'],
    caughtBy: ['functions-import-shared', 'nothing-imports-tests'],
  },
  'infra/local/server.ts': {
    imports: ['../../functions/records/handler.ts', '../../shared/leaf.ts'],
    caughtBy: [],
  },
  'infra/local/toSite.ts': { imports: ['../../site/src/page.ts'], caughtBy: ['infra-imports-entry-points'] },
  'infra/local/toCdkApp.ts': { imports: ['../aws/app.ts'], caughtBy: ['aws-and-local-apart'] },
  'infra/aws/app.ts': { imports: ['aws-cdk-lib', '../../shared/leaf.ts'], caughtBy: [] },
  'infra/aws/toHandler.ts': {
    imports: ['../../functions/records/handler.ts'],
    caughtBy: ['cdk-imports-no-handler'],
  },
  'site/src/page.ts': { imports: ['../../shared/leaf.ts', 'preact'], caughtBy: [] },
  'site/src/toFunctions.ts': {
    imports: ['../../functions/records/handler.ts'],
    caughtBy: ['site-imports-shared'],
  },
  'site/src/toNode.ts': { imports: ['node:fs'], caughtBy: ['site-runs-in-a-browser'] },
  'tests/some.test.ts': { imports: ['../functions/stores/ledger/open.ts', 'dynalite'], caughtBy: [] },
};

interface Cruised {
  readonly summary: {
    readonly violations: readonly { readonly from: string; readonly rule: { readonly name: string } }[];
  };
}

/** Runs the rules on a folder with the tool itself, as `npm run rooms` does. */
async function cruise(folder: string): Promise<Cruised['summary']['violations']> {
  const tool = join(repository, 'node_modules', 'dependency-cruiser', 'bin', 'dependency-cruiser.mjs');
  const rooms = ['shared', 'functions', 'infra', 'site', 'tests'];
  // It exits with the number of violations, which is not a failure here.
  const { stdout } = await promisify(execFile)(process.execPath, [tool, ...rooms, '--output-type', 'json'], {
    cwd: folder,
    maxBuffer: 64 * 1024 * 1024,
  }).catch((error: unknown) => error as { stdout: string });
  return (JSON.parse(stdout) as Cruised).summary.violations;
}

describe('the arrows between the rooms', () => {
  let folder: string;
  let caught: Map<string, Set<string>>;

  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'rooms-'));
    for (const file of ['.dependency-cruiser.cjs', 'tsconfig.json', 'package.json'])
      await cp(join(repository, file), join(folder, file));
    await symlink(join(repository, 'node_modules'), join(folder, 'node_modules'));
    for (const [file, { imports }] of Object.entries(planted)) {
      await mkdir(dirname(join(folder, file)), { recursive: true });
      const lines = imports.map((from, index) => `import * as i${index} from '${from}';\nvoid i${index};\n`);
      await writeFile(join(folder, file), `${lines.join('')}export const here = 1;\n`);
    }
    caught = new Map();
    for (const { from, rule } of await cruise(folder))
      caught.set(from, (caught.get(from) ?? new Set()).add(rule.name));
  });
  afterAll(() => rm(folder, { recursive: true, force: true }));

  it.each(Object.entries(planted))('%s', (file, { caughtBy }) => {
    expect([...(caught.get(file) ?? [])].sort()).toEqual(caughtBy);
  });

  // The whole repository is read, beside whatever else runs.
  it('hold in this repository', { timeout: 120_000 }, async () => {
    expect(await cruise(repository)).toEqual([]);
  });
});
