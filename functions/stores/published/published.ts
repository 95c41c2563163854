/** What is published at one address. */
export interface PublishedObject {
  readonly bytes: Uint8Array;
  readonly contentType: string;
  readonly cacheControl: string;
  /** When the state it shows was checked; null for what has no age (a font, a style sheet). */
  readonly checkedAt: string | null;
}

export interface PublishedHead {
  /** Changes with every write. */
  readonly etag: string;
  readonly checkedAt: string | null;
}

/**
 * What the public is served, by address. Several publishers may run at once, so every write is conditional on what was
 * last seen there. A store that cannot answer throws `StoreUnavailable`.
 */
export interface PublishedStore {
  get(key: string): Promise<(PublishedObject & PublishedHead) | null>;
  head(key: string): Promise<PublishedHead | null>;
  /** Writes if the object there is still `expected` (null: none). The new etag, or null when it is another one. */
  put(key: string, object: PublishedObject, expected: string | null): Promise<string | null>;
}

/** Keys are relative paths of plain names: nothing leads out of the store. */
export function assertKey(key: string): void {
  const names = key.split('/');
  if (names.some((name) => name === '' || name === '.' || name === '..' || !/^[\w.-]+$/.test(name)))
    throw new Error(`not a key of published objects: ${JSON.stringify(key)}`);
}

/** Content types of what is published, by the end of its name. Others are refused: a wrong type is a blank page. */
const contentTypes: Readonly<Record<string, string>> = {
  html: 'text/html; charset=utf-8',
  json: 'application/json; charset=utf-8',
  'feed.json': 'application/feed+json; charset=utf-8',
  geojson: 'application/geo+json',
  csv: 'text/csv; charset=utf-8; header=present',
  atom: 'application/atom+xml; charset=utf-8',
  ics: 'text/calendar; charset=utf-8',
  'cap.xml': 'application/cap+xml; charset=utf-8',
  css: 'text/css; charset=utf-8',
  js: 'text/javascript; charset=utf-8',
  svg: 'image/svg+xml',
  woff2: 'font/woff2',
  woff: 'font/woff',
};

export function contentTypeOf(key: string): string {
  // The longest ending that is known: `feed.json` before `json`.
  const [, ...endings] = key.slice(key.lastIndexOf('/') + 1).split('.');
  const type = endings.map((_, from) => contentTypes[endings.slice(from).join('.')]).find(Boolean);
  if (type === undefined) throw new Error(`nothing is published with a name like ${key}`);
  return type;
}
