import { beforeEach, describe, expect, test } from 'vitest';
import { projectStream } from '../../functions/project/project.ts';
import { readSources, stillRecorded } from '../../functions/publish/sources.ts';
import { memoryStores, type TableStores } from '../../functions/stores/dynamodb/stores.ts';
import { StoreUnavailable } from '../../functions/stores/faults.ts';
import { objectInventory } from '../../functions/stores/inventory/objectInventory.ts';
import { openObjectStore } from '../../functions/stores/objects/open.ts';
import type { InventoryStore } from '../../functions/stores/inventory/inventory.ts';
import { streamOfSubmission, type Submission } from '../../shared/submissions/submission.ts';
import { buildEdition } from '../../shared/public/build.ts';
import { vanishedOutages } from '../../shared/public/guard.ts';
import { at, correction, fact, onHydrant, onStrike, recorded, uuid } from '../support/submissions.ts';
import { aHydrant, townSettings } from '../support/town.ts';

let stores: TableStores;
let inventory: InventoryStore;
beforeEach(async () => {
  stores = memoryStores();
  inventory = objectInventory(await openObjectStore('memory:'));
});

/** Into the ledger and through the projector, as the real thing does it. */
async function given(...submissions: Submission[]): Promise<void> {
  for (const submission of submissions) {
    await stores.ledger.accept(submission, recorded(submission));
    await projectStream({ ...stores, hydrantType: async () => 'dry-barrel' }, streamOfSubmission(submission));
  }
}
const read = () => readSources({ ...stores, inventory }, '2026-03-05T12:00:00.000Z');
const edition = async () => buildEdition(await read(), townSettings, '2026-03-05T12:00:00.000Z');

describe('the state as the stores have it', () => {
  test('of nothing is nothing, and no inventory', async () => {
    expect(await read()).toEqual({
      unprojected: [],
      inventory: null,
      statuses: [],
      strikes: [],
      claims: [],
      flowTests: new Map(),
    });
  });

  test('a strike that was sent in is out of service on the page', async () => {
    await inventory.publish([aHydrant('H-12'), aHydrant('H-13', { latitudeDeg: 39.201 })], {
      submissionId: uuid(900),
      loadedAt: '2026-01-01T00:00:00Z',
      loadedBy: 'w-1',
      sourceFile: 'town.csv',
      sourceSha256: 'ab'.repeat(32),
      crs: 'EPSG:4326',
      mapping: {},
      rows: 2,
      accepted: 2,
      doubtful: 0,
      rejected: 0,
    });
    await given(fact('strike', 1, onStrike(1)));
    const { snapshot } = await edition();
    expect(snapshot.inventory).toMatchObject({ hydrants: 2, outOfService: 1 });
    expect(snapshot.outOfService).toMatchObject([
      {
        hydrantId: 'H-12',
        outages: [{ outageId: uuid(1), cause: 'strike' }],
        nearest: [{ hydrantId: 'H-13' }],
      },
    ]);
  });

  test('flow tests are found in the stream of a strike and in that of a hydrant, as corrected', async () => {
    const onOwn = fact('flow-test', 2, onHydrant('H-20'), { residualHydrantId: 'H-20', residualPsi: 50 });
    await given(
      fact('strike', 1, onStrike(1)),
      fact('flow-test', 3, onStrike(1)),
      onOwn,
      correction(4, onOwn, { ...onOwn.body, residualPsi: 40 }),
    );
    const { flowTests } = await read();
    expect([...flowTests.keys()].toSorted()).toEqual(['H-12', 'H-20']);
    expect(flowTests.get('H-20')).toMatchObject([{ submissionId: uuid(2), body: { residualPsi: 40 } }]);
  });

  test('a trial and a withdrawn test leave no rating', async () => {
    const withdrawn = fact('flow-test', 2, onHydrant('H-20'), { residualHydrantId: 'H-20' });
    await given(
      withdrawn,
      correction(3, withdrawn, null),
      fact('flow-test', 4, onHydrant('H-21'), { residualHydrantId: 'H-21' }, { test: true }),
    );
    expect((await read()).flowTests.size).toBe(0);
  });

  test('a store that does not answer throws, and never reads as empty', async () => {
    const broken = { ...inventory, current: () => Promise.reject(new StoreUnavailable('no answer')) };
    await expect(
      readSources({ ...stores, inventory: broken }, '2026-03-05T12:00:00.000Z'),
    ).rejects.toBeInstanceOf(StoreUnavailable);
  });
});

describe('an outage that the projections lost', () => {
  test('is still recorded while its strike stands, and is not once it is withdrawn', async () => {
    const strike = fact('strike', 1, onStrike(1));
    await given(strike);
    const vanished = { outageId: uuid(1), hydrantId: 'H-12', cause: 'strike' };
    expect(await stillRecorded(stores.ledger, vanished)).toBe(true);
    await given(correction(2, strike, null));
    expect(await stillRecorded(stores.ledger, vanished)).toBe(false);
  });

  test('of another cause whose hydrant the page does not name is looked for everywhere', async () => {
    const outage = fact('outage', 5, onHydrant('DRIVER ANN'));
    await given(fact('strike', 1, onStrike(1)), outage);
    const vanished = { outageId: uuid(5), hydrantId: null, cause: 'main-shut' };
    expect(await stillRecorded(stores.ledger, vanished)).toBe(true);
    await given(correction(6, outage, null));
    expect(await stillRecorded(stores.ledger, vanished)).toBe(false);
    expect(await stillRecorded(stores.ledger, { ...vanished, outageId: uuid(77) })).toBe(true);
  });

  test('a valve that was closed and is open again is no outage that vanished', async () => {
    await given(
      fact('valve-operation', 5, onHydrant('H-30'), { action: 'closed', valve: 'isolation', at: at(4) }),
    );
    const before = (await edition()).snapshot;
    expect(before.outOfService).toMatchObject([{ outages: [{ cause: 'valve-closed' }] }]);
    await given(fact('valve-operation', 6, onHydrant('H-30'), { action: 'reopened', at: at(6) }));
    const { statuses, strikes } = await read();
    expect(statuses).toMatchObject([{ inService: true }]);
    expect(vanishedOutages(before, statuses, strikes)).toEqual([]);
  });

  test('of another cause is looked for in its hydrant’s stream', async () => {
    const outage = fact('outage', 5, onHydrant('H-30'));
    await given(outage);
    const vanished = { outageId: uuid(5), hydrantId: 'H-30', cause: 'main-shut' };
    expect(await stillRecorded(stores.ledger, vanished)).toBe(true);
    await given(correction(6, outage, null));
    expect(await stillRecorded(stores.ledger, vanished)).toBe(false);
  });
});
