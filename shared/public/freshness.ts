/** `early`: this clock is behind the check, so it cannot tell. */
export type Freshness = 'good' | 'old' | 'early';

/** A clock this far behind the check cannot tell how old a page is. */
const CLOCK_TOLERANCE_MS = 2 * 60_000;

/** Whether something that was checked may be relied on, by a device's clock. Instants as ISO 8601; unreadable is old. */
export function freshness(
  now: Date,
  { checkedAt, relyUntil }: { readonly checkedAt: string; readonly relyUntil: string },
): Freshness {
  if (!(now.getTime() < Date.parse(relyUntil))) return 'old';
  return now.getTime() >= Date.parse(checkedAt) - CLOCK_TOLERANCE_MS ? 'good' : 'early';
}
