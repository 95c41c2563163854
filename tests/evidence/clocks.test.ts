import { describe, expect, it } from 'vitest';
import { apartParams, compareClocks, sayClock } from '../../shared/evidence/clocks.ts';
import { say } from '../../shared/words/index.ts';

const none = { cameraTime: null, fileWrittenAt: null, chosenAt: null, satelliteTime: null };
const said = (
  clocks: Partial<typeof none | Record<keyof typeof none, string | null>>,
  locale: 'en' | 'es' = 'en',
) =>
  compareClocks({ ...none, ...clocks }, 'America/New_York').map((finding) =>
    sayClock(finding, (key, params) => say(locale, key, params)),
  );

// New York is five hours behind UTC in November (tz database), so 07:03 there is 12:03 UTC.
describe('the camera’s clock beside the phone’s', () => {
  it('agrees within two minutes', () => {
    expect(said({ cameraTime: '2026-11-08 07:03:12', fileWrittenAt: '2026-11-08T12:03:40.000Z' })).toEqual([
      'The camera’s clock and the phone’s agree.',
    ]);
  });
  it('is ahead when the file was written before it was taken', () => {
    const clocks = { cameraTime: '2026-11-08 07:50:12 -05:00', fileWrittenAt: '2026-11-08T12:03:12Z' };
    expect(said(clocks)).toEqual(['The camera’s clock is 47 min ahead of the phone’s.']);
    expect(said(clocks, 'es')).toEqual(['El reloj de la cámara va 47 min por delante del teléfono.']);
  });
  it('is ahead when the file was chosen before it was taken, where the phone tells no more', () => {
    expect(said({ cameraTime: '2026-11-08 10:08:00', chosenAt: '2026-11-08T12:03:00Z' })).toEqual([
      'The camera’s clock is 3 h 5 min ahead of the phone’s (the camera wrote no time zone).',
    ]);
    expect(said({ cameraTime: '2026-11-08 06:08:00', chosenAt: '2026-11-08T12:03:00Z' })).toEqual([
      'The phone did not tell when the file was written.',
    ]);
  });
  it('may be behind, or the file was copied, when the file was written later: both are said', () => {
    expect(said({ cameraTime: '2026-11-05 07:03:00 -05:00', fileWrittenAt: '2026-11-08T12:03:00Z' })).toEqual(
      [
        'The phone wrote the file 3 days after the camera’s time: the camera’s clock is behind, or the file was copied or changed since.',
      ],
    );
  });
  it('cannot be compared where the camera wrote no time', () => {
    expect(said({ fileWrittenAt: '2026-11-08T12:03:00Z' })).toEqual([
      'The file holds no time of its camera.',
    ]);
    expect(said({ cameraTime: '0000-00-00 00:00:00', fileWrittenAt: '2026-11-08T12:03:00Z' })).toEqual([
      'The file holds no time of its camera.',
    ]);
  });
});

it('the camera’s clock beside the satellites’: a day apart, as in a public sample file', () => {
  // DSCN0010.jpg: camera 2008-10-22 16:28:39, receiver 2008-10-23 14:27:07 UTC, taken in Italy (two hours ahead of UTC):
  // 14:28:39 UTC to 14:27:07 the day after is 23 h 58 min 28 s.
  const [, satellites] = compareClocks(
    { ...none, cameraTime: '2008-10-22 16:28:39', satelliteTime: '2008-10-23T14:27:07Z' },
    'Europe/Rome',
  );
  expect(satellites).toEqual({
    code: 'satellite-ahead',
    apartMs: (23 * 3600 + 58 * 60 + 28) * 1000,
    zoned: false,
  });
});

it.each([
  [60_000 * 59, '59 min'],
  [60_000 * 60, '1 h'],
  [60_000 * 61, '1 h 1 min'],
  [60_000 * 60 * 47, '47 h'],
  [60_000 * 60 * 48, '2 days'],
])('%i ms is %s', (ms, words) => {
  expect(say('en', 'evidence.apart', apartParams(ms))).toBe(words);
});
