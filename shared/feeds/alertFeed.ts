import { say } from '../words/index.ts';
import type { PublicSnapshot } from '../public/snapshot.ts';
import type { AlertedOutage, AlertLog } from './alerts.ts';
import { atomDocument } from './atomDocument.ts';
import { alertIdentifier, alertKey, CAP_TYPE } from './cap.ts';
import { addressOf, feedKey } from './catalogue.ts';
import { titleWords } from './outageWords.ts';
import { element, textElement, type Xml } from './xml.ts';

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
  const { utility } = snapshot;
  const newest = log.outages.toSorted((a, b) => Date.parse(lastOf(b).sent) - Date.parse(lastOf(a).sent));
  return atomDocument(
    {
      snapshot,
      locale: utility.locale,
      key: feedKey('alerts'),
      publicUrl,
      nameless: 'urn:uuid:0198c7a0-5d3e-7c41-9a52-6d1b0f2e8a13',
      title: say(utility.locale, 'feeds.alert.title', { utility: utility.name }),
    },
    newest.map((alerted) => entryOf(alerted, { log, snapshot, publicUrl })),
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
  const title = titleWords(alerted.told, snapshot.utility.locale);
  return element(
    'entry',
    {},
    textElement('id', publicUrl === null ? `tag:alert.invalid,2026:${identifier}` : address),
    textElement('title', title),
    textElement('updated', message.sent),
    element('link', { rel: 'alternate', type: CAP_TYPE, href: address }),
    element('category', { term: message.type }),
    element('summary', { type: 'text' }, title),
  );
}
