import { describe, expect, test } from 'vitest';
import { dateWords, dayOf, localDate, timeOfDay, zoneName } from '../../shared/public/times.ts';

const chicago = { timeZone: 'America/Chicago', locale: 'en' } as const;

describe('times for the public', () => {
  // Central time is UTC−6 and UTC−5 in summer; in 2026 summer time begins on 8 March at 02:00 (15 U.S.C. 260a).
  test.each([
    ['2026-03-04T20:05:00Z', '14:05', 'CST'],
    ['2026-03-08T07:59:00Z', '01:59', 'CST'],
    ['2026-03-08T08:00:00Z', '03:00', 'CDT'],
    ['2026-03-05T06:00:00Z', '00:00', 'CST'],
  ])('%s is %s %s in Chicago', (instant, time, zone) => {
    expect(timeOfDay(instant, chicago)).toBe(time);
    expect(zoneName(instant, chicago)).toBe(zone);
  });

  test('the day is the utility’s, in either language, with the year only when it is another', () => {
    expect(dayOf('2026-03-05T05:59:00Z', chicago, '2026-03-05T06:30:00Z')).toBe('Wed, Mar 4');
    expect(dayOf('2025-12-31T23:00:00Z', chicago, '2026-01-02T00:00:00Z')).toBe('Wed, Dec 31, 2025');
    const spanish = dayOf('2026-03-04T20:05:00Z', { ...chicago, locale: 'es' }, '2026-03-04T20:05:00Z');
    expect(spanish).toMatch(/^mié\.?, 4 (de )?mar/);
  });

  test('a calendar date is no instant', () => {
    expect(localDate('2026-03-05T05:59:00Z', 'America/Chicago')).toBe('2026-03-04');
    expect(dateWords('2025-05-14', 'en')).toBe('May 14, 2025');
  });
});
