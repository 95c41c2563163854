import type { PublicEdition } from '../public/edition.ts';
import { pagePath } from '../public/address.ts';
import type { PublicSnapshot } from '../public/snapshot.ts';
import { say, type Locale } from '../words/index.ts';
import { atomDocument } from './atomDocument.ts';
import { addressOf, feedKey } from './catalogue.ts';
import { newestFirst, type FeedChanges, type OutageChange } from './changes.ts';
import { outageUri } from './ids.ts';
import { outageLines, pathOf, titleWords } from './outageWords.ts';
import { element, textElement, type Xml } from './xml.ts';

/** A reader's list, not an archive: the newest entries; the whole of what is out stands in the other feeds. */
export const MOST_ENTRIES = 200;

/** What feeds of news are made from. */
export interface NewsQuestion {
  readonly edition: PublicEdition;
  readonly changes: FeedChanges;
  readonly locale: Locale;
  /** Where the site stands; null while that is not known, and then links are written from the site's root. */
  readonly publicUrl: string | null;
}

/** The entries that a feed of news tells, last changed first. */
export const entriesOf = ({ outages }: FeedChanges): readonly OutageChange[] =>
  outages.toSorted(newestFirst).slice(0, MOST_ENTRIES);

/** The title of the news, in whatever format. */
export const titleOf = ({ utility }: Pick<PublicSnapshot, 'utility'>, locale: Locale): string =>
  `${say(locale, 'public.title')} · ${utility.name}`;

const NAMELESS: Readonly<Record<Locale, string>> = {
  en: 'urn:uuid:0198c7a0-5d3e-7c41-9a52-6d1b0f2e8a11',
  es: 'urn:uuid:0198c7a0-5d3e-7c41-9a52-6d1b0f2e8a12',
};

/**
 * News of outages as an Atom feed (RFC 4287): an entry for each outage, open or over for less than two weeks, under the
 * same id for ever. `updated` of an entry is the check at which what is said of it last changed, so a reader shows it as
 * new then and only then.
 */
export function atomFeed(question: NewsQuestion): string {
  const { edition, changes, locale, publicUrl } = question;
  const { snapshot } = edition;
  return atomDocument(
    {
      snapshot,
      locale,
      key: feedKey('atom', locale),
      publicUrl,
      nameless: NAMELESS[locale],
      title: titleOf(snapshot, locale),
      page: link('alternate', pagePath('', locale, snapshot.utility.locale), 'text/html', question),
    },
    entriesOf(changes).map((change) => entryOf(change, question)),
  );
}

function entryOf(change: OutageChange, question: NewsQuestion): Xml {
  const { edition, locale } = question;
  const { outage, listedAt, changedAt, ended } = change;
  return element(
    'entry',
    {},
    textElement('id', outageUri(outage.outageId)),
    textElement('title', titleWords(change, locale)),
    textElement('updated', changedAt),
    textElement('published', listedAt),
    link('alternate', pathOf(change, edition, locale), 'text/html', question),
    element('category', { term: ended === null ? 'out-of-service' : 'over' }),
    element('category', { term: outage.cause, label: say(locale, `public.cause.${outage.cause}`) }),
    element('content', { type: 'text' }, outageLines(change, edition.snapshot, locale).join('\n')),
  );
}

const link = (rel: string, path: string, type: string, { locale, publicUrl }: NewsQuestion): Xml =>
  element('link', { rel, type, hreflang: locale, href: addressOf(path.slice(1), publicUrl) });
