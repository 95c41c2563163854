import { beforeEach, describe, expect, test } from 'vitest';
import { projectStream } from '../../functions/project/project.ts';
import { rebuild } from '../../functions/project/rebuild.ts';
import type { Stock } from '../../shared/stock/fold.ts';
import type { HistoryEntry } from '../../shared/submissions/history.ts';
import { at, correction, fact, onStrike, onUtility } from '../support/submissions.ts';
import { testWorld, type World } from './support/world.ts';

/** `GET /api/stock`: counts of the ledger, uses of the repairs, who may write and read. */
let world: World;
beforeEach(async () => {
  world = await testWorld();
});

const counted = (number: number, n: number, place = 'Yard') =>
  fact('stock-count', number, onUtility, {
    place,
    countedAt: at(number),
    parts: [{ partNumber: 'K-1', description: 'Breakaway kit', counted: n }],
  });
const repair = (number: number, quantity: number, location: string | null = 'Yard') =>
  fact('repair', number, onStrike(1), {
    parts: [
      {
        partNumber: 'K-1',
        description: 'Breakaway kit',
        quantity,
        source: { from: 'stock', issueSlip: null, location },
      },
    ],
  });
const send = async (...all: readonly Parameters<World['submit']>[1][]): Promise<void> => {
  for (const each of all) expect((await world.submit('manager', each)).status).toBeLessThan(300);
};
const stock = async (role: 'crew' | 'clerk' | 'manager' = 'crew') =>
  (await world.ask('/api/stock', role)).body as unknown as Stock & { history: readonly HistoryEntry[] };
const yard = async () => (await stock()).parts[0]?.shelves.find(({ place }) => place === 'Yard');

describe('GET /api/stock', () => {
  test('nothing counted is an empty list, and nobody who is not signed in sees even that', async () => {
    expect(await stock()).toEqual({ parts: [], history: [] });
    expect((await world.ask('/api/stock', null)).status).toBe(401);
  });

  test('a count, a delivery and a repair that was put right and then taken back', async () => {
    const used = repair(3, 2);
    const delivery = fact('stock-move', 2, onUtility, {
      from: null,
      to: 'Yard',
      movedAt: at(2),
      parts: [{ partNumber: 'k-1', description: null, quantity: 4 }],
    });
    await send(counted(1, 5), delivery, used);
    expect(await yard()).toMatchObject({ quantity: 7, inSince: 4, usedSince: 2 });
    const three = correction(4, used, { ...repair(3, 3).body }, { occurredAt: used.occurredAt });
    await send(three);
    expect(await yard()).toMatchObject({ quantity: 6 });
    await send(correction(5, three, null));
    expect(await yard()).toMatchObject({ quantity: 9 });
  });

  test('a repair that arrives before the count it comes after draws all the same', async () => {
    await send(repair(3, 2), counted(1, 5));
    expect(await yard()).toMatchObject({ quantity: 3 });
  });

  test('history holds what was recorded of the stock and nothing else', async () => {
    await send(fact('hydrant-model', 1, onUtility), counted(2, 5));
    expect((await stock('clerk')).history.map(({ recorded }) => recorded.submission.kind)).toEqual([
      'stock-count',
    ]);
  });

  test('who may write: crews count and move, managers alone say the least, clerks read', async () => {
    const minimum = fact('stock-minimum', 4, onUtility);
    const status = async (role: 'crew' | 'clerk' | 'manager', each: unknown) =>
      (await world.submit(role, each)).status;
    expect(await status('crew', counted(1, 5))).toBe(201);
    expect(await status('crew', fact('stock-move', 2, onUtility))).toBe(201);
    expect(await status('crew', minimum)).toBe(403);
    expect(await status('clerk', counted(5, 5))).toBe(403);
    expect(await status('manager', minimum)).toBe(201);
    expect((await world.ask('/api/stock', 'clerk')).status).toBe(200);
  });

  test('what is kept for it can be made anew from the ledger, also where it was never kept', async () => {
    const hydrantType = async () => 'unknown' as const;
    const deps = { ...world.stores, hydrantType };
    await send(counted(1, 5), repair(3, 2));
    expect((await rebuild(deps, { write: false })).differences).toEqual([]);
    const version = await world.stores.projections.versionOf('stock-uses', onStrikeId);
    await world.stores.projections.remove('stock-uses', onStrikeId, version);
    expect(await yard()).toMatchObject({ quantity: 5 });
    expect((await rebuild(deps, { write: true })).left).toEqual([]);
    expect(await yard()).toMatchObject({ quantity: 3 });
    await projectStream(deps, `strike:${onStrikeId}`);
    expect(await yard()).toMatchObject({ quantity: 3 });
  });
});

const subject = onStrike(1);
const onStrikeId = subject.type === 'strike' ? subject.strikeId : '';
