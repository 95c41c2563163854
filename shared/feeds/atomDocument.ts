import type { PublicSnapshot } from '../public/snapshot.ts';
import type { Locale } from '../words/index.ts';
import { addressOf } from './catalogue.ts';
import { aboutWords } from './facts.ts';
import { element, textElement, xmlDocument, type Xml } from './xml.ts';

export interface AtomQuestion {
  readonly snapshot: PublicSnapshot;
  readonly locale: Locale;
  /** The feed's own key. */
  readonly key: string;
  /** Where the site stands; null while that is not known, and then links are written from the site's root. */
  readonly publicUrl: string | null;
  /** The id of a feed with no known address of its own, which is of one machine only: one that no other feed has. */
  readonly nameless: string;
  readonly title: string;
  /** The page for people, where there is one. */
  readonly page?: Xml;
}

/**
 * An Atom feed (RFC 4287) with what each of ours says before its entries: whose it is, when it was checked (`updated`),
 * how long it holds, in `subtitle` for people and in `dcterms:valid` (DCMI Period) for programs, and on what terms, in
 * `rights` and a `license` link (RFC 4946).
 */
export function atomDocument(
  { snapshot, locale, key, publicUrl, nameless, title, page }: AtomQuestion,
  entries: readonly Xml[],
): string {
  const { utility, checkedAt, relyUntil } = snapshot;
  const self = addressOf(key, publicUrl);
  return xmlDocument(
    element(
      'feed',
      {
        xmlns: 'http://www.w3.org/2005/Atom',
        'xmlns:dcterms': 'http://purl.org/dc/terms/',
        'xml:lang': locale,
      },
      textElement('id', publicUrl === null ? nameless : self),
      textElement('title', title),
      textElement('subtitle', aboutWords(snapshot, locale)),
      textElement('updated', checkedAt),
      element('author', {}, textElement('name', utility.name)),
      element('link', { rel: 'self', type: 'application/atom+xml', href: self }),
      page,
      utility.license && textElement('rights', utility.license.name),
      utility.license && element('link', { rel: 'license', href: utility.license.url }),
      textElement('generator', 'Hydrant Strike Ledger'),
      textElement('dcterms:valid', `start=${checkedAt}; end=${relyUntil}; scheme=W3C-DTF;`),
      ...entries,
    ),
  );
}
