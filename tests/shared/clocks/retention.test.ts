import { describe, expect, it } from 'vitest';
import type { Submission } from '../../../shared/submissions/submission.ts';
import { dates, opened, rule, settingsWith, told } from './support.ts';

/** Rules and days here are invented; the counting itself is held against outside sources in tests/reference. */
describe('retention', () => {
  const keep = settingsWith([
    rule({ clock: 'limitation', from: 'strike', count: 2, unit: 'years' }),
    rule({
      clock: 'retention-end',
      from: 'claim-closed',
      count: 3,
      unit: 'years',
      citation: 'Town schedule 7',
    }),
    rule({
      clock: 'retention-end',
      from: 'restitution-ordered',
      count: 10,
      unit: 'years',
      citation: 'Judgments',
    }),
  ]);
  const end = (submissions: readonly Submission[], today = '2026-12-01', settings = keep) =>
    dates([opened(), ...submissions], settings, today)['retention-end'];
  const closed = told('claim-closed', 11, { closedOn: '2026-06-01', how: 'paid' });
  const order = told('restitution-ordered', 12, { orderedOn: '2026-05-01', payBy: null });

  it('is the longest of the schedule, a year beyond the date to sue, and a judgment’s life', () => {
    expect(end([])).toBeUndefined();
    expect(end([closed])).toMatchObject({ dueOn: '2029-06-01', rule: { citation: 'Town schedule 7' } });
    expect(end([closed, order])).toMatchObject({ dueOn: '2036-05-01', rule: { citation: 'Judgments' } });
    const bare = settingsWith([rule({ clock: 'limitation', from: 'strike', count: 2, unit: 'years' })]);
    expect(end([closed], '2026-12-01', bare)).toMatchObject({
      dueOn: '2029-03-03',
      rule: { yearAfterLimitation: true, citation: 'Invented Code 1-2' },
    });
  });

  it('when it is over nothing is late', () => {
    expect(end([closed], '2029-05-31')?.state).toBe('running');
    expect(end([closed], '2029-06-01')?.state).toBe('reached');
    expect(end([closed], '2035-01-01')?.state).toBe('reached');
  });

  it('a legal hold suspends it until it is lifted', () => {
    const hold = (number: number, from: string, what: 'set' | 'lifted') =>
      told('legal-hold', number, { from, hold: what });
    expect(end([closed, hold(13, '2026-07-01', 'set')], '2035-01-01')?.state).toBe('held');
    const lifted = [closed, hold(13, '2026-07-01', 'set'), hold(14, '2027-07-01', 'lifted')];
    expect(end(lifted, '2035-01-01')?.state).toBe('reached');
  });
});
