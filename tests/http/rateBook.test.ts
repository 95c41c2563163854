import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { EditionsOnRecord } from '../../shared/costs/editionsOnRecord.ts';
import { storesOnDynalite, type OpenedStores } from '../support/stores.ts';
import { correction, fact, onUtility, uuid } from '../support/submissions.ts';
import { testWorld, type World } from './support/world.ts';

/** An edition on record is what bills were made by: its id is taken, and it is not replaced. Tables over HTTP. */
let opened: OpenedStores;
let world: World;
let number = 0;
/** A new edition under an id of its own. */
const next = () => {
  number += 10;
  const { body } = fact('rate-book', number, onUtility);
  return fact('rate-book', number, onUtility, { ...body, editionId: `e-${number}` });
};
const onRecord = async (): Promise<EditionsOnRecord> =>
  (await world.ask('/api/rate-books', 'clerk')).body as unknown as EditionsOnRecord;

beforeAll(async () => {
  opened = await storesOnDynalite();
  world = await testWorld({ stores: opened.stores });
});
afterAll(async () => opened.close());

describe('an edition of the rate book', () => {
  it('is refused under an id that is on record, and what is recorded stays', async () => {
    const first = next();
    expect((await world.submit('manager', first)).status).toBe(201);
    expect((await world.submit('manager', first)).status).toBe(200);
    const other = fact('rate-book', number + 1, onUtility, { ...first.body, title: 'Another' });
    expect(await world.submit('manager', other)).toMatchObject({
      status: 409,
      body: { problems: [{ code: 'edition-taken', path: 'body.editionId' }] },
    });
  });

  it('sent again under another submission with the same content is a repeat of the first, which is named', async () => {
    const first = next();
    await world.submit('manager', first);
    const before = await onRecord();
    const again = fact('rate-book', number + 1, onUtility, first.body);
    for (const sent of [again, again])
      expect(await world.submit('manager', sent)).toMatchObject({
        status: 200,
        body: {
          submissionId: uuid(number + 1),
          outcome: 'repeat',
          repeats: uuid(number),
          recordedAt: '2026-03-04T12:00:00.000Z',
        },
      });
    expect(await onRecord()).toEqual(before);
  });

  it('is recorded once by managers who send it at the same moment', async () => {
    const { body } = next();
    const three = [0, 1, 2].map((n) => fact('rate-book', number + n, onUtility, body));
    const answers = await Promise.all(three.map((each) => world.submit('manager', each)));
    const statuses = answers.map(({ status }) => status).sort();
    expect(statuses.filter((status) => status === 201)).toHaveLength(1);
    // Who came too early to read the other's record is refused, and told of it on the next try.
    expect(statuses.filter((status) => status === 200 || status === 409)).toHaveLength(2);
    for (const each of three) expect((await world.submit('manager', each)).status).toBe(200);
    expect((await onRecord()).editions.filter(({ editionId }) => editionId === body.editionId)).toHaveLength(
      1,
    );
  });

  it('is withdrawn with a reason, not replaced; its id stays taken, also for the same content', async () => {
    const first = next();
    await world.submit('manager', first);
    expect(
      await world.submit('manager', correction(number + 1, first, { ...first.body, title: 'Better' })),
    ).toMatchObject({ status: 422, body: { problems: [{ code: 'edition-not-edited' }] } });
    const withdrawal = correction(number + 2, first, null);
    expect((await world.submit('clerk', withdrawal)).status).toBe(403);
    expect((await world.submit('manager', withdrawal)).status).toBe(201);
    expect(await world.submit('manager', fact('rate-book', number + 3, onUtility, first.body))).toMatchObject(
      {
        status: 409,
        body: { problems: [{ code: 'edition-withdrawn', path: 'body.editionId' }] },
      },
    );
  });

  it('is told with the submission that recorded it, and when withdrawn with who did and why', async () => {
    const [stands, gone] = [next(), next()];
    for (const each of [stands, gone]) await world.submit('manager', each);
    await world.submit('manager', correction(number + 1, gone, null));
    const { editions, records, withdrawn } = await onRecord();
    expect(records.map(({ editionId }) => editionId)).toEqual(editions.map(({ editionId }) => editionId));
    expect(records.find(({ editionId }) => editionId === stands.body.editionId)).toMatchObject({
      submissionId: stands.submissionId,
      latestId: stands.submissionId,
    });
    expect(editions.some(({ editionId }) => editionId === gone.body.editionId)).toBe(false);
    expect(withdrawn.find(({ editionId }) => editionId === gone.body.editionId)).toMatchObject({
      submissionId: gone.submissionId,
      latestId: uuid(number + 1),
      edition: gone.body,
      reason: correction(1, gone, null).body.reason,
    });
  });
});
