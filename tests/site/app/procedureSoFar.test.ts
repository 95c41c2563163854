import { describe, expect, it } from 'vitest';
import { missingBefore } from '../../../shared/procedure/holdPoints.ts';
import type { Recorded } from '../../../shared/submissions/recorded.ts';
import type { Submission } from '../../../shared/submissions/submission.ts';
import { procedureSoFar } from '../../../site/src/app/form/procedureSoFar.ts';
import { aroundOnDevice } from '../../../site/src/app/offline/localStrike.ts';
import type { Entry } from '../../../site/src/app/outbox/database.ts';
import { at, fact, onHydrant, onStrike, recorded, uuid } from '../../support/submissions.ts';

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
const soFar = (around: readonly Recorded[]) =>
  procedureSoFar({ history: [recorded(safe)], hydrant: null, around }, {}, '', zone);
const missingAt = (minute: number, around: readonly Recorded[]) =>
  missingBefore('taken-down', Date.parse(at(minute)), soFar(around).record);

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
  it('is told at the step that asks for it, the latest closing of all, until it is reopened', () => {
    const closings = [turn(21, 'closed', 9), turn(20, 'closed', 5)];
    expect(soFar(closings).shutValve).toEqual({ valveId: 'V-1', at: at(9), byWorkerId: 'w-8' });
    expect(soFar([...closings, turn(22, 'reopened', 10)]).shutValve).toBeNull();
  });
});

describe('another strike of the same hydrant', () => {
  const refill = fact('repair', 30, onStrike(2), {
    steps: [{ step: 'refilled-slowly', doneAt: at(20), byWorkerId: 'w-8', note: null }],
    reassembledAt: null,
    completedAt: null,
  });
  const reported = fact('strike', 29, onStrike(2), { hydrantId: 'H-12' });
  const entry = (submission: Submission, state = 'waiting') =>
    ({ submission, state, queuedAt: at(40) }) as unknown as Entry;

  it('takes the confirmations back where it let water in, and confirms none', () => {
    expect(missingAt(30, [recorded(refill)])).toEqual(['isolated', 'pressure-gone', 'drained']);
    expect(missingAt(15, [recorded(refill)])).toEqual([]);
    const elsewhere = fact('repair', 31, onStrike(2), { ...safe.body });
    const { record } = procedureSoFar(
      { history: [], hydrant: null, around: [recorded(elsewhere)] },
      {},
      '',
      zone,
    );
    expect(missingBefore('taken-down', Date.parse(at(30)), record)).toEqual([
      'isolated',
      'pressure-gone',
      'drained',
    ]);
  });
  it('is known from the server, and from what waits on this device', () => {
    const ids = (said: readonly Recorded[], waiting: readonly Entry[]) =>
      aroundOnDevice('H-12', [uuid(1)], [said, undefined], waiting).map(
        ({ submission }) => submission.submissionId,
      );
    // What is recorded of the hydrant's own is there; the job's own strike is told by its history.
    expect(ids([recorded(refill), turn(20, 'closed', 5), recorded(safe)], [])).toEqual([uuid(30), uuid(20)]);
    expect(ids([], [entry(reported), entry(refill)])).toEqual([uuid(29), uuid(30)]);
    expect(ids([], [entry(refill)])).toEqual([]);
    const atAnother = fact('strike', 29, onStrike(2), { hydrantId: 'H-13' });
    expect(ids([], [entry(atAnother), entry(refill)])).toEqual([]);
    expect(ids([recorded(refill)], [entry(refill, 'recorded')])).toEqual([uuid(30)]);
    expect(aroundOnDevice(null, [], [[recorded(refill)]], [])).toEqual([]);
  });
});
