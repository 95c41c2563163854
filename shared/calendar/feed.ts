import ical, {
  escape,
  ICalAlarmRelatesTo,
  ICalAlarmType,
  ICalCalendarMethod,
  ICalEventClass,
  ICalEventStatus,
  ICalEventTransparency,
  type ICalAlarmData,
  type ICalEventData,
} from 'ical-generator';
import { addDays } from '../clocks/count.ts';
import type { DeadlineState } from '../clocks/deadline.ts';
import type { ListedDeadline } from '../clocks/list.ts';
import { dayText, deadlineWords } from '../clocks/words.ts';
import type { LocalDate } from '../costs/days.ts';
import { say, type Locale } from '../words/index.ts';

/** A date with what a calendar program needs to tell a newer version from an older. */
export interface FeedItem extends ListedDeadline {
  /** How many submissions the claim's record holds: it only grows. */
  readonly changes: number;
  /** When the last of them was recorded. */
  readonly lastRecordedAt: string;
}

export interface FeedQuestion {
  readonly items: readonly FeedItem[];
  readonly today: LocalDate;
  readonly locale: Locale;
  readonly utilityName: string;
  /** Where the site stands, for the links; null while that is not known. */
  readonly publicUrl: string | null;
}

/** Done with: shown as cancelled, so that a calendar that has it takes it away. */
const over: readonly DeadlineState[] = ['met', 'answered'];
/** How long a date that is done with stays in the feed as cancelled, days after it. */
const CANCELLED_DAYS = 60;
/** A Lambda answers with 6 MB at most, and an event has about 750 bytes. */
const MOST_EVENTS = 4000;
/** An all-day event begins at midnight; a reminder comes at nine in the morning of its own day. */
const DAY_S = 24 * 3600;
const NINE_IN_THE_MORNING_S = 9 * 3600;

/** The claim on the desk, or null while the site's address is not known. */
export const claimAddress = (publicUrl: string | null, claimId: string): string | null =>
  publicUrl === null ? null : new URL(`/desk/#/claim/${claimId}`, publicUrl).href;

/**
 * The dates as an iCalendar file (RFC 5545): all-day events, the same id for the same date for ever, cancelled once done
 * with. Holds claim numbers, clocks and citations, and nothing of any person: the address it is fetched from is a
 * secret, but calendar programs pass what they fetch on. Retention is left out, because nobody has to act on its day.
 */
export function calendarFeed({ items, today, locale, utilityName, publicUrl }: FeedQuestion): string {
  const calendar = ical({
    // The library writes the name as it is given.
    name: escape(say(locale, 'calendar.name', { utility: utilityName }), false),
    prodId: { company: 'Hydrant Strike Ledger', product: 'Claims', language: locale.toUpperCase() },
    method: ICalCalendarMethod.PUBLISH,
    ttl: 3600,
  });
  const shown = items.filter(
    ({ clock, state, dueOn }) =>
      clock !== 'retention-end' && (!over.includes(state) || dueOn >= addDays(today, -CANCELLED_DAYS)),
  );
  // What still asks for something, soonest first; only then what is over.
  const kept = [...shown].sort(
    (a, b) =>
      Number(over.includes(a.state)) - Number(over.includes(b.state)) || a.dueOn.localeCompare(b.dueOn),
  );
  for (const item of kept.slice(0, MOST_EVENTS)) {
    const event = calendar.createEvent(eventOf(item, locale, publicUrl));
    for (const alarm of alarmsOf(item, locale))
      // From the start, said so: the library counts what comes after midnight from the end, which is a day too late.
      event.createAlarm(alarm).relatesTo(ICalAlarmRelatesTo.start);
  }
  // The library ends the last line without the break that every line has.
  return `${calendar.toString().trimEnd()}\r\n`;
}

function eventOf(item: FeedItem, locale: Locale, publicUrl: string | null): ICalEventData {
  const { id, claimId, claimNumber, dueOn, state, lastRecordedAt, changes } = item;
  const words = deadlineWords(locale, item);
  const done = over.includes(state);
  const url = claimAddress(publicUrl, claimId);
  return {
    id: `${claimId}/${id}`,
    sequence: changes,
    stamp: new Date(lastRecordedAt),
    start: new Date(`${dueOn}T00:00:00Z`),
    allDay: true,
    summary: say(locale, 'calendar.summary', { claimNumber, clock: words.clock }),
    description: [
      `${words.clock}: ${words.state}`,
      ...(words.ended ? [words.ended] : []),
      ...(done ? [say(locale, 'calendar.done')] : []),
      words.rule,
      words.source,
      say(locale, 'calendar.not-advice'),
    ].join('\n'),
    status: done ? ICalEventStatus.CANCELLED : ICalEventStatus.CONFIRMED,
    class: ICalEventClass.PRIVATE,
    // A date is nothing that a person is busy with all day.
    transparency: ICalEventTransparency.TRANSPARENT,
    ...(url === null ? {} : { url }),
  };
}

/** A reminder on each day of warning; none of what is over. */
function alarmsOf({ claimNumber, clock, dueOn, warnOn, state }: FeedItem, locale: Locale): ICalAlarmData[] {
  if (over.includes(state)) return [];
  return warnOn.map((day) => ({
    type: ICalAlarmType.display,
    trigger: secondsBefore(day, dueOn),
    description: say(locale, 'calendar.alarm', {
      claimNumber,
      clock: say(locale, `clock.${clock}`),
      on: dayText(locale, dueOn),
    }),
  }));
}

/** From nine in the morning of one day to the midnight that begins another. */
const secondsBefore = (day: LocalDate, dueOn: LocalDate): number =>
  ((Date.parse(dueOn) - Date.parse(day)) / 86_400_000) * DAY_S - NINE_IN_THE_MORNING_S;
