import { greatCircleFt, type Position } from '../nearest/sphere.ts';
import { convert } from '../units/convert.ts';
import { formatNumber, unitSymbol, type Reader } from '../units/format.ts';
import { compareClocks, SAME_CLOCK_MS, sayClock, type PhotoClocks } from './clocks.ts';
import type { CaptureData } from './displayCopy.ts';

/** Whoever is told of a photo's capture: in the form, on the desk, in the packet. */
export interface CaptureReader extends Reader {
  readonly say: (key: string, params?: Record<string, string | number>) => string;
  /** A date with its time in the utility's zone. */
  readonly dateTime: (instant: string) => string;
  /** The same in UTC. */
  readonly utc: (instant: string) => string;
}

/** A time of capture as it was handed in, and as the camera wrote it. */
export interface CaptureTimes {
  readonly takenAt: string | null;
  readonly cameraTime: string | null;
}

/** When a picture was captured, and by whose word. */
export function sayCaptured(
  { takenAt, cameraTime }: CaptureTimes,
  timeZone: string,
  { say, dateTime }: Pick<CaptureReader, 'say' | 'dateTime'>,
): string {
  if (takenAt === null)
    return cameraTime === null
      ? say('packet.photo.taken-unknown')
      : say('packet.photo.captured-camera', { at: cameraTime });
  const at = dateTime(takenAt);
  if (cameraTime === null) return say('packet.photo.captured-declared', { at });
  return apartMs(takenAt, cameraTime, timeZone) <= SAME_CLOCK_MS
    ? say('packet.photo.captured-both', { at, camera: cameraTime })
    : say('packet.photo.captured-person', { at, camera: cameraTime });
}

/** By how much the two times of a capture differ; null when they are one, or one of them is not there. */
export function sayTimesDiffer(
  { takenAt, cameraTime }: CaptureTimes,
  timeZone: string,
  { say, locale }: Pick<CaptureReader, 'say' | 'locale'>,
): string | null {
  if (takenAt === null || cameraTime === null) return null;
  const apart = apartMs(takenAt, cameraTime, timeZone);
  if (apart <= SAME_CLOCK_MS) return null;
  return say('packet.photo.times-differ', {
    apart:
      apart < 3_600_000
        ? say('packet.photo.minutes', { minutes: Math.round(apart / 60_000) })
        : say('packet.photo.hours', { hours: formatNumber(apart / 3_600_000, locale, 1) }),
  });
}

/** Where the camera says it was, and how far that is from the hydrant; null when the file says nothing. */
export function sayCameraPlace(
  cameraPosition: Position | null,
  hydrant: Position | null,
  reader: CaptureReader,
): string | null {
  if (cameraPosition === null) return null;
  const { say } = reader;
  const place = {
    latitude: cameraPosition.latitudeDeg.toFixed(5),
    longitude: cameraPosition.longitudeDeg.toFixed(5),
  };
  return hydrant === null
    ? say('packet.photo.place', place)
    : say('packet.photo.place-from', {
        ...place,
        distance: sayDistance(greatCircleFt(cameraPosition, hydrant), reader),
      });
}

/**
 * Which camera, by its own data, and its clock beside the phone's and its satellite receiver's; what the file does not say
 * is said to be missing.
 */
export function sayCamera(
  said: Pick<CaptureData, 'place' | 'device' | 'satelliteTime'> & { readonly hasPosition: boolean },
  clocks: PhotoClocks,
  timeZone: string,
  { say, utc }: Pick<CaptureReader, 'say' | 'utc'>,
): string[] {
  const { place, device, satelliteTime, hasPosition } = said;
  if (place === null) return [say('evidence.source-none')];
  return [
    [
      device === null ? say('evidence.device-unknown') : say('evidence.device', { device }),
      ...(hasPosition ? [] : [say('evidence.place-unknown')]),
      ...(satelliteTime === null ? [] : [say('evidence.satellite-time', { at: utc(satelliteTime) })]),
      say('evidence.source', { place }),
    ].join(' '),
    compareClocks(clocks, timeZone)
      .map((finding) => sayClock(finding, say))
      .join(' '),
  ];
}

/** How far a declared time is from the camera's: by its zone where it wrote one, else by the utility's wall clock. */
function apartMs(takenAt: string, cameraTime: string, timeZone: string): number {
  const [, date = '', time = '', zone] = /^(\S+) (\S+)(?: (\S+))?$/.exec(cameraTime) ?? [];
  const taken = zone === undefined ? wallClock(takenAt, timeZone) : Date.parse(takenAt);
  return Math.abs(taken - Date.parse(`${date}T${time}${zone ?? 'Z'}`));
}

/** What a clock on the wall shows in a zone, as if it were UTC. */
function wallClock(instant: string, timeZone: string): number {
  const parts = new Intl.DateTimeFormat('en-US', {
    timeZone,
    hourCycle: 'h23',
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
    hour: '2-digit',
    minute: '2-digit',
    second: '2-digit',
  }).formatToParts(new Date(instant));
  const of = (type: Intl.DateTimeFormatPartTypes): number =>
    Number(parts.find((part) => part.type === type)?.value ?? 0);
  return Date.UTC(of('year'), of('month') - 1, of('day'), of('hour'), of('minute'), of('second'));
}

/** A phone knows its place to some meters: a distance from it has no decimals. */
function sayDistance(ft: number, { system, locale }: Reader): string {
  const unit = system === 'us' ? 'ft' : 'm';
  return `${formatNumber(convert(ft, 'ft', unit), locale, 0)} ${unitSymbol(unit, locale)}`;
}

/** `2026-11-22 14:14:30Z`; seconds only when there are any. */
export function utcText(instant: string): string {
  const [date = '', time = ''] = new Date(instant).toISOString().split('T');
  return `${date} ${time.startsWith('00', 6) ? time.slice(0, 5) : time.slice(0, 8)}Z`;
}
