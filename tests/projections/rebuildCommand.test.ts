import { execFile } from 'node:child_process';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { projectStream } from '../../functions/project/project.ts';
import { dynamodbClient } from '../../functions/stores/dynamodb/client.ts';
import { dynamodbStores } from '../../functions/stores/dynamodb/stores.ts';
import { openDataFolder } from '../../infra/local/dataFolder.ts';
import { localTableNames, startDynamodb } from '../../infra/local/dynamodb.ts';
import { streamOfSubmission } from '../../shared/submissions/submission.ts';
import { fact, onHydrant, onStrike, uuid } from '../support/submissions.ts';
import { delivery, world, type World } from './support.ts';

const run = promisify(execFile);
let dataDir: string;

/** The command as npm runs it. */
async function rebuildCommand(
  args: readonly string[] = [],
  more: NodeJS.ProcessEnv = {},
): Promise<{ code: number; out: string; error: string }> {
  const script = join(import.meta.dirname, '../../infra/local/commands/rebuild.ts');
  const { PATH, HOME } = process.env;
  const env = { PATH, HOME, DATA_DIR: dataDir, LANG: 'en_US.UTF-8', ...more };
  return run(process.execPath, [script, ...args], { env }).then(
    ({ stdout, stderr }) => ({ code: 0, out: stdout, error: stderr }),
    (failed: unknown) => {
      const { code, stdout, stderr } = failed as { code: number; stdout: string; stderr: string };
      return { code, out: stdout, error: stderr };
    },
  );
}

/** Does something with the stores in the data folder, and leaves it free again. */
async function inFolder(work: (one: World) => Promise<void>): Promise<void> {
  const server = await startDynamodb({ folder: join(dataDir, 'dynamodb'), port: 0 });
  const client = dynamodbClient(server.endpoint);
  try {
    await work({ ...world(dynamodbStores(client, localTableNames)), hydrantType: async () => 'unknown' });
  } finally {
    client.destroy();
    await server.stop();
  }
}

beforeAll(async () => {
  dataDir = await mkdtemp(join(tmpdir(), 'rebuild-'));
  await (await openDataFolder(dataDir)).markClosed();
});
afterAll(async () => {
  await rm(dataDir, { recursive: true, force: true });
});

describe('npm run rebuild', { timeout: 120_000 }, () => {
  it('says that nothing differs, also of an empty utility', async () => {
    expect(await rebuildCommand()).toEqual({
      code: 0,
      out: 'Computed anew: 0 items from 0 facts.\nEverything kept for reading is what the facts say.\n',
      error: '',
    });
    await inFolder(async (one) => {
      for (const submission of [
        fact('strike', 101, onStrike(1), { hydrantId: 'A', photos: [] }),
        fact('outage', 102, onHydrant('B')),
      ]) {
        await one.ledger.accept(submission, delivery);
        await projectStream(one, streamOfSubmission(submission));
      }
    });
    expect(await rebuildCommand()).toMatchObject({
      code: 0,
      out: 'Computed anew: 4 items from 2 facts.\nEverything kept for reading is what the facts say.\n',
    });
  });

  it('prints every difference and exits with 1, repairs with --write, and then there is none', async () => {
    await inFolder(async (one) => {
      const stored = await one.projections.get<object>('strike', uuid(1));
      await one.projections.put('strike', uuid(1), { ...stored!.value, stage: 'back' }, stored!.version);
      await one.projections.remove('hydrant', 'B', await one.projections.versionOf('hydrant', 'B'));
      await one.projections.put('mention', `hydrant:B\nstrike:${uuid(9)}`, {}, 0);
      await one.ledger.accept(fact('strike', 103, onStrike(2), { hydrantId: 'B', photos: [] }), delivery);
    });
    const lines = [
      `differs: strike ${uuid(1)} at stage`,
      'missing: hydrant B',
      `missing: strike ${uuid(2)}`,
      `missing: mention hydrant:B <- strike:${uuid(2)}`,
      `too much: mention hydrant:B <- strike:${uuid(9)}`,
    ];
    const looked = await rebuildCommand();
    expect(looked.code).toBe(1);
    expect(looked.out.trim().split('\n').sort()).toEqual(
      [
        ...lines,
        'Computed anew: 6 items from 3 facts.',
        '5 items differ. To put right: npm run rebuild -- --write',
      ].sort(),
    );
    const repaired = await rebuildCommand(['--write']);
    expect(repaired.code).toBe(0);
    expect(repaired.out).toContain('5 items were put right; now everything kept for reading');
    expect(await rebuildCommand()).toMatchObject({
      code: 0,
      out: expect.stringContaining('is what the facts say'),
    });
  });

  it('speaks Spanish on a Spanish terminal', async () => {
    expect((await rebuildCommand([], { LANG: 'es_ES.UTF-8' })).out).toBe(
      'Calculado de nuevo: 6 elementos a partir de 3 hechos.\nTodo lo guardado para leer es lo que dicen los hechos.\n',
    );
  });

  it('answers in one line what it cannot do', async () => {
    expect(await rebuildCommand(['--repair'])).toEqual({
      code: 1,
      out: '',
      error: 'There is no option --repair. There is one: --write, which repairs.\n',
    });
    expect(await rebuildCommand([], { SUBMISSIONS_TABLE: 'x' })).toMatchObject({
      code: 1,
      error: 'To work on the tables of a deployment set PERSONAL_TABLE too, as its functions have it.\n',
    });
    await inFolder(async () => {
      expect(await rebuildCommand()).toMatchObject({
        code: 1,
        error: `The folder ${dataDir} is used by another process. Stop that one first.\n`,
      });
    });
  });

  it('rebuilds a deployment that the environment names', async () => {
    await inFolder(async () => undefined);
    const server = await startDynamodb({ folder: join(dataDir, 'dynamodb'), port: 0 });
    try {
      const deployed = await rebuildCommand([], {
        DYNAMODB_ENDPOINT: server.endpoint,
        AWS_REGION: 'us-east-1',
        AWS_ACCESS_KEY_ID: 'local',
        AWS_SECRET_ACCESS_KEY: 'local',
        SUBMISSIONS_TABLE: localTableNames.submissions,
        PERSONAL_TABLE: localTableNames.personal,
        PROJECTIONS_TABLE: localTableNames.projections,
        UNIQUE_TABLE: localTableNames.unique,
        OUTBOX_TABLE: localTableNames.outbox,
        UNPROJECTED_TABLE: localTableNames.unprojected,
        INVENTORY_URL: `file://${dataDir}/objects/inventory`,
      });
      expect(deployed).toMatchObject({ code: 0, out: expect.stringContaining('from 3 facts') });
    } finally {
      await server.stop();
    }
  });
});
