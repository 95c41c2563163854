import { hoursWords, type Reader } from './reader.ts';

/** A median of many times, to the hour, and beyond two days to the day: it says no more. */
export function medianWords(reader: Reader, minutes: number): string {
  const hours = minutes / 60;
  return hoursWords(reader, hours < 48 ? Math.round(hours) : Math.round(hours / 24) * 24);
}
