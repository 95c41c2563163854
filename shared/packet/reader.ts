import { utcText } from '../evidence/sayCapture.ts';
import type { Reader } from '../units/format.ts';
import { say, type WordKey, type WordParams } from '../words/index.ts';
import type { PacketContent } from './schema.ts';

/** How one packet speaks: its language, units and time zone. */
export interface PacketReader extends Reader {
  readonly say: (key: WordKey | (string & {}), params?: WordParams) => string;
  /** `November 22, 2026`, in the utility's zone. */
  readonly date: (instant: string) => string;
  /** `Nov 22, 2026, 9:14 AM EST`, in the utility's zone. */
  readonly dateTime: (instant: string) => string;
  /** `2026-11-22 14:14:30Z`; seconds only when there are any. */
  readonly utc: (instant: string) => string;
  /** `Nov 22, 2026` from a calendar day, which has no zone. */
  readonly day: (date: string) => string;
}

// The formatter's narrow no-break spaces are in no text face that we embed.
const plainSpaces = (text: string): string => text.replace(/[\u202f\u00a0\u2009]/g, ' ');

export function readerOf({
  locale,
  units,
  timeZone,
}: Pick<PacketContent, 'locale' | 'units' | 'timeZone'>): PacketReader {
  const tag = locale === 'es' ? 'es-US' : 'en-US';
  const long = new Intl.DateTimeFormat(tag, { timeZone, year: 'numeric', month: 'long', day: 'numeric' });
  const medium = new Intl.DateTimeFormat(tag, {
    timeZone,
    year: 'numeric',
    month: 'short',
    day: 'numeric',
    hour: 'numeric',
    minute: '2-digit',
    timeZoneName: 'short',
  });
  const dayOnly = new Intl.DateTimeFormat(tag, {
    timeZone: 'UTC',
    year: 'numeric',
    month: 'short',
    day: 'numeric',
  });
  return {
    locale,
    system: units,
    say: (key, params) => plainSpaces(say(locale, key, params)),
    date: (instant) => plainSpaces(long.format(new Date(instant))),
    dateTime: (instant) => plainSpaces(medium.format(new Date(instant))),
    utc: utcText,
    day: (date) => plainSpaces(dayOnly.format(new Date(`${date}T00:00:00Z`))),
  };
}

/** A worker as a packet names one: by id and trade. */
export function sayWorker({
  workerId,
  trade,
}: {
  readonly workerId: string;
  readonly trade: string | null;
}): string {
  return trade === null ? workerId : `${trade} ${workerId}`;
}

/** The hydrant as it is spoken of: its number, or that it has none in the inventory. */
export function sayHydrant({ hydrant }: Pick<PacketContent, 'hydrant'>, reader: PacketReader): string {
  return hydrant.hydrantId === null
    ? reader.say('packet.hydrant.without-number')
    : reader.say('packet.hydrant.numbered', { hydrantId: hydrant.hydrantId });
}
