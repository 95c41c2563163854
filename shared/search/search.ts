import type { ClaimState } from '../claims/state.ts';
import { localDate } from '../costs/days.ts';
import type { StrikeState } from '../strikes/state.ts';

/** What a search matched by. Words: `search.by.<code>`. */
export const searchedBy = ['claim-number', 'hydrant', 'day', 'payer', 'place', 'plate'] as const;
export type SearchedBy = (typeof searchedBy)[number];

/** A case that answers a search: the strike, its claims, and every way in which it matched. */
export interface Hit {
  readonly strikeId: string;
  readonly hydrantId: string | null;
  readonly struckOn: string;
  readonly placeDescription: string | null;
  readonly claims: readonly { readonly claimId: string; readonly claimNumber: string }[];
  readonly by: readonly SearchedBy[];
}

export interface SearchQuestion {
  readonly find: string;
  readonly strikes: readonly StrikeState[];
  readonly claims: readonly ClaimState[];
  readonly timeZone: string;
  /** Every id of strikes of whose vehicles a plate matches. */
  readonly plateStrikes: ReadonlySet<string>;
}

/** Letters and digits only, upper case: plates are written with spaces, dots and hyphens as anybody likes. */
export const plateKey = (plate: string): string =>
  plate
    .normalize('NFKC')
    .toUpperCase()
    .replace(/[^\p{L}\p{N}]/gu, '');

/** The least of a plate that is looked for: fewer signs would match half the town. */
export const LEAST_PLATE = 3;
/** The least of anything that is looked for. */
export const LEAST_FIND = 2;

/** Whether a plate answers what was typed. Part of a plate will do: a witness rarely has all of it. */
export function plateMatches(plate: string | null, find: string): boolean {
  const wanted = plateKey(find);
  return plate !== null && wanted.length >= LEAST_PLATE && plateKey(plate).includes(wanted);
}

const folded = (text: string): string =>
  text.normalize('NFKD').replace(/\p{M}/gu, '').toUpperCase().replace(/\s+/g, ' ').trim();

/**
 * Cases that answer a search, the newest strike first: by claim number, hydrant, day (`2026-03-04`, or `2026-03` for a
 * month), payer, words of the place, or plate. Whoever asks must be one who may see claims. Pure.
 */
export function search({ find, strikes, claims, timeZone, plateStrikes }: SearchQuestion): readonly Hit[] {
  const wanted = folded(find);
  if (wanted.length < LEAST_FIND) return [];
  const has = (text: string | null): boolean => text !== null && folded(text).includes(wanted);
  const claimsOf = new Map<string, ClaimState[]>();
  for (const claim of claims) {
    const known = claimsOf.get(claim.strikeId);
    if (known) known.push(claim);
    else claimsOf.set(claim.strikeId, [claim]);
  }
  const isDay = /^\d{4}-\d{2}(-\d{2})?$/.test(wanted);
  return strikes
    .map((strike): Hit => {
      const own = strike.memberIds.flatMap((id) => claimsOf.get(id) ?? []);
      const struckOn = localDate(strike.struckAt ?? strike.since, timeZone);
      const matched: Record<SearchedBy, boolean> = {
        'claim-number': own.some(({ claimNumber }) => has(claimNumber)),
        hydrant: strike.hydrantIds.some(has),
        day: isDay && struckOn.startsWith(wanted),
        payer: own.some(({ payerName }) => has(payerName)),
        place: has(strike.placeDescription),
        plate: strike.memberIds.some((id) => plateStrikes.has(id)),
      };
      return {
        strikeId: strike.strikeId,
        hydrantId: strike.hydrantId,
        struckOn,
        placeDescription: strike.placeDescription,
        claims: own.map(({ claimId, claimNumber }) => ({ claimId, claimNumber })),
        by: searchedBy.filter((way) => matched[way]),
      };
    })
    .filter(({ by }) => by.length > 0)
    .sort((a, b) => b.struckOn.localeCompare(a.struckOn) || b.strikeId.localeCompare(a.strikeId));
}
