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

/** How often pages are published and for how long each may be relied on, minutes (`publishing` of the settings). */
export interface Pace {
  readonly everyMinutes: number;
  readonly relyForMinutes: number;
}

/** Until when something checked at `checkedAt` may be relied on. Instants as ISO 8601, in UTC. */
export const relyUntilOf = (checkedAt: string, { relyForMinutes }: Pick<Pace, 'relyForMinutes'>): string =>
  new Date(Date.parse(checkedAt) + relyForMinutes * 60_000).toISOString();

/**
 * Whether a page that would say the same again may stand with its own earlier check, which is as true as it was: as long
 * as one publication may still be missed before it grows too old. Not when its check lies ahead of this clock.
 */
export function mayStand(checkedAt: string, now: Date, { everyMinutes, relyForMinutes }: Pace): boolean {
  const ageMinutes = (now.getTime() - Date.parse(checkedAt)) / 60_000;
  return ageMinutes >= 0 && ageMinutes + 2 * everyMinutes <= relyForMinutes;
}
