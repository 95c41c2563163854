import { expect, it } from 'vitest';
import type { Recorded } from '../../shared/submissions/recorded.ts';
import type { Submission } from '../../shared/submissions/submission.ts';
import { fact, onHydrant, onStrike, uuid } from '../support/submissions.ts';
import { testWorld } from './support/world.ts';

/** What a form is told of a hydrant's other streams, so that it holds what the record would hold. */
it('a strike and its hydrant answer with what stands around: valves anywhere, an open strike’s repair, and no trial', async () => {
  const world = await testWorld();
  const tell = async (one: Submission, role: 'crew' | 'manager' = 'crew'): Promise<void> => {
    const { status, body } = await world.submit(role, one);
    expect(status, JSON.stringify(body)).toBeLessThan(300);
  };
  for (const number of [1, 2]) await tell(fact('strike', number, onStrike(number), { hydrantId: 'H-12' }));
  await tell(fact('repair', 10, onStrike(2), { reassembledAt: null, completedAt: null }));
  await tell(fact('valve-operation', 11, onHydrant('H-12'), { valveId: 'V-9' }));
  await tell(fact('valve-operation', 12, onHydrant('H-12'), { valveId: 'V-8' }, { test: true }), 'manager');
  await tell(fact('inspection', 13, onHydrant('H-12')));
  await tell(fact('valve-operation', 14, onStrike(1), { valveId: 'V-7' }));
  const around = async (path: string): Promise<string[]> =>
    ((await world.ask(path, 'crew')).body as unknown as { around: Recorded[] }).around
      .map(({ submission }) => submission.submissionId)
      .sort();
  expect(await around(`/api/strikes/${uuid(1)}`)).toEqual([uuid(2), uuid(10), uuid(11)]);
  expect(await around(`/api/strikes/${uuid(2)}`)).toEqual([uuid(1), uuid(11), uuid(14)]);
  expect(await around('/api/hydrants/H-12')).toEqual([uuid(1), uuid(2), uuid(10), uuid(11), uuid(14)]);
});
