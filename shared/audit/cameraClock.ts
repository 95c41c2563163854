import { Temporal } from 'temporal-polyfill';

/**
 * What a camera wrote as the time of a picture, as a UTC instant in milliseconds: `YYYY:MM:DD HH:MM:SS` or with hyphens (EXIF), with an
 * offset where the camera wrote one and else by the utility's zone. Null for what is no such time.
 */
export function cameraClockMs(written: string | null, timeZone: string): number | null {
  const parts = /^(\d{4})[:-](\d{2})[:-](\d{2})[ T](\d{2}):(\d{2}):(\d{2})\s*(Z|[+-]\d{2}:\d{2})?$/.exec(
    written?.trim() ?? '',
  );
  if (!parts) return null;
  const [, year, month, day, hour, minute, second, offset] = parts;
  const local = `${year ?? ''}-${month ?? ''}-${day ?? ''}T${hour ?? ''}:${minute ?? ''}:${second ?? ''}`;
  try {
    return offset === undefined
      ? Temporal.PlainDateTime.from(local).toZonedDateTime(timeZone).epochMilliseconds
      : Temporal.Instant.from(`${local}${offset}`).epochMilliseconds;
  } catch {
    // A camera that was never set writes zeros.
    return null;
  }
}
