import ical, {
  escape,
  ICalEventClass,
  ICalEventStatus,
  ICalEventTransparency,
  type ICalEventData,
} from 'ical-generator';
import { pagePath } from '../public/address.ts';
import type { PublicPlannedWork } from '../public/plannedWork.ts';
import type { NewsQuestion } from '../feeds/atom.ts';
import { addressOf } from '../feeds/catalogue.ts';
import type { OutageChange } from '../feeds/changes.ts';
import { statementWords } from '../feeds/facts.ts';
import { outageUri } from '../feeds/ids.ts';
import { hydrantWords, outageLines, pathOf } from '../feeds/outageWords.ts';
import { say } from '../words/index.ts';

/** An event has about 700 bytes; calendar programs take a megabyte or two. */
const MOST_EVENTS = 2000;
/** The statement's event, of the whole feed and of no outage. */
const STATEMENT_ID = 'checked@out-of-service';

/**
 * When hydrants are expected back, and work planned at hydrants, as an iCalendar file (RFC 5545) that calendar programs
 * may subscribe to. An expected return is tentative, because it is an estimate, and cancelled once its outage is over;
 * an outage keeps its UID, and SEQUENCE counts what was said of it. The first event is the check itself: what was
 * counted, from its time until the time after which it does not hold, so that a calendar nobody renews shows its age,
 * and a feed with nothing expected is not empty, which the format does not allow.
 */
export function returnsFeed(question: NewsQuestion): string {
  const { edition, changes, locale } = question;
  const { utility } = edition.snapshot;
  const calendar = ical({
    // The library writes the name as it is given.
    name: escape(say(locale, 'feeds.calendar.name', { utility: utility.name }), false),
    description: escape(statementWords(edition.snapshot, locale), false),
    prodId: { company: 'Hydrant Strike Ledger', product: 'Public', language: locale.toUpperCase() },
    ttl: utility.publishedEveryMinutes * 60,
  });
  const expected = changes.outages.filter(({ outage }) => outage.expectedAt !== null);
  const events = [
    statementEvent(question),
    ...expected.map((change) => returnEvent(change, question)),
    ...edition.plannedWork.map((work) => workEvent(work, question)),
  ];
  for (const event of events.slice(0, MOST_EVENTS)) calendar.createEvent(event);
  // The library ends the last line without the break that every line has.
  return `${calendar.toString().trimEnd()}\r\n`;
}

const common = {
  class: ICalEventClass.PUBLIC,
  // Nobody is busy because a hydrant is.
  transparency: ICalEventTransparency.TRANSPARENT,
};
const linked = (path: string, publicUrl: string | null): { url?: string } =>
  publicUrl === null ? {} : { url: addressOf(path.slice(1), publicUrl) };

function statementEvent({ edition, locale, publicUrl }: NewsQuestion): ICalEventData {
  const { snapshot } = edition;
  return {
    ...common,
    ...linked(pagePath('', locale, snapshot.utility.locale), publicUrl),
    id: STATEMENT_ID,
    stamp: new Date(snapshot.checkedAt),
    start: new Date(snapshot.checkedAt),
    end: new Date(snapshot.relyUntil),
    summary: statementWords(snapshot, locale),
    description: terms({ edition, locale }).join('\n'),
    status: ICalEventStatus.CONFIRMED,
  };
}

/** What to know before any use, whom to call, and the terms of the data. */
function terms({ edition, locale }: Pick<NewsQuestion, 'edition' | 'locale'>): string[] {
  const { emergencyPhone, license } = edition.snapshot.utility;
  return [
    say(locale, 'feeds.not-listed'),
    `${say(locale, 'public.emergency')} ${emergencyPhone}`,
    ...(license ? [`${say(locale, 'public.footer.license')} ${license.name} ${license.url}`] : []),
  ];
}

function returnEvent(change: OutageChange, { edition, locale, publicUrl }: NewsQuestion): ICalEventData {
  const { outage, changedAt, version, ended } = change;
  const hydrant = hydrantWords(change, locale);
  return {
    ...common,
    ...linked(pathOf(change, edition, locale), publicUrl),
    id: outageUri(outage.outageId),
    sequence: version - 1,
    stamp: new Date(changedAt),
    start: new Date(outage.expectedAt ?? changedAt),
    summary: say(locale, 'feeds.calendar.expected', { hydrant }),
    description: outageLines(change, edition.snapshot, locale).join('\n'),
    status: ended === null ? ICalEventStatus.TENTATIVE : ICalEventStatus.CANCELLED,
  };
}

function workEvent(work: PublicPlannedWork, { edition, locale, publicUrl }: NewsQuestion): ICalEventData {
  const { checkedAt } = edition.snapshot;
  const place = { ...work, inInventory: true, position: null };
  return {
    ...common,
    ...linked(pathOf(place, edition, locale), publicUrl),
    id: outageUri(work.workId),
    // When it was planned the public is not told; each check says it anew.
    stamp: new Date(checkedAt),
    start: new Date(work.from),
    end: new Date(work.to),
    summary: say(locale, 'feeds.calendar.work', {
      work: say(locale, `value.plannedWork.${work.work}`),
      hydrant: hydrantWords(place, locale),
    }),
    description: say(locale, work.takesOutOfService ? 'feeds.calendar.takes-out' : 'feeds.calendar.stays-in'),
    status: ICalEventStatus.CONFIRMED,
  };
}
