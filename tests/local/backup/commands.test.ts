import { execFile } from 'node:child_process';
import { cp, mkdir, mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { projectStream } from '../../../functions/project/project.ts';
import { dynamodbClient } from '../../../functions/stores/dynamodb/client.ts';
import { dynamodbStores } from '../../../functions/stores/dynamodb/stores.ts';
import { projectRoot } from '../../../infra/local/buildSite.ts';
import { openDataFolder } from '../../../infra/local/dataFolder.ts';
import { localTableNames, startDynamodb } from '../../../infra/local/dynamodb.ts';
import { tables } from '../../../shared/deployment/tables.ts';
import type { Recorded } from '../../../shared/submissions/recorded.ts';
import { streamOfSubmission, type Submission } from '../../../shared/submissions/submission.ts';
import { fact, onClaim, onStrike, uuid } from '../../support/submissions.ts';
import { takenAt } from './support.ts';

const run = promisify(execFile);
let base: string;
const dataOf = (name: string): string => join(base, name);

/** A command as npm runs it, from the folder of the files. */
async function told(
  name: 'backup' | 'restore' | 'erase',
  args: readonly string[],
  env: NodeJS.ProcessEnv,
): Promise<{ code: number; out: string; error: string }> {
  const script = join(projectRoot, 'infra/local/commands', `${name}.ts`);
  const { PATH, HOME } = process.env;
  const whole = { PATH, HOME, LANG: 'en_US.UTF-8', INIT_CWD: base, ...env };
  return run(process.execPath, [script, ...args], { env: whole }).then(
    ({ stdout, stderr }) => ({ code: 0, out: stdout, error: stderr }),
    (failed: unknown) => {
      const { code, stdout, stderr } = failed as { code: number; stdout: string; stderr: string };
      return { code, out: stdout, error: stderr };
    },
  );
}

async function inFolder<T>(
  folder: string,
  work: (stores: ReturnType<typeof dynamodbStores>) => Promise<T>,
): Promise<T> {
  const server = await startDynamodb({ folder: join(folder, 'dynamodb'), port: 0 });
  const client = dynamodbClient(server.endpoint);
  try {
    return await work(dynamodbStores(client, localTableNames));
  } finally {
    client.destroy();
    await server.stop();
  }
}

const accept = (folder: string, submissions: readonly Submission[]) =>
  inFolder(folder, async (stores) => {
    for (const submission of submissions) {
      await stores.ledger.accept(submission, { recordedAt: takenAt, deliveredBy: null });
      await projectStream({ ...stores, hydrantType: async () => 'unknown' }, streamOfSubmission(submission));
    }
  });
const read = (folder: string): Promise<readonly Recorded[]> =>
  inFolder(folder, ({ ledger }) => ledger.readStream(`strike:${uuid(1)}`));

beforeAll(async () => {
  base = await mkdtemp(join(tmpdir(), 'backup-commands-'));
  await (await openDataFolder(dataOf('first'))).markClosed();
  await accept(dataOf('first'), [
    fact('strike', 1, onStrike(1), { hydrantId: 'A', photos: [], dispatch: null }),
    fact('party', 2, onStrike(1)),
    fact('claim-opened', 3, onClaim(9), { strikeId: uuid(1), claimNumber: '2026-1' }),
  ]);
});
afterAll(async () => {
  await rm(base, { recursive: true, force: true });
});

const hash = /SHA-256 ([0-9a-f]{64})/;

describe('npm run backup, erase and restore', { timeout: 180_000 }, () => {
  const first = (): NodeJS.ProcessEnv => ({ DATA_DIR: dataOf('first') });
  let kept: string;

  it('writes a backup and says what is in it', async () => {
    const { code, out, error } = await told('backup', ['night.backup'], first());
    expect({ code, error }).toEqual({ code: 0, error: '' });
    expect(out).toMatch(/: 3 facts, 3 rows of personal fields, 0 numbers, 0 rows of letters and messages;/);
    kept = hash.exec(out)?.[1] ?? 'no hash';
    expect(await told('backup', ['night.backup'], first())).toMatchObject({
      code: 1,
      error: `There is a file ${join(base, 'night.backup')} already. Nothing was written; choose another name.\n`,
    });
  });

  it('says what it would erase without what it says, and erases when told to', async () => {
    const asked = [`strike:${uuid(1)}`, '--ground', 'court-ordered', '--decided-by', 'w-9'];
    const looked = await told('erase', asked, first());
    expect(looked.code).toBe(0);
    expect(looked.out).toContain(`${uuid(2)}  Vehicle, driver and insurer: vehicles.0.plate`);
    expect(looked.out).toContain('Nothing was erased yet.');
    expect(looked.out).not.toMatch(/AAA 111|invented driver|A caller/);
    expect((await read(dataOf('first'))).map(({ erased }) => erased)).toEqual([false, false]);

    await accept(dataOf('first'), [fact('legal-hold', 4, onClaim(9), { hold: 'set' })]);
    expect(await told('erase', [...asked, '--write'], first())).toMatchObject({
      code: 1,
      error: expect.stringContaining('claim 2026-1 is under a legal hold'),
    });
    await accept(dataOf('first'), [
      fact('legal-hold', 5, onClaim(9), { hold: 'lifted', from: '2026-06-02' }),
    ]);
    expect(await told('erase', [...asked, '--only', uuid(2), '--write'], first())).toMatchObject({
      code: 0,
      out: expect.stringContaining('Erased the personal fields of 1 submission, and recorded that.'),
    });
    const after = await read(dataOf('first'));
    expect(after.map(({ submission, erased }) => [submission.kind, erased])).toEqual([
      ['strike', false],
      ['party', true],
      ['erasure', false],
    ]);
    expect(await told('erase', [...asked, '--only', uuid(2), '--write'], first())).toMatchObject({
      code: 1,
      error: expect.stringContaining(uuid(2)),
    });
  });

  it('restores into an empty folder beside the evidence, and what was erased since stays erased', async () => {
    await (await openDataFolder(dataOf('second'))).markClosed();
    const second = { DATA_DIR: dataOf('second') };
    await cp(join(dataOf('first'), 'objects'), join(dataOf('second'), 'objects'), { recursive: true });
    const { code, out } = await told('restore', ['night.backup'], second);
    // It is not what was backed up, since somebody was erased: said, and to be looked at.
    expect(code).toBe(1);
    expect(out).toContain(': 5 rows added, 0 there already');
    expect(out).toContain('1 left out because erased since.');
    expect(out).toContain('1 erasure of personal fields carried out again.');
    const back = await read(dataOf('second'));
    expect(back.map(({ submission, erased }) => [submission.kind, erased])).toEqual([
      ['strike', false],
      ['party', true],
      ['erasure', false],
    ]);
    expect(await told('restore', ['night.backup'], second)).toMatchObject({
      code: 1,
      error: expect.stringMatching(/^There is something already in: submissions, personal\./),
    });
  });

  it('restores into the tables that the environment names, to the same by its hash', async () => {
    await mkdir(join(base, 'empty'), { recursive: true });
    const server = await startDynamodb({ folder: null, port: 0 });
    try {
      const named: NodeJS.ProcessEnv = {
        DYNAMODB_ENDPOINT: server.endpoint,
        AWS_REGION: 'us-east-1',
        AWS_ACCESS_KEY_ID: 'local',
        AWS_SECRET_ACCESS_KEY: 'local',
        INVENTORY_URL: `file://${join(base, 'empty')}`,
        EVIDENCE_URL: `file://${join(base, 'empty')}`,
        ...Object.fromEntries(
          Object.entries(tables).map(([name, { environment }]) => [
            environment,
            localTableNames[name as keyof typeof tables],
          ]),
        ),
      };
      const { code, out, error } = await told('restore', ['night.backup'], named);
      expect({ code, error }).toEqual({ code: 0, error: '' });
      expect(hash.exec(out)?.[1]).toBe(kept);
      expect(out).toContain('That is what was kept when the backup was made.');
      const again = await told('backup', ['again.backup'], named);
      expect(hash.exec(again.out)?.[1]).toBe(kept);
      const { EVIDENCE_URL: _, ...without } = named;
      expect(await told('backup', ['third.backup'], without)).toMatchObject({
        code: 1,
        error: 'To work on the tables of a deployment set EVIDENCE_URL too, as its functions have it.\n',
      });
    } finally {
      await server.stop();
    }
  });

  it.each<[command: 'backup' | 'restore' | 'erase', args: string, says: RegExp]>([
    ['backup', '', /^Give one file/],
    ['backup', 'one two', /^Give one file/],
    ['restore', '--replace x', /^Give one file/],
    ['erase', '', /^Give one record/],
    ['erase', 'strike', /^Give one record/],
    ['erase', 'utility --ground person-asked --decided-by w-9', /^Give one record/],
    ['erase', 'strike:1 --decided-by w-9', /^Say why with --ground: one of retention-ended, person-asked/],
    ['erase', 'strike:1 --ground whim --decided-by w-9', /^Say why with --ground/],
    ['erase', 'strike:1 --ground person-asked', /^Say who decided it with --decided-by/],
  ])('%s %s', async (name, args, says) => {
    const words = args === '' ? [] : args.split(' ');
    expect(await told(name, words, first())).toMatchObject({
      code: 1,
      out: '',
      error: expect.stringMatching(says),
    });
  });

  it.each(['backup', 'restore', 'erase'] as const)('%s --help, in Spanish where asked', async (name) => {
    expect((await told(name, ['--help'], first())).out).toMatch(new RegExp(`^npm run ${name} -- `));
    expect((await told(name, ['--help', '--lang', 'es'], first())).out).toMatch(/ARCHIVO|REGISTRO/);
  });
});
