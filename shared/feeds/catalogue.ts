import { locales, type Locale } from '../words/index.ts';

/**
 * Every feed and where it stands. The version is in the path: within `v1` fields are added and never change their
 * meaning; what would break a reader becomes `v2` beside it (decision 0210).
 */
export const feedVersion = 'v1';

/** Feeds of codes and figures: one for every language. */
const plain = {
  snapshot: { file: 'snapshot.json', type: 'application/json' },
  geojson: { file: 'out-of-service.geojson', type: 'application/geo+json' },
  csv: { file: 'out-of-service.csv', type: 'text/csv' },
  changes: { file: 'changes.json', type: 'application/json' },
  openapi: { file: 'openapi.json', type: 'application/json' },
} as const;
/** Feeds of sentences: one in each language. */
const spoken = {
  atom: { file: 'out-of-service.atom', type: 'application/atom+xml' },
  jsonFeed: { file: 'out-of-service.feed.json', type: 'application/feed+json' },
  calendar: { file: 'returns-and-work.ics', type: 'text/calendar' },
} as const;
/** Only where the utility alerts. */
const alerting = { alerts: { file: 'alerts.atom', type: 'application/atom+xml' } } as const;

export type FeedName = keyof typeof plain | keyof typeof spoken | keyof typeof alerting;

export interface Feed {
  readonly name: FeedName;
  readonly type: string;
  /** Null: it speaks in codes. */
  readonly locale: Locale | null;
  /** Key in the published store, and path below the site's root: `v1/es/out-of-service.atom`. */
  readonly key: string;
}

export const INDEX_KEY = `${feedVersion}/index.json`;

const entries = <T extends object>(value: T): [keyof T, T[keyof T]][] =>
  Object.entries(value) as [keyof T, T[keyof T]][];

/** Every feed that is published, in the order in which a reader would look for them. */
export function feedsOf({ alerts }: { readonly alerts: boolean }): readonly Feed[] {
  return [
    ...entries(plain).map(([name, { file, type }]) => ({
      name,
      type,
      locale: null,
      key: `${feedVersion}/${file}`,
    })),
    ...locales.flatMap((locale) =>
      entries(spoken).map(([name, { file, type }]) => ({
        name,
        type,
        locale,
        key: `${feedVersion}/${locale}/${file}`,
      })),
    ),
    ...entries(alerts ? alerting : {}).map(
      ([name, { file, type }]: [FeedName, { file: string; type: string }]) => ({
        name,
        type,
        locale: null,
        key: `${feedVersion}/${file}`,
      }),
    ),
  ];
}

/** One feed's key, e.g. `v1/out-of-service.csv`. @throws Error for one that there is not. */
export function feedKey(name: FeedName, locale: Locale | null = null): string {
  const feed = feedsOf({ alerts: true }).find((one) => one.name === name && one.locale === locale);
  if (!feed) throw new Error(`no feed ${name} in ${locale ?? 'no language'}`);
  return feed.key;
}

/** The key as an address: absolute where the site's own address is known, else from the site's root. */
export const addressOf = (key: string, publicUrl: string | null): string =>
  publicUrl === null ? `/${key}` : new URL(`/${key}`, publicUrl).href;
