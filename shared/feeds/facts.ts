import * as z from 'zod';
import { publicNotYetShown, type PublicSnapshot } from '../public/snapshot.ts';
import { instantParts } from '../public/times.ts';
import { formatNumber } from '../units/format.ts';
import { say, type Locale } from '../words/index.ts';

/** What every feed says before anything else: whose it is, when it was checked, until when it holds, on what terms. */
export const checkedFacts = z.strictObject({
  utility: z.string(),
  /** Every fact recorded before this instant is in the feed, but for what `notYetShown` counts. */
  checkedAt: z.iso.datetime(),
  /** Not to be relied on after this instant, whatever it says. */
  relyUntil: z.iso.datetime(),
  publishedEveryMinutes: z.int().min(1),
  /** Answered at any hour. */
  emergencyPhone: z.string(),
  /** Under which terms the data may be used; null when the utility has not said. */
  license: z.strictObject({ name: z.string(), url: z.url() }).nullable(),
  /** Hydrants that should serve; null: no inventory has been loaded, and no feed may be used to find a hydrant. */
  hydrants: z.int().min(1).nullable(),
  /** Of these, out of service at the check; null with no inventory. */
  outOfService: z.int().min(0).nullable(),
  /** Places beyond these where a hydrant was reported that the inventory does not have. */
  notInInventory: z.int().min(0),
  /** Reports that are in no feed yet: hydrants may be out of service that none names. Null: there is none. */
  notYetShown: publicNotYetShown.nullable(),
  /** The count in words, as a checked fact. */
  statement: z.string(),
  /** What to know before any use. */
  note: z.string(),
});
export type CheckedFacts = z.infer<typeof checkedFacts>;

/** An instant as the public pages write it: `Wed, Mar 4, 14:05 CST`. */
export function instantWords(at: string, { utility, checkedAt }: PublicSnapshot, locale: Locale): string {
  return say(locale, 'public.instant', instantParts(at, { timeZone: utility.timeZone, locale }, checkedAt));
}

/** `0 of 412 hydrants are out of service.` and what else is known of the count; never nothing. */
export function countWords({ inventory, outOfService }: PublicSnapshot, locale: Locale): string {
  if (inventory === null)
    return [
      say(locale, 'feeds.not-set-up'),
      ...(outOfService.length > 0 ? [say(locale, 'feeds.reported', { count: outOfService.length })] : []),
    ].join(' ');
  const number = (value: number): string => formatNumber(value, locale, 0);
  const { hydrants, outOfService: out } = inventory;
  const beyond = outOfService.length - out;
  return [
    `${say(locale, 'public.headline', { out, count: number(out), total: number(hydrants) })}.`,
    ...(beyond > 0 ? [say(locale, 'public.beyond', { count: beyond })] : []),
  ].join(' ');
}

/** The count with the time of the check and the time after which it does not hold; and what it lacks. */
export const statementWords = (snapshot: PublicSnapshot, locale: Locale): string =>
  [
    say(locale, 'feeds.statement', {
      count: countWords(snapshot, locale),
      checked: instantWords(snapshot.checkedAt, snapshot, locale),
      until: instantWords(snapshot.relyUntil, snapshot, locale),
    }),
    ...notYetShownWords(snapshot, locale),
  ].join(' ');

function notYetShownWords(snapshot: PublicSnapshot, locale: Locale): string[] {
  const { notYetShown, utility } = snapshot;
  if (!notYetShown) return [];
  const { reports, since } = notYetShown;
  const at = instantWords(since, snapshot, locale);
  return [say(locale, 'feeds.not-yet-shown', { count: reports, since: at, phone: utility.emergencyPhone })];
}

/** A feed in words: the count, how long it holds, what it does not promise, and whom to call. */
export const aboutWords = (snapshot: PublicSnapshot, locale: Locale): string =>
  [
    statementWords(snapshot, locale),
    say(locale, 'feeds.not-listed'),
    say(locale, 'public.emergency'),
    snapshot.utility.emergencyPhone,
  ].join(' ');

export function checkedFactsOf(snapshot: PublicSnapshot, locale: Locale): CheckedFacts {
  const { utility, inventory, outOfService, checkedAt, relyUntil, notYetShown = null } = snapshot;
  return {
    utility: utility.name,
    checkedAt,
    relyUntil,
    publishedEveryMinutes: utility.publishedEveryMinutes,
    emergencyPhone: utility.emergencyPhone,
    license: utility.license,
    hydrants: inventory?.hydrants ?? null,
    outOfService: inventory?.outOfService ?? null,
    notInInventory: outOfService.length - (inventory?.outOfService ?? 0),
    notYetShown,
    statement: statementWords(snapshot, locale),
    note: say(locale, 'public.data.note'),
  };
}
