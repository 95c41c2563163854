import * as z from 'zod';
import { hydrantId } from '../inventory/hydrant.ts';
import type { HydrantStatus } from '../outages/hydrantStatus.ts';
import type { StrikeState } from '../strikes/state.ts';

/** Over how many days before the check the time to return is looked at. */
export const RETURN_DAYS = 365;
const DAY_MS = 86_400_000;

/** The utility at a glance. How many of how many stands in the snapshot's `inventory`. */
export const publicSummary = z.strictObject({
  /** The entry that has been out longest; null when nothing is out. */
  oldest: z
    .strictObject({ hydrantId: hydrantId.nullable(), place: z.string().nullable(), since: z.iso.datetime() })
    .nullable(),
  /** Times from going out to being back in service, of those that came back within `days` before the check. */
  returns: z.strictObject({
    days: z.number().int().min(1),
    count: z.number().int().min(0),
    /** Half came back sooner. Null when none came back: there is no figure then. */
    medianMinutes: z.number().int().min(0).nullable(),
  }),
});
export type PublicSummary = z.infer<typeof publicSummary>;

interface Span {
  readonly since: number;
  readonly until: number;
}

/**
 * Times at which one hydrant could not be relied on: outages that overlap or touch are one, because it is back only
 * when the last of them has ended. Infinity for one that has not.
 */
export function outSpans(outages: readonly { since: string; endedAt: string | null }[]): readonly Span[] {
  const spans: Span[] = [];
  const sorted = outages
    .map(({ since, endedAt }) => ({
      since: Date.parse(since),
      until: endedAt === null ? Number.POSITIVE_INFINITY : Date.parse(endedAt),
    }))
    .sort((a, b) => a.since - b.since);
  for (const { since, until } of sorted) {
    const last = spans.at(-1);
    if (last && since <= last.until)
      spans[spans.length - 1] = { since: last.since, until: Math.max(last.until, until) };
    else spans.push({ since, until });
  }
  return spans;
}

/** The middle value, or the mean of the two in the middle; null of none. */
export function median(values: readonly number[]): number | null {
  const sorted = values.toSorted((a, b) => a - b);
  const [low, high] = [sorted[Math.floor((sorted.length - 1) / 2)], sorted[Math.floor(sorted.length / 2)]];
  return low === undefined || high === undefined ? null : (low + high) / 2;
}

interface Entry {
  readonly hydrantId: string | null;
  readonly place: string | null;
  readonly outages: readonly { readonly since: string }[];
}

/** What stands at the top: the oldest outage, and how long it takes until a hydrant is back. */
export function summaryOf(
  entries: readonly Entry[],
  statuses: readonly HydrantStatus[],
  strikes: readonly StrikeState[],
  checkedAt: string,
): PublicSummary {
  const began = ({ outages }: Entry): string =>
    outages.map(({ since }) => since).reduce((a, b) => (Date.parse(b) < Date.parse(a) ? b : a));
  const [oldest] = entries
    .map((entry) => ({ entry, since: began(entry) }))
    .sort((a, b) => Date.parse(a.since) - Date.parse(b.since));

  const now = Date.parse(checkedAt);
  const spans = [
    ...statuses.map(({ open, past }) => outSpans([...open, ...past])),
    // Nobody ever knew which hydrant it was, so no hydrant's status has it.
    ...strikes
      .filter((strike) => strike.hydrantId === null)
      .map(({ since, returnedAt }) => outSpans([{ since, endedAt: returnedAt }])),
  ].flat();
  const returned = spans.filter(({ until }) => until <= now && until > now - RETURN_DAYS * DAY_MS);
  const middle = median(returned.map(({ since, until }) => Math.max(0, until - since)));
  return {
    oldest: oldest
      ? { hydrantId: oldest.entry.hydrantId, place: oldest.entry.place, since: oldest.since }
      : null,
    returns: {
      days: RETURN_DAYS,
      count: returned.length,
      medianMinutes: middle === null ? null : Math.round(middle / 60_000),
    },
  };
}
