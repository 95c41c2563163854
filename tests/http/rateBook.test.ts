import { describe, expect, it } from 'vitest';
import { correction, fact, onUtility } from '../support/submissions.ts';
import { testWorld } from './support/world.ts';

/** An edition on record is what bills were made by: its id is taken, and it is not replaced. */
describe('an edition of the rate book', () => {
  it('is refused under an id that is on record, and what is recorded stays', async () => {
    const world = await testWorld();
    const first = fact('rate-book', 1, onUtility);
    expect((await world.submit('manager', first)).status).toBe(201);
    expect((await world.submit('manager', first)).status).toBe(200);
    const other = fact('rate-book', 2, onUtility, { ...first.body, title: 'Another' });
    expect(await world.submit('manager', other)).toMatchObject({
      status: 409,
      body: { problems: [{ code: 'edition-taken', path: 'body.editionId' }] },
    });
  });

  it('is taken once by two managers at the same moment', async () => {
    const world = await testWorld();
    const two = [1, 2, 3].map((n) => fact('rate-book', n, onUtility));
    const answers = await Promise.all(two.map((each) => world.submit('manager', each)));
    expect(answers.map(({ status }) => status).sort()).toEqual([201, 409, 409]);
  });

  it('is withdrawn with a reason, not replaced; its id stays taken', async () => {
    const world = await testWorld();
    const first = fact('rate-book', 1, onUtility);
    await world.submit('manager', first);
    expect(
      await world.submit('manager', correction(2, first, { ...first.body, title: 'Better' })),
    ).toMatchObject({
      status: 422,
      body: { problems: [{ code: 'edition-not-edited' }] },
    });
    expect((await world.submit('manager', correction(3, first, null))).status).toBe(201);
    expect((await world.submit('manager', fact('rate-book', 4, onUtility, first.body))).status).toBe(409);
  });
});
