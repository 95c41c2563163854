import { hydrantPath, pagePath } from '../public/address.ts';
import type { PublicSnapshot } from '../public/snapshot.ts';
import { locales, say, type Locale } from '../words/index.ts';
import { expiresAt, type AlertedOutage, type SentAlert } from './alerts.ts';
import type { AlertSettings } from './alertSettings.ts';
import { addressOf, feedVersion } from './catalogue.ts';
import { hydrantWords, outageLines, titleWords } from './outageWords.ts';
import { element, textElement, xmlDocument, type Xml } from './xml.ts';

/** Of a message: unique for its sender, with none of the signs that the standard keeps out of identifiers. */
export const alertIdentifier = (outageId: string, number: number): string =>
  `${encodeURIComponent(outageId).replace(/[^\w.-]/g, '_')}.${number}`;
export const alertKey = (identifier: string): string => `${feedVersion}/alerts/${identifier}.cap.xml`;
/** The type that OASIS registered for it. */
export const CAP_TYPE = 'application/cap+xml';

/** CAP wants whole seconds with an offset, and forbids `Z`: UTC is `-00:00` (§3.2.1, sent). */
export const capTime = (instant: string): string => `${new Date(instant).toISOString().slice(0, 19)}-00:00`;

/** xml:lang of each language as the country speaks it (RFC 3066, as the standard wants). */
const tags: Readonly<Record<Locale, string>> = { en: 'en-US', es: 'es-US' };

export interface CapQuestion {
  readonly alerted: AlertedOutage;
  readonly snapshot: PublicSnapshot;
  readonly settings: AlertSettings;
  readonly publicUrl: string | null;
}

/**
 * The last message about an outage in the Common Alerting Protocol, version 1.2 (OASIS, 2010): `Alert`, `Update` or
 * `Cancel`, the latter two naming every message before them that still holds (`references`), in each language an `info`
 * with the hydrant's place as its area. Written from what was told when it was sent, so that one message is the same
 * bytes however often it is published.
 */
export function capMessage({ alerted, snapshot, settings, publicUrl }: CapQuestion): string {
  const { told, messages } = alerted;
  const { outageId } = told.outage;
  const message = messages.at(-1);
  if (!message) throw new Error(`no message about outage ${outageId}`);
  const { sender, status } = settings;
  const references = messages
    .slice(0, -1)
    .map((one) => [sender, alertIdentifier(outageId, one.number), capTime(one.sent)].join(','));
  return xmlDocument(
    element(
      'alert',
      { xmlns: 'urn:oasis:names:tc:emergency:cap:1.2' },
      textElement('identifier', alertIdentifier(outageId, message.number)),
      textElement('sender', sender),
      textElement('sent', capTime(message.sent)),
      textElement('status', status),
      textElement('msgType', message.type),
      textElement('scope', 'Public'),
      references.length > 0 ? textElement('references', references.join(' ')) : null,
      ...locales.map((locale) => info(locale, message, { alerted, snapshot, settings, publicUrl })),
    ),
  );
}

function info(
  locale: Locale,
  message: SentAlert,
  { alerted, snapshot, settings, publicUrl }: CapQuestion,
): Xml {
  const { told } = alerted;
  const { utility } = snapshot;
  const cancelled = message.type === 'Cancel';
  const page = pagePath(told.hydrantId === null ? '' : hydrantPath(told.hydrantId), locale, utility.locale);
  return element(
    'info',
    {},
    textElement('language', tags[locale]),
    textElement('category', 'Infra'),
    textElement('event', say(locale, 'feeds.alert.event')),
    cancelled && told.ended?.stillOut === false && told.ended.endedAt !== null
      ? textElement('responseType', 'AllClear')
      : null,
    textElement('urgency', cancelled ? 'Past' : settings.urgency),
    textElement('severity', settings.severity),
    textElement('certainty', 'Observed'),
    textElement('effective', capTime(message.sent)),
    textElement('onset', capTime(told.outage.since)),
    textElement('expires', capTime(expiresAt(message.sent))),
    textElement('senderName', utility.name),
    textElement('headline', titleWords(told, locale)),
    // Of no check but its own: the year stands where it differs from the year in which it was sent.
    textElement(
      'description',
      outageLines(told, { ...snapshot, checkedAt: message.sent }, locale).join('\n'),
    ),
    cancelled ? null : textElement('instruction', say(locale, 'feeds.alert.instruction')),
    publicUrl === null ? null : textElement('web', addressOf(page.slice(1), publicUrl)),
    textElement('contact', utility.emergencyPhone),
    area(alerted, locale),
  );
}

/** A hydrant is a point: a circle of no radius, as in the standard's own example of an earthquake. */
const area = ({ told }: AlertedOutage, locale: Locale): Xml =>
  element(
    'area',
    {},
    textElement('areaDesc', hydrantWords(told, locale)),
    told.position && textElement('circle', `${told.position.latitudeDeg},${told.position.longitudeDeg} 0`),
  );
