import { dateWords, dayOf, timeOfDay, zoneName } from '../public/times.ts';
import { formatQuantity } from '../units/format.ts';
import type { System } from '../units/units.ts';
import { hasWords, say, type Locale } from '../words/index.ts';
import { segmentsOf, toGsm7 } from './gsm7.ts';
import type { DispatchNotice, NearbyHydrant } from './notice.ts';

/** Who writes, and how the reader reads. */
export interface NoticeReader {
  readonly locale: Locale;
  readonly system: System;
  readonly timeZone: string;
  readonly utilityName: string;
  /** The number to call back. */
  readonly callBack: string;
  readonly publicUrl: string | null;
  /** A text takes no more messages than this. */
  readonly textSegments: number;
}

/** Hydrants that a text names at most. */
const MOST_IN_TEXT = 3;
/** What is given up first when a text is too long: far hydrants, then words of the place, then the utility's name. */
const shorter = [
  { nearest: 3, place: 80, utility: 60 },
  { nearest: 2, place: 80, utility: 60 },
  { nearest: 2, place: 40, utility: 40 },
  { nearest: 1, place: 40, utility: 40 },
  { nearest: 1, place: 24, utility: 0 },
  { nearest: 0, place: 24, utility: 0 },
  { nearest: 0, place: 0, utility: 0 },
] as const;

type Room = (typeof shorter)[number];

/**
 * The message as a text: signs of the GSM alphabet alone, no more messages than the settings say. What it cannot hold is
 * left out from the end of its list of hydrants on, and never the reference or the number to call.
 */
export function noticeText(notice: DispatchNotice, reader: NoticeReader): string {
  const texts = shorter.map((room) => toGsm7(textIn(notice, reader, room)));
  const fitting = texts.find((text) => segmentsOf(text) <= reader.textSegments);
  if (fitting !== undefined) return fitting;
  // Ids and numbers alone are longer than a text: the least of it, cut, with the number to call at its end.
  const end = toGsm7(` ${say(reader.locale, 'dispatch.text.end', endOf(notice, reader))}`);
  let start = texts.at(-1) ?? '';
  while (start !== '' && segmentsOf(start + end) > reader.textSegments) start = start.slice(0, -1);
  return start + end;
}

function textIn(notice: DispatchNotice, reader: NoticeReader, room: Room): string {
  const { locale } = reader;
  const { facts, what } = notice;
  const t = (key: string, params = {}): string => say(locale, `dispatch.text.${key}`, params);
  const cut = (text: string, most: number): string =>
    text.length <= most ? text : most < 4 ? '' : `${text.slice(0, most - 3).trimEnd()}...`;
  const where = [nameOf(notice, locale), cut(placeWords(notice, reader), room.place)]
    .filter(Boolean)
    .join(', ');
  const near = facts.nearest
    .slice(0, Math.min(room.nearest, MOST_IN_TEXT))
    .map((hydrant) => nearInText(hydrant, reader));
  const from = cut(reader.utilityName, room.utility);
  const sentences = [
    from === '' ? '' : `${from}:`,
    t(what, { where, reference: notice.reference }),
    ...(what === 'out'
      ? [t('since', { cause: causeWords(notice, locale), when: when(notice.at, reader) })]
      : []),
    ...maybeWords(notice, locale),
    ...(what === 'out' && near.length > 0 ? [t('nearest', { list: near.join('; ') })] : []),
    ...(what === 'back' ? [t('back-since', { when: when(notice.at, reader) })] : []),
    ...(what === 'back' && facts.notShown.length > 0
      ? [t('not-shown', { proofs: proofWords(notice, locale) })]
      : []),
    ...insteadWords(notice, locale),
    t('end', endOf(notice, reader)),
  ];
  return sentences.filter(Boolean).join(' ');
}

const endOf = ({ reference }: DispatchNotice, { callBack }: NoticeReader) => ({ reference, callBack });

/** The hydrant as people call it; a place has no number yet. */
function nameOf({ facts: { hydrantId } }: DispatchNotice, locale: Locale): string {
  return hydrantId ?? say(locale, 'dispatch.no-number');
}

/** Where it is: the inventory's words, else the position, which a map finds. */
function placeWords({ facts: { place, position } }: DispatchNotice, { locale }: NoticeReader): string {
  if (place !== null) return oneLine(place);
  if (position === null) return say(locale, 'dispatch.no-place');
  return `${position.latitudeDeg.toFixed(5)}, ${position.longitudeDeg.toFixed(5)}`;
}

/** Names of places come from files and phones: no line break of theirs reaches a subject, and no sign that turns text. */
const oneLine = (text: string): string => text.replaceAll(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]+/gu, ' ').trim();

function causeWords({ facts: { cause } }: DispatchNotice, locale: Locale): string {
  const own = `dispatch.cause.${cause ?? 'none'}`;
  return hasWords(own) ? say(locale, own) : say(locale, `value.outageCause.${cause ?? ''}`);
}

const when = (instant: string, { timeZone, locale }: NoticeReader): string =>
  `${timeOfDay(instant, { timeZone, locale })} ${zoneName(instant, { timeZone, locale })} ${dayOf(instant, { timeZone, locale }, instant)}`;

