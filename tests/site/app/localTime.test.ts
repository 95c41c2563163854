import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  localDay,
  localMinute,
  readLocalTime,
  writeLocalTime,
} from '../../../site/src/app/form/localTime.ts';

/**
 * Clock changes in the United States: the second Sunday of March and the first Sunday of November at 2 a.m.
 * (15 U.S.C. § 260a; from memory): in 2026, March 8 and November 1. Eastern time is UTC−5, daylight time UTC−4.
 */
const zone = 'America/New_York';

describe('a typed time in the utility’s zone', () => {
  it.each([
    ['2026-03-04T02:10', '2026-03-04T07:10:00.000Z'],
    ['2026-07-04T23:59', '2026-07-05T03:59:00.000Z'],
    ['2026-03-08T01:59', '2026-03-08T06:59:00.000Z'],
    ['2026-03-08T03:00', '2026-03-08T07:00:00.000Z'],
    ['2026-03-04T02:10:30', '2026-03-04T07:10:30.000Z'],
  ])('%s is %s', (typed, instant) => {
    expect(readLocalTime(typed, zone)).toEqual({ ok: true, instant });
  });

  it('does not exist in the hour that the clock skips', () => {
    expect(readLocalTime('2026-03-08T02:30', zone)).toEqual({ ok: false, code: 'time-skipped' });
  });

  it('asks which one in the hour that comes twice, and takes the answer', () => {
    expect(readLocalTime('2026-11-01T01:30', zone)).toEqual({
      ok: false,
      code: 'time-twice',
      offsets: ['-04:00', '-05:00'],
    });
    expect(readLocalTime('2026-11-01T01:30@-04:00', zone)).toEqual({
      ok: true,
      instant: '2026-11-01T05:30:00.000Z',
    });
    expect(readLocalTime('2026-11-01T01:30@-05:00', zone)).toEqual({
      ok: true,
      instant: '2026-11-01T06:30:00.000Z',
    });
  });

  it.each(['?', '2026-03-04', 'T02:10', 'yesterday', ''])('%j is incomplete', (typed) => {
    expect(readLocalTime(typed, zone)).toEqual({ ok: false, code: 'time-incomplete' });
  });

  it('gives back the very instant it was written from, in any zone, through every clock change', () => {
    fc.assert(
      fc.property(
        fc.date({ min: new Date('2020-01-01'), max: new Date('2035-01-01'), noInvalidDate: true }),
        fc.constantFrom(
          'America/New_York',
          'America/Denver',
          'America/Phoenix',
          'Australia/Lord_Howe',
          'UTC',
        ),
        (date, anyZone) => {
          const instant = date.toISOString();
          expect(readLocalTime(writeLocalTime(instant, anyZone), anyZone)).toEqual({ ok: true, instant });
        },
      ),
      { numRuns: 500 },
    );
  });

  it('writes now to the minute, and the day that it is there', () => {
    const now = new Date('2026-03-04T02:10:59.999Z');
    expect(localMinute(now, zone)).toBe('2026-03-03T21:10');
    expect(localDay(now, zone)).toBe('2026-03-03');
  });
});
