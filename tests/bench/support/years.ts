import type { Submission } from '../../../shared/submissions/submission.ts';
import { correction, fact, onHydrant, onStrike, uuid } from '../../support/submissions.ts';

/** Ten submissions to a strike, a hydrant to each three strikes, a correction and a link now and then. */
export function years(count: number): Submission[] {
  return Array.from({ length: Math.ceil(count / 10) }, (_, index) => {
    const n = 1 + index * 10;
    const hydrantId = `H-${Math.floor(index / 3)}`;
    const strike = fact('strike', n, onStrike(n), { hydrantId });
    return [
      strike,
      fact('party', n + 1, onStrike(n)),
      fact('out-of-service-notice', n + 2, onStrike(n)),
      fact('valve-operation', n + 3, onStrike(n)),
      fact('expected-return', n + 4, onStrike(n)),
      fact('repair', n + 5, onStrike(n), { hydrantId }),
      fact('flow-test', n + 6, onStrike(n), { residualHydrantId: hydrantId }),
      index % 5 === 0
        ? correction(n + 7, strike, { ...strike.body, note: 'Second look' })
        : fact('inspection', n + 7, onHydrant(hydrantId)),
      index % 20 === 1
        ? fact('link', n + 8, onStrike(n), { sameAsStrikeId: uuid(n - 10) })
        : fact('planned-work', n + 8, onStrike(n)),
      fact('return-to-service', n + 9, onStrike(n), { closes: [uuid(n)] }),
    ];
  })
    .flat()
    .slice(0, count);
}
