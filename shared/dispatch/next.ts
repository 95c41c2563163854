import type { DispatchNotice, NoticeSubject } from './notice.ts';
import { referenceOf } from './reference.ts';

/** How a hydrant or place stands, as far as dispatch is told of it. */
export interface SubjectNow {
  /** Open outages. */
  readonly open: readonly { readonly outageId: string; readonly since: string }[];
  /** Outages that a return ended. */
  readonly ended: readonly { readonly outageId: string; readonly endedAt: string }[];
}

export interface NextQuestion {
  readonly subject: NoticeSubject;
  readonly now: SubjectNow;
  /** What dispatch was told last of it; null: nothing. */
  readonly last: DispatchNotice | null;
  /** The id by which an outage goes today: links join strikes. */
  readonly goesBy: (outageId: string) => string;
  readonly tooOldHours: number;
  readonly at: Date;
}

/** A message to be made, without what it says. */
export type NextNotice = Pick<
  DispatchNotice,
  'subject' | 'number' | 'what' | 'reference' | 'outageIds' | 'at' | 'madeAt' | 'confirmedFrom' | 'held'
>;

/**
 * The message that brings what dispatch was told up to what is; null when it knows. It looks at nothing but the two, so a
 * replay, a repeat or another order of the same facts brings no second one (docs/decisions/0176).
 *
 * What was typed in late is not sent, unless dispatch was told of this very outage before and now believes what is no
 * longer so.
 */
export function nextNotice(question: NextQuestion): NextNotice | null {
  const { now, last } = question;
  const isOut = now.open.length > 0;
  if (isOut) return last?.what === 'out' && !isNewsToThem(question, last) ? null : outNotice(question);
  return last?.what === 'out' ? endNotice(question, last) : null;
}

/** A fresh outage of a hydrant that is out already is none, unless they were never sent a word of that. */
function isNewsToThem({ now, goesBy, tooOldHours, at }: NextQuestion, last: DispatchNotice): boolean {
  if (last.held === null) return false;
  const known = new Set(last.outageIds.map(goesBy));
  return now.open.some(({ outageId, since }) => !known.has(outageId) && isFresh(since, at, tooOldHours));
}

const ms = (instant: string): number => Date.parse(instant);

function outNotice({ subject, now, last, goesBy, tooOldHours, at }: NextQuestion): NextNotice {
  const open = now.open.toSorted((a, b) => ms(a.since) - ms(b.since) || (a.outageId < b.outageId ? -1 : 1));
  const outageIds = open.map(({ outageId }) => outageId);
  const [first] = open;
  const since = first?.since ?? at.toISOString();
  const toldOf = new Set(last?.outageIds.map(goesBy));
  // Its return lost its effect, or a correction was taken back: dispatch believes that it is in service.
  const again = last !== null && outageIds.some((id) => toldOf.has(id));
  const believesOtherwise = again && last.held === null;
  return {
    subject,
    number: (last?.number ?? 0) + 1,
    what: 'out',
    reference: again ? last.reference : referenceOf(subject, first?.outageId ?? ''),
    outageIds,
    at: since,
    madeAt: at.toISOString(),
    confirmedFrom: again ? at.toISOString() : since,
    held: believesOtherwise || isFresh(open.at(-1)?.since ?? since, at, tooOldHours) ? null : 'too-old',
  };
}

function endNotice(
  { subject, now, goesBy, tooOldHours, at }: NextQuestion,
  last: DispatchNotice,
): NextNotice {
  const told = new Set(last.outageIds.map(goesBy));
  // The last of those that it was told of, or of any that ended since it went out.
  const ended = now.ended
    .filter(({ outageId, endedAt }) => told.has(outageId) || ms(endedAt) >= ms(last.at))
    .toSorted((a, b) => ms(a.endedAt) - ms(b.endedAt))
    .at(-1);
  const happened = ended?.endedAt ?? at.toISOString();
  const wasSent = last.held === null;
  return {
    subject,
    number: last.number + 1,
    what: ended ? 'back' : 'corrected',
    reference: last.reference,
    outageIds: last.outageIds,
    at: happened,
    madeAt: at.toISOString(),
    confirmedFrom: happened,
    held: wasSent ? null : !ended ? 'nothing-sent' : isFresh(happened, at, tooOldHours) ? null : 'too-old',
  };
}

const isFresh = (happened: string, at: Date, tooOldHours: number): boolean =>
  at.getTime() - ms(happened) <= tooOldHours * 3_600_000;
