import { compareClocks, sayClock } from '../evidence/clocks.ts';
import { greatCircleFt } from '../nearest/sphere.ts';
import { convert } from '../units/convert.ts';
import { formatNumber, unitSymbol } from '../units/format.ts';
import type { Photo } from './photos.ts';
import type { PacketReader } from './reader.ts';
import type { PacketContent } from './schema.ts';

/** A time read off a camera and typed into a form is of the minute; more than this apart are two times. */
const SAME_TIME_MS = 120_000;

type Zoned = Pick<PacketContent, 'timeZone'>;
type Timed = Pick<Photo, 'hashRecordedAt' | 'bytesArrivedAt'>;

/**
 * When a photo was captured and by whose word, when its hash was recorded and when its bytes arrived, and in what these
 * disagree. What nobody recorded is said as such.
 */
export function photoTimes(photo: Photo, content: Zoned, reader: PacketReader): string {
  return [captured(photo, content, reader), exhibitTimes(photo, reader), ...remarks(photo, content, reader)]
    .filter((part) => part !== '')
    .join(' ');
}

/** When the hash of an exhibit was recorded, and when its bytes arrived. */
export function exhibitTimes({ hashRecordedAt, bytesArrivedAt }: Timed, reader: PacketReader): string {
  const recorded = reader.dateTime(hashRecordedAt);
  return bytesArrivedAt === null
    ? reader.say('packet.photo.hash-recorded', { at: recorded })
    : reader.say('packet.photo.recorded-arrived', { recorded, arrived: reader.dateTime(bytesArrivedAt) });
}

function captured({ takenAt, cameraTime }: Photo, content: Zoned, reader: PacketReader): string {
  const { say } = reader;
  if (takenAt === null)
    return cameraTime === null
      ? say('packet.photo.taken-unknown')
      : say('packet.photo.captured-camera', { at: cameraTime });
  const at = reader.dateTime(takenAt);
  if (cameraTime === null) return say('packet.photo.captured-declared', { at });
  return apartMs(takenAt, cameraTime, content) <= SAME_TIME_MS
    ? say('packet.photo.captured-both', { at, camera: cameraTime })
    : say('packet.photo.captured-person', { at, camera: cameraTime });
}

/** How far a declared time is from the camera's: by its zone where it wrote one, else by the utility's wall clock. */
function apartMs(takenAt: string, cameraTime: string, { timeZone }: Zoned): number {
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

function remarks(photo: Photo, content: Zoned, reader: PacketReader): string[] {
  const { say, locale } = reader;
  const { takenAt, cameraTime, hashRecordedAt, bytesArrivedAt } = photo;
  const said: string[] = [];
  if (takenAt !== null && cameraTime !== null) {
    const apart = apartMs(takenAt, cameraTime, content);
    if (apart > SAME_TIME_MS)
      said.push(
        say('packet.photo.times-differ', {
          apart:
            apart < 3_600_000
              ? say('packet.photo.minutes', { minutes: Math.round(apart / 60_000) })
              : say('packet.photo.hours', { hours: formatNumber(apart / 3_600_000, locale, 1) }),
        }),
      );
  }
  const known = [hashRecordedAt, ...(bytesArrivedAt === null ? [] : [bytesArrivedAt])].map((at) =>
    Date.parse(at),
  );
  if (takenAt !== null && Date.parse(takenAt) > Math.min(...known) + SAME_TIME_MS)
    said.push(say('packet.photo.taken-after'));
  if (bytesArrivedAt !== null && Date.parse(bytesArrivedAt) < Date.parse(hashRecordedAt) - SAME_TIME_MS)
    said.push(say('packet.photo.arrived-before'));
  return said;
}

/** Where the camera says it was, and how far that is from the hydrant; null when the file says nothing. */
export function photoPlace(
  { cameraPosition }: Photo,
  { hydrant }: Pick<PacketContent, 'hydrant'>,
  reader: PacketReader,
): string | null {
  if (cameraPosition === null) return null;
  const { say } = reader;
  const place = {
    latitude: cameraPosition.latitudeDeg.toFixed(5),
    longitude: cameraPosition.longitudeDeg.toFixed(5),
  };
  return hydrant.position === null
    ? say('packet.photo.place', place)
    : say('packet.photo.place-from', {
        ...place,
        distance: sayDistance(greatCircleFt(cameraPosition, hydrant.position), reader),
      });
}

/**
 * Which camera, by its own data, and its clock beside the phone's and its satellite receiver's; what the file does not say
 * is said to be missing. Nothing for a packet of before this was read.
 */
export function photoCamera(photo: Photo, { timeZone }: Zoned, { say, utc }: PacketReader): string[] {
  const { camera, cameraTime, cameraPosition, fileWrittenAt, chosenAt } = photo;
  if (camera === null) return [];
  if (camera.place === null) return [say('evidence.source-none')];
  const { device, satelliteTime, place } = camera;
  const clocks = compareClocks({ cameraTime, fileWrittenAt, chosenAt, satelliteTime }, timeZone);
  return [
    [
      device === null ? say('evidence.device-unknown') : say('evidence.device', { device }),
      ...(cameraPosition === null ? [say('evidence.place-unknown')] : []),
      ...(satelliteTime === null ? [] : [say('evidence.satellite-time', { at: utc(satelliteTime) })]),
      say('evidence.source', { place }),
    ].join(' '),
    clocks.map((finding) => sayClock(finding, say)).join(' '),
  ];
}

/** A phone knows its place to some meters: a distance from it has no decimals. */
function sayDistance(ft: number, { system, locale }: PacketReader): string {
  const unit = system === 'us' ? 'ft' : 'm';
  return `${formatNumber(convert(ft, 'ft', unit), locale, 0)} ${unitSymbol(unit, locale)}`;
}
