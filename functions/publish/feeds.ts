import type * as z from 'zod';
import { returnsFeed } from '../../shared/calendar/returnsFeed.ts';
import { alertFeed } from '../../shared/feeds/alertFeed.ts';
import { alertLog, nextAlerts, type AlertLog } from '../../shared/feeds/alerts.ts';
import { atomFeed } from '../../shared/feeds/atom.ts';
import { alertIdentifier, alertKey, capMessage } from '../../shared/feeds/cap.ts';
import { feedKey, feedVersion, INDEX_KEY } from '../../shared/feeds/catalogue.ts';
import { feedChanges, nextChanges, type FeedChanges } from '../../shared/feeds/changes.ts';
import { csvFeed } from '../../shared/feeds/csv.ts';
import { geoJsonFeed } from '../../shared/feeds/geojson.ts';
import { indexDocument } from '../../shared/feeds/indexDocument.ts';
import { jsonFeed } from '../../shared/feeds/jsonFeed.ts';
import { openApiDocument } from '../../shared/feeds/openapi.ts';
import type { PublicEdition } from '../../shared/public/edition.ts';
import type { UtilitySettings } from '../../shared/utility/settings.ts';
import { locales } from '../../shared/words/index.ts';
import { contentTypeOf, type PublishedStore } from '../stores/published/published.ts';
import { PAGE_CACHE, type PublishedFile } from './pages.ts';

/** What the publication before left for this one: which outages were told and which alerts were sent. */
export interface FeedMemory {
  readonly changes: FeedChanges | null;
  readonly alerts: AlertLog | null;
}

const CHANGES_KEY = feedKey('changes');
const ALERT_LOG_KEY = `${feedVersion}/alerts.json`;

/** Reads it. A file that cannot be read as such counts as none; a store that does not answer is a fault and throws. */
export async function readFeedMemory(store: PublishedStore): Promise<FeedMemory> {
  const [changes, alerts] = await Promise.all([
    readAs(feedChanges, store, CHANGES_KEY),
    readAs(alertLog, store, ALERT_LOG_KEY),
  ]);
  return { changes, alerts };
}

async function readAs<T>(schema: z.ZodType<T>, store: PublishedStore, key: string): Promise<T | null> {
  const object = await store.get(key);
  if (!object) return null;
  try {
    return schema.safeParse(JSON.parse(new TextDecoder().decode(object.bytes))).data ?? null;
  } catch (error) {
    if (error instanceof SyntaxError) return null;
    throw error;
  }
}

export interface FeedFiles {
  readonly feeds: readonly PublishedFile[];
  /** Written after them: whatever is cut off before is made again from the memory that still stands. */
  readonly memory: readonly PublishedFile[];
}

const utf8 = new TextEncoder();
const json = (value: unknown): string => `${JSON.stringify(value)}\n`;

/**
 * Every feed of an edition but the snapshot, as files.
 *
 * @throws ZodError when something does not fit a feed's schema; then nothing may be published.
 */
export function feedFiles(
  edition: PublicEdition,
  before: FeedMemory,
  { publicUrl, publishing }: Pick<UtilitySettings, 'publicUrl' | 'publishing'>,
): FeedFiles {
  const { snapshot } = edition;
  const file = (key: string, text: string): PublishedFile => ({
    key,
    bytes: utf8.encode(text),
    contentType: contentTypeOf(key),
    cacheControl: PAGE_CACHE,
    checkedAt: snapshot.checkedAt,
  });
  const changes = nextChanges(before.changes, edition);
  const settings = publishing.alerts;
  const alerts = settings ? nextAlerts(before.alerts, changes) : null;
  const offered = { publicUrl, alerts: alerts !== null };
  const feeds = [
    file(feedKey('geojson'), json(geoJsonFeed(snapshot))),
    file(feedKey('csv'), csvFeed(snapshot)),
    ...locales.flatMap((locale) => {
      const question = { edition, changes, locale, publicUrl };
      return [
        file(feedKey('atom', locale), atomFeed(question)),
        file(feedKey('jsonFeed', locale), json(jsonFeed(question))),
        file(feedKey('calendar', locale), returnsFeed(question)),
      ];
    }),
    file(feedKey('openapi'), json(openApiDocument(snapshot, offered))),
    file(INDEX_KEY, json(indexDocument(snapshot, offered))),
  ];
  if (!settings || !alerts) return { feeds, memory: [file(CHANGES_KEY, json(changes))] };
  const messages = alerts.outages.map((alerted) => {
    const identifier = alertIdentifier(alerted.told.outage.outageId, alerted.messages.at(-1)?.number ?? 0);
    return file(alertKey(identifier), capMessage({ alerted, snapshot, settings, publicUrl }));
  });
  return {
    feeds: [...messages, ...feeds, file(feedKey('alerts'), alertFeed({ log: alerts, snapshot, publicUrl }))],
    memory: [file(CHANGES_KEY, json(changes)), file(ALERT_LOG_KEY, json(alerts))],
  };
}
