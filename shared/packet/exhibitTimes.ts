import { SAME_CLOCK_MS } from '../evidence/clocks.ts';
import { sayCamera, sayCameraPlace, sayCaptured, sayTimesDiffer } from '../evidence/sayCapture.ts';
import type { Photo } from './photos.ts';
import type { PacketReader } from './reader.ts';
import type { PacketContent } from './schema.ts';

type Zoned = Pick<PacketContent, 'timeZone'>;
type Timed = Pick<Photo, 'hashRecordedAt' | 'bytesArrivedAt'>;

/**
 * When a photo was captured and by whose word, when its hash was recorded and when its bytes arrived, and in what these
 * disagree. What nobody recorded is said as such.
 */
export function photoTimes(photo: Photo, content: Zoned, reader: PacketReader): string {
  return [
    sayCaptured(photo, content.timeZone, reader),
    exhibitTimes(photo, reader),
    ...remarks(photo, content, reader),
  ]
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

function remarks(photo: Photo, content: Zoned, reader: PacketReader): string[] {
  const { say } = reader;
  const { takenAt, hashRecordedAt, bytesArrivedAt } = photo;
  const differ = sayTimesDiffer(photo, content.timeZone, reader);
  const said: string[] = differ === null ? [] : [differ];
  const known = [hashRecordedAt, ...(bytesArrivedAt === null ? [] : [bytesArrivedAt])].map((at) =>
    Date.parse(at),
  );
  if (takenAt !== null && Date.parse(takenAt) > Math.min(...known) + SAME_CLOCK_MS)
    said.push(say('packet.photo.taken-after'));
  if (bytesArrivedAt !== null && Date.parse(bytesArrivedAt) < Date.parse(hashRecordedAt) - SAME_CLOCK_MS)
    said.push(say('packet.photo.arrived-before'));
  return said;
}

/** Where the camera says it was, and how far that is from the hydrant; null when the file says nothing. */
export const photoPlace = (
  { cameraPosition }: Photo,
  { hydrant }: Pick<PacketContent, 'hydrant'>,
  reader: PacketReader,
): string | null => sayCameraPlace(cameraPosition, hydrant.position, reader);

/** Which camera, and the clocks beside each other. Nothing for a packet of before this was read. */
export function photoCamera(photo: Photo, { timeZone }: Zoned, reader: PacketReader): string[] {
  const { camera, cameraPosition, cameraTime, fileWrittenAt, chosenAt } = photo;
  if (camera === null) return [];
  const clocks = { cameraTime, fileWrittenAt, chosenAt, satelliteTime: camera.satelliteTime };
  return sayCamera({ ...camera, hasPosition: cameraPosition !== null }, clocks, timeZone, reader);
}
