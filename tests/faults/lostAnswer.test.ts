import { describe, expect, it } from 'vitest';
import { runDigest } from '../../functions/digest/run.ts';
import { publishOnce } from '../../functions/publish/publish.ts';
import { POINTER_KEY, readPointer } from '../../functions/publish/pointer.ts';
import { memoryTable } from '../../functions/stores/dynamodb/memoryTable.ts';
import { storesOn } from '../../functions/stores/dynamodb/stores.ts';
import { objectInventory } from '../../functions/stores/inventory/objectInventory.ts';
import { objectLayers } from '../../functions/stores/layers/objectLayers.ts';
import { objectModels } from '../../functions/stores/network/objectModels.ts';
import { memoryObjects } from '../../functions/stores/objects/memory.ts';
import type { ObjectStore } from '../../functions/stores/objects/objects.ts';
import { memoryPublished } from '../../functions/stores/published/memoryPublished.ts';
import type { PublishedStore } from '../../functions/stores/published/published.ts';
import type { MailSender } from '../../functions/stores/mail/mailSender.ts';
import { CLAIM_MS } from '../../shared/digest/outbox.ts';
import { dispatchPatience } from '../../shared/dispatch/notice.ts';
import { aPublisher } from '../support/aPublisher.ts';
import { demanded, digestDeps, record } from '../support/digestWorld.ts';
import { addresses, dispatchWorld } from '../support/dispatchWorld.ts';
import { smallInp } from '../support/networks.ts';
import { at, fact, onStrike } from '../support/submissions.ts';
import { aHydrant, anOutage, aStatus, inventoryOf, townHydrants, townSettings } from '../support/town.ts';
import { townMeta } from '../support/townMeta.ts';
import { flakyTable, type Luck } from './support/flakyTable.ts';

/**
 * A write that landed, whose first answer was lost: the SDK asks again, and the condition that held now fails. The
 * ledger's, the numbers' and the projections' case stand in tests/stores; here is everything else that is written under a
 * condition, at every one of its requests.
 */

describe('letters and messages, when a request to their outbox is sent twice', () => {
  /** One utility, whose outbox alone is on a bad line. */
  function bench(lostAt: number | null, luck: Luck = 'sent-twice') {
    const table = memoryTable();
    let requests = 0;
    const line = (): Luck => ((requests += 1) === lostAt ? luck : 'fine');
    const outbox = flakyTable(table, line);
    return { stores: storesOn((name) => (name === 'outbox' ? outbox : memoryTable())), seen: () => requests };
  }

  it('each daily letter goes once, whichever request it was', async () => {
    const run = async (lostAt: number | null) => {
      const { stores, seen } = bench(lostAt);
      await record(stores, demanded);
      const to: string[] = [];
      const sender: MailSender = { send: async (mail) => `m-${to.push(mail.to)}` };
      let ms = Date.parse('2026-04-22T16:00:00Z');
      const deps = digestDeps(stores, sender, () => new Date(ms));
      await runDigest(deps);
      const requests = seen();
      // The hours after it: a claim whose answer was lost has run out, and the letter is taken again.
      for (let hour = 1; hour <= 3; hour += 1) {
        ms += Math.max(CLAIM_MS, 3_600_000);
        await runDigest(deps);
      }
      return { to: to.sort(), requests };
    };
    const sound = await run(null);
    expect(new Set(sound.to).size).toBe(sound.to.length);
    for (let lostAt = 1; lostAt <= sound.requests; lostAt += 1)
      expect([lostAt, (await run(lostAt)).to]).toEqual([lostAt, sound.to]);
  });

  it('each message to dispatch goes once, whichever request it was', async () => {
    const run = async (lostAt: number | null) => {
      const { stores, seen } = bench(lostAt);
      let ms = Date.parse(at(10));
      const world = dispatchWorld({ stores, hydrants: townHydrants(20), now: () => new Date(ms) });
      await world.accept(fact('strike', 9, onStrike(9), { hydrantId: 'H-0001', dispatch: null }));
      const items = world.take();
      await world.wake(items);
      const requests = seen();
      for (let minutes = 0; minutes < 10; minutes += 1) {
        ms += dispatchPatience.firstWaitMs;
        await world.wake();
      }
      return { to: world.went.map(({ to }) => to).sort(), requests };
    };
    const sound = await run(null);
    expect(sound.to).toEqual([...addresses].sort());
    for (let lostAt = 1; lostAt <= sound.requests; lostAt += 1)
      expect([lostAt, (await run(lostAt)).to]).toEqual([lostAt, sound.to]);
  });
});

