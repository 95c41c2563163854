import { describe, expect, it } from 'vitest';
import type { ListedDeadline } from '../../../shared/clocks/list.ts';
import { digestOf } from '../../../shared/digest/digest.ts';
import { dates, opened, rule, settingsWith, told, uuid } from '../clocks/support.ts';

/** A claim of 60 demands, each to be followed up, and one last day to sue; all of it is invented. */
const settings = settingsWith([
  rule({ clock: 'follow-up-by', from: 'offer-made', count: 1 }),
  rule({ clock: 'limitation', from: 'strike', count: 1, unit: 'years' }),
]);
const offers = Array.from({ length: 60 }, (_, index) =>
  told('offer-made', 10 + index, { offeredOn: '2026-04-01', expiresOn: '2026-05-01' }),
);
const listed = (today: string): ListedDeadline[] =>
  Object.values(dates([opened(), ...offers], settings, today)).map((deadline) => ({
    ...deadline,
    claimId: uuid(1),
    claimNumber: '2026-0007',
    strikeId: uuid(9),
    payerKind: 'drivers-insurer',
    payerName: null,
  }));

describe('a letter of many dates', () => {
  it('leaves some to the desk and says how many, but never the last day to sue', () => {
    const today = '2028-01-01';
    const deadlines = listed(today);
    const { text } = digestOf({
      deadlines,
      quiet: [],
      today,
      locale: 'en',
      utilityName: 'Water',
      publicUrl: null,
      notSet: [],
      undelivered: 0,
    });
    expect(deadlines.filter(({ state }) => state === 'overdue').length).toBeGreaterThan(60);
    expect(text.match(/^Mar 3, 2027 .*/m)?.[0]).toContain('Last day to sue');
    const named = text.split('\n').filter((line) => / {2}2026-0007 {2}/.test(line)).length;
    const more = Number(/and (\d+) more/i.exec(text)?.[1]);
    expect(named + more).toBe(deadlines.filter(({ state }) => state === 'overdue').length);
  });
});
