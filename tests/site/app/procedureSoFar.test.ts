import { describe, expect, it } from 'vitest';
import { missingBefore } from '../../../shared/procedure/holdPoints.ts';
import type { Recorded } from '../../../shared/submissions/recorded.ts';
import { procedureSoFar } from '../../../site/src/app/form/procedureSoFar.ts';
import { at, fact, onHydrant, onStrike, recorded } from '../../support/submissions.ts';

/** The form may not offer a take-down that the record would then show as a breach (design decision 7). */
const zone = 'America/New_York';
const safe = fact('repair', 10, onStrike(1), {
  steps: (['isolated', 'pressure-gone', 'drained'] as const).map((step, index) => ({
    step,
    doneAt: at(10 + index),
    byWorkerId: 'w-7',
    note: null,
  })),
  reassembledAt: null,
  completedAt: null,
});
const turn = (number: number, action: 'closed' | 'reopened', minute: number) =>
  recorded(fact('valve-operation', number, onHydrant('H-12'), { action, at: at(minute), byWorkerId: 'w-8' }));
const soFar = (ofHydrant: readonly Recorded[]) =>
  procedureSoFar({ history: [recorded(safe)], hydrant: null, ofHydrant }, {}, '', zone);
const missingAt = (minute: number, ofHydrant: readonly Recorded[]) =>
  missingBefore('taken-down', Date.parse(at(minute)), soFar(ofHydrant).record);

describe('a valve turned from the hydrant’s own page', () => {
  it('takes the confirmations back where it let water in again', () => {
    expect(missingAt(30, [])).toEqual([]);
    expect(missingAt(30, [turn(20, 'closed', 5), turn(21, 'reopened', 20)])).toEqual([
      'isolated',
      'pressure-gone',
      'drained',
    ]);
    expect(missingAt(30, [turn(20, 'closed', 5), turn(21, 'reopened', 8)])).toEqual([]);
  });
  it('is told at the step that asks for it, the latest closing of all', () => {
    const { shutValve } = soFar([turn(21, 'closed', 9), turn(20, 'closed', 5)]);
    expect(shutValve).toEqual({ valveId: 'V-1', at: at(9), byWorkerId: 'w-8' });
  });
});