describe('files under a condition, when the put that landed is sent twice', () => {
  /** An object store of which the nth put is answered as if somebody else had been there. */
  function twice(lostAt: number | null): ObjectStore & { readonly puts: () => number } {
    const objects = memoryObjects();
    let puts = 0;
    return {
      ...objects,
      puts: () => puts,
      put: async (key, bytes, options) => {
        const first = await objects.put(key, bytes, options);
        return (puts += 1) === lostAt ? objects.put(key, bytes, options) : first;
      },
    };
  }
  const loaded = { loadedAt: '2026-03-04T12:00:00Z', loadedBy: 'm-401' };
  const source = {
    file: 'streets.geojson',
    sha256: 'ab'.repeat(32),
    crs: 'EPSG:4326',
    features: 1,
    accepted: 1,
    doubtful: 0,
    rejected: 0,
  };
  const outline = { nodes: [], links: [] };
  const loads: readonly [string, (objects: ObjectStore) => Promise<unknown>][] = [
    ['an inventory', (objects) => objectInventory(objects).publish(townHydrants(20), townMeta(20))],
    [
      'a layer',
      (objects) =>
        objectLayers(objects).publish('streets', { ...loaded, data: { bytes: Buffer.from('x'), source } }),
    ],
    [
      'a network model',
      (objects) =>
        objectModels(objects).publish(Buffer.from(smallInp), outline as never, {
          ...loaded,
          datedOn: '2026-01-15',
          hour: 0,
          rule: { crs: null, nodeOf: {}, withinFt: 300 },
          sourceFile: 'town.inp',
        }),
    ],
  ];

  it.each(loads)('%s is one edition', async (_, load) => {
    const sound = twice(null);
    const answer = await load(sound);
    const keys = await sound.list('');
    for (let lostAt = 1; lostAt <= sound.puts(); lostAt += 1) {
      const objects = twice(lostAt);
      expect(await load(objects)).toEqual(answer);
      expect([lostAt, await objects.list('')]).toEqual([lostAt, keys]);
    }
  });
});

describe('the public pages, when the put that landed is sent twice', () => {
  const hydrants = [aHydrant('A'), aHydrant('B', { latitudeDeg: 39.201 })];
  const sources = {
    inventory: inventoryOf(hydrants),
    statuses: [aStatus('A', [anOutage('o-A', { cause: 'frozen' as const })])],
    strikes: [],
    flowTests: new Map(),
  };
  const minute = (minutes: number): Date => new Date(Date.UTC(2026, 2, 4, 20, minutes));

  function twice(lostAt: number | null) {
    const store = memoryPublished();
    let puts = 0;
    const line: PublishedStore = {
      get: (key) => store.get(key),
      head: (key) => store.head(key),
      put: async (key, object, expected) => {
        const first = await store.put(key, object, expected);
        return (puts += 1) === lostAt ? store.put(key, object, expected) : first;
      },
    };
    return { store, line, puts: () => puts };
  }
  const contents = ({ objects }: ReturnType<typeof memoryPublished>) =>
    Object.fromEntries(
      [...objects].filter(([key]) => key !== POINTER_KEY).map(([key, { bytes }]) => [key, bytes]),
    );

  it('what stands is the same, to the byte, and the next publication goes on from it', async () => {
    const sound = twice(null);
    await publishOnce(aPublisher(sound.line, sources, townSettings), minute(5));
    const puts = sound.puts();
    for (let lostAt = 1; lostAt <= puts; lostAt += 1) {
      const { store, line } = twice(lostAt);
      await publishOnce(aPublisher(line, sources, townSettings), minute(5));
      expect([lostAt, contents(store)]).toEqual([lostAt, contents(sound.store)]);
      expect((await readPointer(store)).pointer.checkedAt).toBe(minute(5).toISOString());
      const { outcome } = await publishOnce(aPublisher(line, sources, townSettings), minute(10));
      expect([lostAt, outcome]).toEqual([lostAt, 'published']);
      expect((await readPointer(store)).pointer.underWay).toEqual([]);
    }
  }, 60_000);
});
