import { expect, it } from 'vitest';
import { demoRateBooks } from '../../infra/local/demo/rates.ts';
import { fact, onUtility } from '../support/submissions.ts';
import { testWorld } from './support/world.ts';

it('GET /api/job-codes gives the crew codes and titles of today’s edition, in the utility’s zone', async () => {
  const [edition] = demoRateBooks;
  // Midnight of the first day has passed in Greenwich and not yet at the utility.
  const world = await testWorld({ now: () => new Date('2026-07-01T02:00:00Z') });
  const june = { ...edition!, editionId: 'june', effectiveFrom: '2026-06-01', effectiveTo: null };
  const july = { ...edition!, editionId: 'july', effectiveFrom: '2026-07-01', effectiveTo: null };
  for (const [index, body] of [june, july].entries())
    expect((await world.submit('manager', fact('rate-book', index + 1, onUtility, body))).status).toBe(201);

  expect((await world.ask('/api/job-codes', null)).status).toBe(401);
  for (const role of ['crew', 'clerk', 'manager'] as const) {
    const { status, body } = await world.ask('/api/job-codes', role);
    expect([status, body['editionId']]).toEqual([200, 'june']);
    expect(body['labor']).toContainEqual({ code: 'crew-lead', title: 'Crew lead' });
  }
  expect((await world.ask('/api/rate-books', 'crew')).status).toBe(403);
});
