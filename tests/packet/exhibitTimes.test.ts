import { describe, expect, it } from 'vitest';
import { createEvidenceStore } from '../../functions/stores/evidence/byHash.ts';
import { memoryObjects } from '../../functions/stores/objects/memory.ts';
import { exhibitTimes, photoPlace, photoTimes } from '../../shared/packet/exhibitTimes.ts';
import { pageMark, withPages } from '../../shared/packet/pageMarks.ts';
import type { Photo } from '../../shared/packet/photos.ts';
import { readerOf } from '../../shared/packet/reader.ts';

const timeZone = 'America/New_York';
const reader = readerOf({ locale: 'en', units: 'us', timeZone });
const photo = {
  takenAt: '2026-11-08T12:03:00.000Z',
  cameraTime: '2026-11-08 07:03:12',
  cameraPosition: { latitudeDeg: 41, longitudeDeg: -60 },
  hashRecordedAt: '2026-11-08T12:30:00.000Z',
  bytesArrivedAt: '2026-11-08T15:45:00.000Z',
} as Photo;
const said = (more: Partial<Photo>): string => photoTimes({ ...photo, ...more }, { timeZone }, reader);

describe('when a photo was captured, recorded and arrived', () => {
  it('by its camera, where the form and the file agree (Eastern time is five hours behind in November)', () => {
    expect(said({})).toBe(
      'Captured Nov 8, 2026, 7:03 AM EST (source: camera, 2026-11-08 07:03:12). Hash recorded Nov 8, 2026, 7:30 AM EST, bytes arrived Nov 8, 2026, 10:45 AM EST.',
    );
    expect(said({ cameraTime: '2026-11-08 04:03:12 -08:00' })).toContain('source: camera');
  });

  it('says that two sources differ and by how much', () => {
    expect(said({ cameraTime: '2026-11-08 06:03:00' })).toContain(
      '(source: whoever handed it in); by the camera 2026-11-08 06:03:00. Hash recorded',
    );
    expect(said({ cameraTime: '2026-11-08 06:03:00' })).toContain('These two differ by 1 h.');
    expect(said({ cameraTime: null })).toContain('source: whoever handed it in; the file holds no time');
    expect(said({ takenAt: null })).toContain('Captured 2026-11-08 07:03:12 (source: camera');
  });

  it('says when an order cannot be', () => {
    expect(said({ takenAt: '2026-11-08T13:00:00.000Z', cameraTime: null })).toContain(
      'clock that gave it was wrong',
    );
    expect(said({ bytesArrivedAt: '2026-11-07T15:45:00.000Z' })).toContain('had arrived before');
    expect(exhibitTimes({ ...photo, bytesArrivedAt: null }, reader)).toBe(
      'Hash recorded Nov 8, 2026, 7:30 AM EST.',
    );
  });

  it('the camera’s place, with its distance from the hydrant', () => {
    // One degree of a meridian on a sphere of 6,371,008.8 m is 111,195.08 m; a thousandth is 111 m or 365 ft.
    const hydrant = { position: { latitudeDeg: 41.001, longitudeDeg: -60 } } as never;
    expect(photoPlace(photo, { hydrant }, reader)).toBe(
      'Camera’s position: 41.00000, -60.00000 (WGS 84), 365 ft from the hydrant.',
    );
    expect(photoPlace(photo, { hydrant }, readerOf({ locale: 'en', units: 'metric', timeZone }))).toContain(
      '111 m',
    );
  });
});

it('the store tells when bytes came, to the second, and the first time counts', async () => {
  let now = new Date('2026-11-08T15:45:10.900Z');
  const store = createEvidenceStore(
    memoryObjects(() => now),
    null as never,
  );
  const { sha256 } = await store.put(new Uint8Array([1, 2]), 'image/jpeg');
  now = new Date('2026-11-09T00:00:00.000Z');
  await store.put(new Uint8Array([1, 2]), 'image/jpeg');
  expect(await store.arrivedAt(sha256)).toBe('2026-11-08T15:45:10.000Z');
  expect(await store.arrivedAt('0'.repeat(64))).toBeNull();
});

it('pages of an exhibit are filled in where they are known', () => {
  const [one, other, none] = ['a', 'b', 'c'].map((sign) => sign.repeat(64)) as [string, string, string];
  const block = {
    type: 'table',
    summary: '',
    columns: [],
    rows: [{ cells: [pageMark(one), pageMark(other), pageMark(none)] }],
  } as const;
  const pages = new Map([
    [one, [4, 4] as const],
    [other, [5, 9] as const],
  ]);
  expect(withPages(block, pages).rows[0]?.cells).toEqual(['4', '5–9', '–']);
});
