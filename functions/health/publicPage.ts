import { freshness, relyUntilOf } from '../../shared/public/freshness.ts';
import type { UtilitySettings } from '../../shared/utility/settings.ts';
import { SNAPSHOT_KEY } from '../publish/pages.ts';
import type { PublishedStore } from '../stores/published/published.ts';

export interface PublicPageHealth {
  /** `old`: it says itself that it is not to be relied on any more. `none`: nothing was ever published. */
  readonly state: 'good' | 'old' | 'none';
  readonly checkedAt: string | null;
  readonly relyUntil: string | null;
  /** Since it was checked, whole seconds; 0 where its clock is a little ahead. Null: nothing was ever published. */
  readonly ageSeconds: number | null;
}

/** How old the public page is: by its snapshot, which is written after every page. Throws `StoreUnavailable`. */
export async function publicPageAt(
  published: Pick<PublishedStore, 'head'>,
  { publishing }: UtilitySettings,
  now: Date,
): Promise<PublicPageHealth> {
  const checkedAt = (await published.head(SNAPSHOT_KEY))?.checkedAt ?? null;
  if (checkedAt === null) return { state: 'none', checkedAt: null, relyUntil: null, ageSeconds: null };
  const relyUntil = relyUntilOf(checkedAt, publishing);
  // Both clocks are the service's own: a check that lies a little ahead is good.
  const state = freshness(now, { checkedAt, relyUntil }) === 'old' ? 'old' : 'good';
  const ageSeconds = Math.max(0, Math.floor((now.getTime() - Date.parse(checkedAt)) / 1000));
  return { state, checkedAt, relyUntil, ageSeconds };
}
