import { clocksOf } from '../../shared/clocks/clocks.ts';
import type { FeedItem } from '../../shared/calendar/feed.ts';
import { byBalance, quietClaim, type QuietClaim } from '../../shared/clocks/quiet.ts';
import { foldClaim, type ClaimState } from '../../shared/claims/state.ts';
import { localDate, type LocalDate } from '../../shared/costs/days.ts';
import type { StrikeState } from '../../shared/strikes/state.ts';
import { effectiveFacts } from '../../shared/submissions/effective.ts';
import { streamOf } from '../../shared/submissions/envelope.ts';
import { withoutTrials } from '../../shared/submissions/trials.ts';
import type { UtilitySettings } from '../../shared/utility/settings.ts';
import { inTurns } from '../project/deps.ts';
import type { CurrentState } from '../records/current.ts';
import type { Ledger } from '../stores/ledger/ledger.ts';

export interface DeadlineDeps {
  readonly settings: UtilitySettings;
  readonly ledger: Ledger;
  readonly current: CurrentState;
}

/** The dates of claims, and the open claims of which no date runs. */
export interface Watched {
  readonly items: readonly FeedItem[];
  readonly quiet: readonly QuietClaim[];
}

/**
 * The dates of every claim. Which claims there are comes from what is kept for reading; what each says is read from the
 * ledger itself, strongly consistent and without personal fields, so a date never hangs on a projection that lags. One
 * query a claim (docs/clocks.md has what that costs).
 */
export async function allDeadlines(deps: DeadlineDeps, today: LocalDate): Promise<Watched> {
  const [claims, strikes] = await Promise.all([deps.current.claims(), deps.current.strikes()]);
  const struck = new Map(strikes.flatMap((strike) => strike.memberIds.map((id) => [id, strike] as const)));
  const each = await inTurns(claims, (claim) =>
    deadlinesOf(deps, claim, struck.get(claim.strikeId) ?? null, today),
  );
  return {
    items: each.flatMap(({ items }) => items),
    quiet: each.flatMap(({ quiet }) => quiet).sort(byBalance),
  };
}

/** The dates of one claim. */
export async function claimDeadlines(
  deps: DeadlineDeps,
  claimId: string,
  today: LocalDate,
): Promise<readonly FeedItem[] | null> {
  const claim = await deps.current.claim(claimId);
  if (!claim) return null;
  return (await deadlinesOf(deps, claim, await deps.current.strike(claim.strikeId), today)).items;
}

async function deadlinesOf(
  { ledger, settings }: DeadlineDeps,
  { claimId, claimNumber, strikeId, payerKind, payerName }: ClaimState,
  strike: StrikeState | null,
  today: LocalDate,
): Promise<Watched> {
  const all = await ledger.readStream(streamOf({ type: 'claim', claimId }), { personal: false });
  const recorded = withoutTrials(all);
  const { facts } = effectiveFacts(recorded);
  const struckOn = strike ? localDate(strike.struckAt ?? strike.since, settings.timeZone) : '';
  const lastRecordedAt = recorded.map(({ recordedAt }) => recordedAt).reduce((a, b) => (a > b ? a : b), '');
  const deadlines = clocksOf({ facts, struckOn, settings, today });
  const claim = foldClaim(claimId, facts, { timeZone: settings.timeZone, today });
  const quiet = claim && quietClaim(claim, deadlines);
  return {
    items: deadlines.map((deadline) => ({
      ...deadline,
      claimId,
      claimNumber,
      strikeId,
      payerKind,
      payerName,
      changes: recorded.length,
      lastRecordedAt,
    })),
    quiet: quiet ? [quiet] : [],
  };
}
