import { beforeAll, describe, expect, it } from 'vitest';
import type { Hit } from '../../shared/search/search.ts';
import { sampleBodies } from '../support/sampleBodies.ts';
import { correction, fact, onClaim, onStrike, uuid } from '../support/submissions.ts';
import { streetInventory } from '../network/streetTown.ts';
import { struckHydrant } from '../support/demoClaim.ts';
import { testWorld, type World } from './support/world.ts';

/** Two strikes: the first has a party with a plate and a claim, the second neither. All of it is invented. */
let world: World;
const party = {
  ...sampleBodies.party,
  vehicles: [{ ...sampleBodies.party.vehicles[0]!, plate: 'HTX 4471' }],
  driver: { name: 'Ione Vesperman', address: null, phone: null },
};
const find = async (text: string): Promise<string[]> => {
  const { status, body } = await world.ask('/api/search', 'clerk', { body: { find: text } });
  expect(status).toBe(200);
  return (body['hits'] as Hit[]).map(({ strikeId, by }) => `${strikeId}: ${by.join(', ')}`);
};

beforeAll(async () => {
  world = await testWorld();
  const { submit } = world;
  await world.inventory.publish(
    [{ ...struckHydrant, hydrantId: 'Q-200', place: '9 Fourth St' }],
    streetInventory(uuid(90)),
  );
  const all = [
    fact('adjuster-assigned', 5, onClaim(1), {
      ...sampleBodies['adjuster-assigned'],
      adjuster: { ...sampleBodies['adjuster-assigned'].adjuster, reference: 'HC 55871' },
    }),
    fact('strike', 1, onStrike(1), {
      ...sampleBodies.strike,
      hydrantId: 'Q-100',
      placeDescription: 'Corner of Árbol Street',
      struckAt: '2026-03-04T02:10:00Z',
    }),
    fact('party', 2, onStrike(1), party),
    fact('claim-opened', 3, onClaim(1), {
      ...sampleBodies['claim-opened'],
      strikeId: uuid(1),
      claimNumber: '2026-0042',
      payer: { ...sampleBodies['claim-opened'].payer, name: 'Invented Mutual', reference: 'LM-77812' },
    }),
    fact('strike', 4, onStrike(4), {
      ...sampleBodies.strike,
      hydrantId: 'Q-200',
      placeDescription: 'At the mill',
      struckAt: '2026-02-20T02:10:00Z',
    }),
  ];
  for (const one of all) expect((await submit('manager', one)).status).toBe(201);
});

describe('looking a case up', () => {
  it.each([
    ['2026-0042', [`${uuid(1)}: claim-number`]],
    ['q-200', [`${uuid(4)}: hydrant`]],
    // The strike was on the evening of the 3rd in the utility's zone.
    ['2026-03-03', [`${uuid(1)}: day`]],
    ['2026-02', [`${uuid(4)}: day`]],
    ['invented mut', [`${uuid(1)}: payer`]],
    ['arbol', [`${uuid(1)}: place`]],
    ['HTX-44', [`${uuid(1)}: plate`]],
    ['vesperm', [`${uuid(1)}: person`]],
    // The number that the adjuster says on the phone, by whoever of them gave it.
    ['lm77812', [`${uuid(1)}: payer-number`]],
    ['HC-5587', [`${uuid(1)}: payer-number`]],
    ['9 fourth', [`${uuid(4)}: place`]],
    ['nowhere at all', []],
  ])('%s', async (text, expected) => expect(await find(text)).toEqual(expected));

  it('gives the newest first', async () => {
    expect((await find('Q-')).map((hit) => hit.split(':')[0])).toEqual([uuid(1), uuid(4)]);
  });

  it('finds a plate only as it now stands, and not once it is forgotten', async () => {
    const { ledger } = world.stores;
    const vehicles = [{ ...party.vehicles[0]!, plate: 'ZZZ 900' }];
    expect(
      (
        await world.submit(
          'manager',
          correction(6, fact('party', 2, onStrike(1), party), { ...party, vehicles }),
        )
      ).status,
    ).toBe(201);
    expect(await find('HTX 4471')).toEqual([]);
    expect(await find('ZZZ 900')).toEqual([`${uuid(1)}: plate`]);
    for (const id of [uuid(2), uuid(6)]) await ledger.forget(`strike:${uuid(1)}`, id);
    expect(await find('ZZZ 900')).toEqual([]);
    expect(await find('vesperm')).toEqual([]);
  });

  it('is the desk’s alone, and says what it can take', async () => {
    for (const [role, status] of [
      ['crew', 403],
      [null, 401],
      ['clerk', 200],
      ['manager', 200],
    ] as const)
      expect((await world.ask('/api/search', role, { body: { find: 'HTX' } })).status).toBe(status);
    const short = await world.ask('/api/search', 'clerk', { body: { find: 'q' } });
    expect([short.status, short.body.problems?.[0]?.path]).toEqual([422, 'find']);
  });

  it('leaves no plate in a log', async () => {
    await find('HTX 4471');
    expect(JSON.stringify(world.logged)).not.toContain('4471');
  });
});
