import type { ClaimState } from '../../../../shared/claims/state.ts';
import type { StrikeState } from '../../../../shared/strikes/state.ts';
import { ageDays } from './age.ts';

/** The desk's piles in the order in which a case goes through them. Words: `desk.pile.<code>`. */
export const piles = ['out', 'ready', 'open', 'frozen', 'billed', 'settled'] as const;
export type Pile = (typeof piles)[number];

export interface Case {
  readonly strike: StrikeState;
  readonly claims: readonly ClaimState[];
}

/** Nothing is left to do about it: paid, or knowingly ended. What was paid too much is still somebody's. */
const isSettled = ({ life, money }: ClaimState): boolean =>
  life.closed || (money.balanceCents === 0 && money.overpaidCents === 0 && money.askedCents > 0);

export function pileOf({ strike, claims }: Case): Pile {
  if (claims.length > 0)
    return claims.some(({ stage }) => stage === 'open')
      ? 'open'
      : claims.some(({ stage }) => stage === 'frozen')
        ? 'frozen'
        : claims.every(isSettled)
          ? 'settled'
          : 'billed';
  return strike.returnedAt === null ? 'out' : 'ready';
}

/** What the last packet of each claim demands, whole cents. A claim without a packet demands nothing yet. */
export const totalCents = (cases: readonly Case[]): number =>
  cases
    .flatMap(({ claims }) => claims)
    .reduce((cents, { packets }) => cents + (packets.at(-1)?.demandCents ?? 0), 0);

export const oldestDays = (cases: readonly Case[]): number =>
  Math.max(0, ...cases.map(({ strike }) => ageDays(strike.since)));
