import { contactOf, type ClaimContact } from '../../shared/claims/contact.ts';
import { shareOf, sharesOf, strikeProblems, type StrikeShares } from '../../shared/claims/ofStrike.ts';
import { foldClaim, type ClaimState } from '../../shared/claims/state.ts';
import { localDate } from '../../shared/costs/days.ts';
import { fullPaymentCautions, type FullPaymentCaution } from '../../shared/payments/fullPayment.ts';
import { sayFullPayment } from '../../shared/payments/sayFullPayment.ts';
import type { Problem } from '../../shared/problems/problem.ts';
import type { StrikeState } from '../../shared/strikes/state.ts';
import { effectiveFacts } from '../../shared/submissions/effective.ts';
import type { Recorded } from '../../shared/submissions/recorded.ts';
import { withoutTrials } from '../../shared/submissions/trials.ts';
import { sayProblem, type Locale } from '../../shared/words/index.ts';
import { Refused } from '../http/refused.ts';
import { loadClaim } from '../packets/load.ts';
import type { RecordsDeps } from './deps.ts';
import { claimFacts } from './facts.ts';

/** A claim read from the ledger itself, with what only its neighbours and today can tell. */
export interface ClaimNow {
  readonly claim: ClaimState;
  readonly contact: ClaimContact | null;
  /** Beside the other claims of its strike; null while there is no statement to share. */
  readonly shares:
    | (StrikeShares & {
        readonly totalCents: number;
        /** False: a line has no amount yet, and the total is less than the cost. */
        readonly complete: boolean;
        readonly problems: readonly (Problem & { readonly message: string })[];
      })
    | null;
  readonly cautions: readonly (FullPaymentCaution & { readonly sentences: readonly string[] })[];
}

/** `recorded`: the claim's stream. Null when its opening is not there, or was withdrawn. */
export async function claimNow(
  deps: RecordsDeps,
  {
    claimId,
    recorded,
    strike,
    others,
    locale,
  }: {
    readonly claimId: string;
    readonly recorded: readonly Recorded[];
    readonly strike: StrikeState | null;
    readonly others: readonly ClaimState[];
    readonly locale: Locale;
  },
): Promise<ClaimNow | null> {
  const { timeZone, claimRules } = deps.settings;
  const { facts } = effectiveFacts(withoutTrials(recorded));
  const statement = await statementOf(deps, claimId);
  const struckAt = strike?.struckAt ?? null;
  const claim = foldClaim(claimId, facts, {
    timeZone,
    today: localDate(deps.now().toISOString(), timeZone),
    ...(struckAt === null ? {} : { struckOn: localDate(struckAt, timeZone) }),
    ...(statement?.complete ? { statementCents: statement.totalCents } : {}),
  });
  if (!claim) return null;
  const beside = await Promise.all(
    others.map(async (other) => {
      const theirs = await claimFacts(deps.ledger, other.claimId);
      const state = foldClaim(other.claimId, theirs);
      return state && shareOf(state, theirs);
    }),
  );
  const known = beside.filter((share) => share !== null);
  const own = shareOf(claim, facts);
  return {
    claim,
    contact: contactOf(facts),
    shares: statement && {
      totalCents: statement.totalCents,
      complete: statement.complete,
      ...sharesOf(own, known, statement.totalCents),
      problems: strikeProblems([own, ...known], statement.totalCents).map((found) => ({
        ...found,
        message: sayProblem(locale, found),
      })),
    },
    cautions: fullPaymentCautions(facts, claim.money.askedCents, claimRules).map((caution) => ({
      ...caution,
      sentences: sayFullPayment(locale, caution),
    })),
  };
}

/** Null where the claim's strike has not arrived: there is nothing to bill yet. */
async function statementOf(deps: RecordsDeps, claimId: string) {
  try {
    return (await loadClaim(deps, claimId)).statement;
  } catch (error) {
    if (error instanceof Refused) return null;
    throw error;
  }
}
