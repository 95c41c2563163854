import { describe, expect, it } from 'vitest';
import { parseSubmission } from '../../../shared/submissions/submission.ts';
import { buildSubmission, subjectFor } from '../../../site/src/app/form/build.ts';
import { specOf } from '../../../site/src/app/form/specs/index.ts';
import type { Draft } from '../../../site/src/app/core/drafts.ts';

const id = (last: string): string => `01900000-0000-7000-8000-0000000000${last}`;
const sender = {
  personId: 'w-101',
  deviceId: 'phone-1',
  units: 'metric',
  now: new Date('2026-03-04T08:00:00Z'),
} as const;
const draft: Draft = {
  submissionId: id('01'),
  kind: 'inspection',
  subject: { type: 'hydrant', hydrantId: 'A-1' },
  authorId: 'w-101',
  openedAt: '2026-03-04T07:00:00.000Z',
  touched: true,
  values: {},
  about: { hydrantId: 'A-1', strikeId: null },
};
const body = {
  inspectedAt: '2026-03-01T12:00:00.000Z',
  byWorkerId: 'w-101',
  result: 'sound',
  findings: [],
  photos: [],
  note: null,
};

describe('a submission as it leaves the device', () => {
  it('is one that the server takes, with the id of its draft and the time it happened', () => {
    const built = buildSubmission(specOf('inspection')!, draft, body, sender);
    expect(parseSubmission(built)).toMatchObject({ ok: true });
    expect(built).toMatchObject({
      submissionId: id('01'),
      occurredAt: '2026-03-01T12:00:00.000Z',
      sentAt: '2026-03-04T08:00:00.000Z',
      enteredUnits: 'metric',
    });
  });

  it('as a correction names its target and keeps the time of the thing', () => {
    const corrects = {
      targetId: id('02'),
      occurredAt: '2026-02-28T00:00:00.000Z',
      reason: ' wrong hydrant ',
      withdraw: false,
    };
    const replaced = buildSubmission(specOf('inspection')!, { ...draft, corrects }, body, sender);
    expect(parseSubmission(replaced)).toMatchObject({ ok: true });
    expect(replaced).toMatchObject({
      kind: 'correction',
      occurredAt: '2026-03-01T12:00:00.000Z',
      body: { targetId: id('02'), targetKind: 'inspection', reason: 'wrong hydrant', replacement: body },
    });
    const withdrawn = buildSubmission(
      specOf('inspection')!,
      { ...draft, corrects: { ...corrects, withdraw: true } },
      null,
      sender,
    );
    expect(parseSubmission(withdrawn)).toMatchObject({ ok: true });
    expect(withdrawn).toMatchObject({ occurredAt: corrects.occurredAt, body: { replacement: null } });
  });

  it('happened when its form was opened, where it says no time of its own, and is sent by whoever sends it', () => {
    const untimed = { ...specOf('inspection')!, occurredAt: () => null };
    const written = { ...draft, authorId: 'w-102' };
    expect(buildSubmission(untimed, written, body, sender)).toMatchObject({
      occurredAt: draft.openedAt,
      person: { personId: 'w-101' },
      device: { deviceId: 'phone-1' },
    });
    expect(buildSubmission(untimed, draft, null, sender)).toMatchObject({ kind: 'inspection', body: {} });
    const corrects = {
      targetId: id('02'),
      occurredAt: '2026-02-28T00:00:00.000Z',
      reason: 'x',
      withdraw: false,
    };
    expect(buildSubmission(untimed, { ...draft, corrects }, body, sender).occurredAt).toBe(
      corrects.occurredAt,
    );
  });

  it('about nothing in hand is about the utility, where its kind may be', () => {
    const none = { hydrantId: null, strikeId: null, claimId: null };
    expect(subjectFor('rate-book', none, () => id('09'))).toEqual({ type: 'utility' });
  });

  it('is about the strike in hand, else the hydrant, else a strike of its own', () => {
    const none = { hydrantId: null, strikeId: null, claimId: null };
    const make = (): string => id('09');
    expect(subjectFor('flow-test', { ...none, hydrantId: 'A', strikeId: id('03') }, make)).toEqual({
      type: 'strike',
      strikeId: id('03'),
    });
    expect(subjectFor('flow-test', { ...none, hydrantId: 'A' }, make)).toEqual({
      type: 'hydrant',
      hydrantId: 'A',
    });
    expect(subjectFor('inspection', { ...none, hydrantId: 'A', strikeId: id('03') }, make)).toEqual({
      type: 'hydrant',
      hydrantId: 'A',
    });
    expect(subjectFor('inspection', none, make)).toBeNull();
    expect(subjectFor('strike', { ...none, hydrantId: 'A' }, make)).toEqual({
      type: 'strike',
      strikeId: id('09'),
    });
    expect(subjectFor('repair', { ...none, hydrantId: 'A' }, make)).toEqual({
      type: 'strike',
      strikeId: id('09'),
    });
    expect(subjectFor('claim-opened', { ...none, strikeId: id('03') }, make)).toEqual({
      type: 'claim',
      claimId: id('09'),
    });
    expect(subjectFor('demand-sent', { ...none, claimId: id('04') }, make)).toEqual({
      type: 'claim',
      claimId: id('04'),
    });
  });
});
