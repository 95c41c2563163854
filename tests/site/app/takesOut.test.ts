import { describe, expect, it } from 'vitest';
import type { Entry } from '../../../site/src/app/outbox/database.ts';
import { takesOut, unsentFor } from '../../../site/src/app/outbox/takesOut.ts';
import type { Submission } from '../../../shared/submissions/submission.ts';
import { correction, fact, onHydrant, onStrike } from '../../support/submissions.ts';

/** Until the server has confirmed an outage the screen says to tell dispatch: which entries are one, and who is told. */
const entry = (submission: Submission, more: Partial<Entry> = {}): Entry => ({
  submissionId: submission.submissionId,
  submission,
  author: { personId: 'w-7', name: 'Odalys Brennick' },
  draft: {
    submissionId: submission.submissionId,
    kind: submission.kind,
    subject: submission.subject,
    authorId: 'w-7',
    openedAt: submission.occurredAt,
    touched: true,
    values: {},
    about: { hydrantId: 'H-12', strikeId: null },
  },
  state: 'waiting',
  problems: [],
  lastError: null,
  lastTriedAt: null,
  tries: 0,
  queuedAt: submission.occurredAt,
  recordedAt: null,
  photos: [],
  ...more,
});
const strike = fact('strike', 1, onStrike(1), { hydrantId: 'H-12' });
const inspection = fact('inspection', 2, onHydrant('H-12'));

describe('what takes a hydrant out', () => {
  it('is a strike and an outage, sent for the first time', () => {
    expect(takesOut(entry(strike))).toBe(true);
    expect(takesOut(entry(fact('outage', 3, onHydrant('H-12'))))).toBe(true);
    expect(takesOut(entry(inspection))).toBe(false);
  });

  it('is the hydrant’s own valve closed from its page: the server counts that as out', () => {
    const turn = (subject = onHydrant('H-12'), body = {}) =>
      takesOut(entry(fact('valve-operation', 4, subject, { action: 'closed', valve: 'isolation', ...body })));
    expect(turn()).toBe(true);
    expect(turn(onHydrant('H-12'), { action: 'reopened' })).toBe(false);
    expect(turn(onHydrant('H-12'), { valve: 'main-line' })).toBe(false);
    // Its strike says that the hydrant is out.
    expect(turn(onStrike(1))).toBe(false);
  });

  it('is a correction that names another hydrant, and no other correction', () => {
    const corrected = (hydrantId: string | null | undefined, replacement: Record<string, unknown> | null) => {
      const base = entry(correction(5, strike, replacement));
      const corrects = { targetId: strike.submissionId, occurredAt: '', reason: '', withdraw: false };
      const draft = {
        ...base.draft,
        corrects: { ...corrects, ...(hydrantId === undefined ? {} : { hydrantId }) },
      };
      return takesOut({ ...base, draft });
    };
    expect(corrected('H-12', { ...strike.body, hydrantId: 'H-13' })).toBe(true);
    expect(corrected(null, { ...strike.body, hydrantId: 'H-13' })).toBe(true);
    expect(corrected('H-12', { ...strike.body, note: 'By the church' })).toBe(false);
    expect(corrected('H-12', { ...strike.body, hydrantId: null })).toBe(false);
    expect(corrected('H-12', null)).toBe(false);
    expect(corrected(undefined, { ...strike.body, hydrantId: 'H-13' })).toBe(false);
  });
});

describe('who is told', () => {
  const all = [entry(strike), entry(inspection)];
  it('is whoever holds the device, whoever wrote it; what else waits is its author’s', () => {
    expect(unsentFor(all, 'w-7')).toEqual({ mine: 2, outages: 1 });
    expect(unsentFor(all, 'w-8')).toEqual({ mine: 0, outages: 1 });
    expect(unsentFor(all, null)).toEqual({ mine: 2, outages: 1 });
  });
  it('is nobody once the server has it, though photos are still to go', () => {
    expect(unsentFor([entry(strike, { state: 'recorded' })], 'w-8')).toEqual({ mine: 0, outages: 0 });
    expect(unsentFor([entry(strike, { state: 'refused' })], 'w-8')).toEqual({ mine: 0, outages: 1 });
  });
});
