import { say } from '../words/index.ts';
import type { PublicSnapshot } from '../public/snapshot.ts';
import type { AlertedOutage, AlertLog } from './alerts.ts';
import { alertIdentifier, alertKey, CAP_TYPE } from './cap.ts';
import { addressOf, feedKey } from './catalogue.ts';
import { aboutWords } from './facts.ts';
import { titleWords } from './outageWords.ts';
import { element, textElement, xmlDocument, type Xml } from './xml.ts';

export interface AlertFeedQuestion {
  readonly log: AlertLog;
  readonly snapshot: PublicSnapshot;
  readonly publicUrl: string | null;
}

/**
 * Where the alerts are: an Atom feed (RFC 4287) with an entry for the last message about each outage, which links to the
 * message itself (`application/cap+xml`), as OASIS advises for feeds of alerts. Messages are in both languages, so one
 * feed does for all. A message is a new entry, under an id of its own: an entry never changes.
 */
export function alertFeed({ log, snapshot, publicUrl }: AlertFeedQuestion): string {
  const { utility, checkedAt, relyUntil } = snapshot;
  const { locale } = utility;
  const self = addressOf(feedKey('alerts'), publicUrl);
  const newest = log.outages.toSorted((a, b) => Date.parse(lastOf(b).sent) - Date.parse(lastOf(a).sent));
  return xmlDocument(
    element(
      'feed',
      {
        xmlns: 'http://www.w3.org/2005/Atom',
        'xmlns:dcterms': 'http://purl.org/dc/terms/',
        'xml:lang': locale,
      },
      textElement('id', publicUrl === null ? 'urn:uuid:0198c7a0-5d3e-7c41-9a52-6d1b0f2e8a13' : self),
      textElement('title', say(locale, 'feeds.alert.title', { utility: utility.name })),
      textElement('subtitle', aboutWords(snapshot, locale)),
      textElement('updated', checkedAt),
      element('author', {}, textElement('name', utility.name)),
      element('link', { rel: 'self', type: 'application/atom+xml', href: self }),
      utility.license && textElement('rights', utility.license.name),
      utility.license && element('link', { rel: 'license', href: utility.license.url }),
      textElement('dcterms:valid', `start=${checkedAt}; end=${relyUntil}; scheme=W3C-DTF;`),
      ...newest.map((alerted) => entryOf(alerted, { log, snapshot, publicUrl })),
    ),
  );
}

function lastOf({ messages, told }: AlertedOutage): AlertedOutage['messages'][number] {
  const last = messages.at(-1);
  if (!last) throw new Error(`no message about outage ${told.outage.outageId}`);
  return last;
}

function entryOf(alerted: AlertedOutage, { snapshot, publicUrl }: AlertFeedQuestion): Xml {
  const message = lastOf(alerted);
  const identifier = alertIdentifier(alerted.told.outage.outageId, message.number);
  const address = addressOf(alertKey(identifier), publicUrl);
  return element(
    'entry',
    {},
    textElement('id', publicUrl === null ? `tag:alert.invalid,2026:${identifier}` : address),
    textElement('title', titleWords(alerted.told, snapshot.utility.locale)),
    textElement('updated', message.sent),
    element('link', { rel: 'alternate', type: CAP_TYPE, href: address }),
    element('category', { term: message.type }),
    element('summary', { type: 'text' }, titleWords(alerted.told, snapshot.utility.locale)),
  );
}
