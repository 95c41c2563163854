import { expect, it } from 'vitest';
import { streetInventory } from '../network/streetTown.ts';
import { aHydrant } from '../support/town.ts';
import { uuid } from '../support/submissions.ts';
import { testWorld } from './support/world.ts';

it('a hydrant names those to fall back on, and none that its inventory says is not in use', async () => {
  const world = await testWorld();
  const services = ['active', 'inactive', 'abandoned', 'planned', 'unknown'] as const;
  const row = services.map((service, place) =>
    aHydrant(service.toUpperCase(), { service, latitudeDeg: 39.2 + 0.001 * (place + 1) }),
  );
  await world.inventory.publish([aHydrant('H-1'), ...row], streetInventory(uuid(40)));
  const { body } = await world.ask('/api/hydrants/H-1', 'crew');
  const { nearest } = body as unknown as { nearest: { hydrant: { hydrantId: string } }[] };
  expect(nearest.map(({ hydrant }) => hydrant.hydrantId)).toEqual(['ACTIVE', 'UNKNOWN']);
});
