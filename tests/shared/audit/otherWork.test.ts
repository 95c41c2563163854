import { describe, expect, it } from 'vitest';
import { limitationOf } from '../../../shared/audit/limitation.ts';
import { otherStrikes, otherWork } from '../../../shared/audit/otherWork.ts';
import type { StrikeState } from '../../../shared/strikes/state.ts';
import type { BodyOf } from '../../../shared/submissions/submission.ts';

/** What a utility's other strikes say of one. The limits are common practice, no source; hours are by hand. */
const strike = (strikeId: string, since: string, returnedAt: string | null = null) =>
  ({ strikeId, since, returnedAt, memberIds: [strikeId] }) as unknown as StrikeState;
const repair = (damage: string, ...crew: (readonly [string, string, string])[]) =>
  ({
    damage,
    crew: crew.map(([workerId, from, to]) => ({ workerId, work: [{ from, to }] })),
  }) as unknown as BodyOf<'repair'>;

const own = strike('own', '2026-03-04T02:00:00Z');
const lastYear = strike('last-year', '2025-04-01T12:00:00Z', '2025-04-02T12:00:00Z');
const sameWeek = strike('same-week', '2026-03-06T12:00:00Z');
const later = strike('later', '2026-06-01T12:00:00Z', '2026-06-02T12:00:00Z');

describe('the utility’s other strikes', () => {
  it('are those near in time, and those before it that are over', () => {
    const { near, past } = otherStrikes(own, [own, lastYear, sameWeek, later]);
    expect(near.map(({ strikeId }) => strikeId)).toEqual(['same-week']);
    expect(past.map(({ strikeId }) => strikeId)).toEqual(['last-year']);
  });

  it('tell the hours of the same people, and what a repair of the same extent took', () => {
    const repairs = new Map([
      ['same-week', [repair('main', ['w-1', '2026-03-06T12:00:00Z', '2026-03-06T14:00:00Z'])]],
      [
        'last-year',
        [
          repair(
            'breakaway-kit',
            ['w-1', '2025-04-02T08:00:00Z', '2025-04-02T10:00:00Z'],
            ['w-2', '2025-04-02T08:00:00Z', '2025-04-02T09:30:00Z'],
          ),
        ],
      ],
    ]);
    const asked = (damage: string) =>
      otherWork(otherStrikes(own, [lastYear, sameWeek]), [repair(damage)], repairs);
    expect(asked('breakaway-kit')).toEqual({
      elsewhere: [
        {
          strikeId: 'same-week',
          workerId: 'w-1',
          from: '2026-03-06T12:00:00Z',
          to: '2026-03-06T14:00:00Z',
        },
      ],
      // 2 h and 1.5 h.
      pastRepairs: [{ people: 2, laborHours: 3.5 }],
    });
    expect(asked('main').pastRepairs).toEqual([]);
  });
});

describe('the last day to sue', () => {
  it('is whole years after the strike, by a setting with its citation', () => {
    const settings = { limitation: { years: 3, citation: 'Code § 1' } };
    expect(limitationOf(settings, '2026-03-04')).toEqual({ lastDay: '2029-03-04', citation: 'Code § 1' });
    expect(limitationOf(settings, '2024-02-29')?.lastDay).toBe('2027-02-28');
  });

  it('is not guessed where there is no setting, or no day', () => {
    expect(limitationOf({}, '2026-03-04')).toBeNull();
    expect(limitationOf({ limitation: { years: 3, citation: 'Code' } }, '')).toBeNull();
  });
});
