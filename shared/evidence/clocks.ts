import { cameraClockMs } from '../audit/cameraClock.ts';

/** A time read off two clocks that were set by hand is of the minute; more than this apart are two times. */
export const SAME_CLOCK_MS = 120_000;

export interface PhotoClocks {
  /** The camera's own words; null: it wrote none. */
  readonly cameraTime: string | null;
  /** The phone's clock when it wrote the file. */
  readonly fileWrittenAt: string | null;
  /** The phone's clock when the file was chosen. */
  readonly chosenAt: string | null;
  /** What the camera's satellite receiver had (UTC). */
  readonly satelliteTime: string | null;
}

/** What a comparison of clocks comes to. Words: `evidence.clock.<code>`; `apartMs` is how far, never negative. */
export type ClockFinding =
  | {
      readonly code: 'agree' | 'no-camera-time' | 'no-phone-time';
      readonly apartMs: 0;
      readonly zoned: boolean;
    }
  | {
      readonly code: 'camera-ahead' | 'file-later' | 'satellite-ahead' | 'satellite-behind';
      readonly apartMs: number;
      /** Whether the camera wrote its offset from UTC; without one its time is read in the utility's zone. */
      readonly zoned: boolean;
    };

/**
 * The camera's clock beside the phone's, and beside the satellites' where its receiver wrote their time. A file cannot
 * be written, nor chosen, before it was taken: a camera's time later than the phone's means that its clock is ahead.
 * Earlier may mean either that it is behind, or that the file was copied or changed after it was taken.
 */
export function compareClocks(clocks: PhotoClocks, timeZone: string): ClockFinding[] {
  const camera = cameraClockMs(clocks.cameraTime, timeZone);
  const zoned = / (Z|[+-]\d\d:\d\d)$/.test(clocks.cameraTime ?? '');
  if (camera === null) return [{ code: 'no-camera-time', apartMs: 0, zoned }];
  return [
    besidePhone(camera, clocks, zoned),
    ...(clocks.satelliteTime === null ? [] : besideSatellites(camera, clocks.satelliteTime, zoned)),
  ];
}

function besidePhone(camera: number, { fileWrittenAt, chosenAt }: PhotoClocks, zoned: boolean): ClockFinding {
  const written = fileWrittenAt === null ? null : Date.parse(fileWrittenAt);
  const chosen = chosenAt === null ? null : Date.parse(chosenAt);
  if (written === null) {
    if (chosen !== null && camera - chosen > SAME_CLOCK_MS)
      return { code: 'camera-ahead', apartMs: camera - chosen, zoned };
    return { code: 'no-phone-time', apartMs: 0, zoned };
  }
  const ahead = camera - written;
  if (ahead > SAME_CLOCK_MS) return { code: 'camera-ahead', apartMs: ahead, zoned };
  if (ahead < -SAME_CLOCK_MS) return { code: 'file-later', apartMs: -ahead, zoned };
  return { code: 'agree', apartMs: 0, zoned };
}

function besideSatellites(camera: number, satelliteTime: string, zoned: boolean): ClockFinding[] {
  const ahead = Date.parse(satelliteTime) - camera;
  if (Math.abs(ahead) <= SAME_CLOCK_MS) return [];
  return [{ code: ahead > 0 ? 'satellite-ahead' : 'satellite-behind', apartMs: Math.abs(ahead), zoned }];
}

/** A length of time as words take it (`evidence.apart`): minutes below an hour, hours and minutes below two days. */
export function apartParams(apartMs: number): {
  readonly unit: 'minutes' | 'hours' | 'days';
  readonly days: number;
  readonly hours: number;
  readonly minutes: number;
} {
  const all = Math.round(apartMs / 60_000);
  const unit = all < 60 ? 'minutes' : all < 2 * 24 * 60 ? 'hours' : 'days';
  return {
    unit,
    days: Math.round(all / (24 * 60)),
    hours: Math.floor(all / 60),
    minutes: unit === 'minutes' ? all : all % 60,
  };
}

/** A finding in the reader's words. */
export function sayClock(
  finding: ClockFinding,
  say: (key: string, params?: Record<string, string | number>) => string,
): string {
  return say(`evidence.clock.${finding.code}`, {
    apart: say('evidence.apart', apartParams(finding.apartMs)),
    zoned: finding.zoned ? 'yes' : 'no',
  });
}
