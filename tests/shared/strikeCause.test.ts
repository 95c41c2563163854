import { expect, it } from 'vitest';
import { strikeAsSeenBy } from '../../shared/access.ts';
import { project } from '../../shared/projections/project.ts';
import { fact, onStrike, recorded } from '../support/submissions.ts';

it('what led to a strike is the last thing that the desk said of it, and nothing that the crew is told', () => {
  const facts = [
    fact('strike', 1, onStrike(1)),
    fact('party', 2, onStrike(1), { cause: 'left-the-road' }),
    fact('party', 3, onStrike(1), { cause: 'deliberate' }),
    fact('party', 4, onStrike(1), { cause: 'unknown' }),
  ].map((each) => recorded(each));
  const [strike] = project(facts, () => 'unknown').strikes;
  const seen = (role: 'crew' | 'clerk') =>
    strikeAsSeenBy({ personId: 'p', name: 'P', roles: [role] }, strike!).cause;
  expect(strike!.cause).toBe('deliberate');
  expect([seen('crew'), seen('clerk')]).toEqual([undefined, 'deliberate']);
});