const proofWords = ({ facts }: DispatchNotice, locale: Locale): string =>
  facts.notShown.map((proof) => say(locale, `public.proof.${proof}`)).join(', ');

function insteadWords({ what, facts: { instead } }: DispatchNotice, locale: Locale): string[] {
  if (!instead || (what !== 'out' && what !== 'corrected')) return [];
  const params = {
    hydrantId: instead.hydrantId ?? say(locale, 'dispatch.no-number'),
    reference: instead.reference ?? 'none',
  };
  return [say(locale, what === 'out' ? 'dispatch.replaces' : 'dispatch.out-instead', params)];
}

/** Which one it may be: better known by its number than by degrees. */
const maybeWords = ({ facts: { maybe } }: DispatchNotice, locale: Locale): string[] =>
  maybe.length === 0 ? [] : [say(locale, 'dispatch.maybe', { list: maybe.join(', ') })];

const distance = (distanceFt: number, { system, locale }: NoticeReader): string =>
  // Whole metres too: nobody lays hose to a tenth.
  system === 'us'
    ? formatQuantity(distanceFt, 'ft', { system, locale })
    : formatQuantity(Math.round(distanceFt * 0.3048), 'm', { system, locale });

const rating = ({ className, ratedFlowGpm }: NearbyHydrant, { system, locale }: NoticeReader): string[] => [
  ...(className === null ? [] : [say(locale, 'dispatch.class', { className })]),
  ...(ratedFlowGpm === null ? [] : [formatQuantity(ratedFlowGpm, 'gpm', { system, locale })]),
];

function nearInText(hydrant: NearbyHydrant, reader: NoticeReader): string {
  const { locale } = reader;
  const { hydrantId, distanceFt, bearing } = hydrant;
  const rated = rating(hydrant, reader);
  return [
    `${hydrantId} ${distance(distanceFt, reader)} ${say(locale, `bearing.${bearing}`)}`,
    ...(rated.length > 0 ? [rated.join(' ')] : []),
  ].join(', ');
}

/** The message as an email: the same, with all that a text has no room for. */
export function noticeEmail(
  notice: DispatchNotice,
  reader: NoticeReader,
): { readonly subject: string; readonly text: string } {
  const { locale, utilityName, publicUrl } = reader;
  const { facts, what, reference } = notice;
  const t = (key: string, params = {}): string => say(locale, `dispatch.email.${key}`, params);
  const name = nameOf(notice, locale);
  const place = placeWords(notice, reader);
  const line = (key: string, value: string | null): string[] =>
    value === null ? [] : [t('line', { what: t(key), value })];
  const position =
    facts.position && `${facts.position.latitudeDeg.toFixed(5)}, ${facts.position.longitudeDeg.toFixed(5)}`;
  const lines = [
    t(`lead.${what}`, { name, place, known: facts.hydrantId === null ? 'no' : 'yes' }),
    ...maybeWords(notice, locale),
    ...insteadWords(notice, locale).flatMap((words) => ['', words]),
    '',
    ...line('hydrant', name),
    ...line('place', facts.place === null && position !== null ? null : place),
    ...line('position', position),
    ...(what === 'out'
      ? [
          ...line('cause', causeWords(notice, locale)),
          ...line('since', when(notice.at, reader)),
          ...line('expected', facts.expectedAt === null ? t('not-known') : when(facts.expectedAt, reader)),
        ]
      : []),
    ...(what === 'back' ? line('back-since', when(notice.at, reader)) : []),
    ...(what === 'back' && facts.notShown.length > 0
      ? ['', say(locale, 'dispatch.text.not-shown', { proofs: proofWords(notice, locale) })]
      : []),
    ...(what === 'out' ? ['', ...nearLines(facts.nearest, reader)] : []),
    '',
    t('reference', { reference }),
    t('call', { utilityName, callBack: reader.callBack }),
    ...(publicUrl === null ? [] : [t('page', { address: publicUrl })]),
    '',
    t('footer', { made: when(notice.madeAt, reader) }),
    '',
  ];
  return { subject: t(`subject.${what}`, { name, place, reference }), text: lines.join('\n') };
}

function nearLines(nearest: readonly NearbyHydrant[], reader: NoticeReader): string[] {
  const { locale } = reader;
  if (nearest.length === 0) return [say(locale, 'dispatch.email.no-nearest')];
  return [
    say(locale, 'dispatch.email.nearest'),
    ...nearest.map((hydrant) => {
      const rated = rating(hydrant, reader);
      const parts = [
        `${hydrant.hydrantId}${hydrant.place === null ? '' : `, ${oneLine(hydrant.place)}`}`,
        `${distance(hydrant.distanceFt, reader)} ${say(locale, `bearing.${hydrant.bearing}`)}`,
        rated.length > 0 ? rated.join(', ') : say(locale, 'dispatch.not-rated'),
        ...(hydrant.testedOn === null
          ? []
          : [say(locale, 'dispatch.tested', { on: dateWords(hydrant.testedOn, locale) })]),
        ...(hydrant.private ? [say(locale, 'dispatch.private')] : []),
      ];
      return `  - ${parts.join(' - ')}`;
    }),
    say(locale, 'dispatch.email.straight-line'),
  ];
}
