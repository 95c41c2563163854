import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it, vi } from 'vitest';

vi.mock(import('../../functions/stores/dynamodb/createTables.ts'), async (original) => {
  const whole = await original();
  return { ...whole, createTables: vi.fn(whole.createTables).mockRejectedValueOnce(new Error('no home')) };
});
const { startDynamodb } = await import('../../infra/local/dynamodb.ts');

it('an embedded store that cannot make its tables stops: a command ends, and the folder is free', async () => {
  const folder = await mkdtemp(join(tmpdir(), 'dynamodb-start-'));
  try {
    await expect(startDynamodb({ folder, port: 0 })).rejects.toThrow('no home');
    await (await startDynamodb({ folder, port: 0 })).stop();
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
});
