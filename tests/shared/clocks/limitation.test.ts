import { describe, expect, it } from 'vitest';
import { limitationOf } from '../../../shared/audit/limitation.ts';
import { dates, opened, rule, settingsWith } from './support.ts';

/** What an adjuster's eye is told of the date to sue is the date that the clocks warn of. */
describe('the date to sue', () => {
  const years = (count: number, more: object = {}) =>
    rule({ clock: 'limitation', from: 'strike', count, unit: 'years', citation: `${count} years`, ...more });

  it.each([
    ['of one rule', settingsWith([years(3)]), '2029-03-03', '3 years'],
    ['of two, the earlier', settingsWith([years(3), years(2)]), '2028-03-03', '2 years'],
    // 3 March 2029 is a Saturday.
    [
      'that falls back to a working day',
      settingsWith([years(3, { ifNotWorking: 'day-before' })]),
      '2029-03-02',
      '3 years',
    ],
    [
      'of the older setting',
      { timeZone: 'UTC', limitation: { years: 1, citation: 'old' } },
      '2027-03-03',
      'old',
    ],
  ])('%s', (_, settings, lastDay, citation) => {
    expect(limitationOf(settings, '2026-03-03')).toEqual({ lastDay, citation });
    expect(dates([opened()], settings, '2026-03-10')['limitation']).toMatchObject({ dueOn: lastDay });
  });

  it('is none without a rule, or a day', () => {
    expect(limitationOf(settingsWith([]), '2026-03-03')).toBeNull();
    expect(limitationOf(settingsWith([years(3)]), '')).toBeNull();
    expect(dates([opened()], settingsWith([years(3)]), '2026-03-10', '')).toEqual({});
  });
});
