import { lengthWords, type Reader } from './reader.ts';

const HOUR = 60;
const DAY = 24 * HOUR;

/** A median of many times, to the hour, and beyond two days to the day: it says no more. */
export function medianWords(reader: Reader, minutes: number): string {
  const step = minutes < 2 * DAY ? HOUR : DAY;
  const rounded = Math.round(minutes / step) * step;
  return lengthWords(reader, new Date(0).toISOString(), new Date(rounded * 60_000).toISOString());
}
