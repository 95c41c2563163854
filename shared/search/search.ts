import type { ClaimState } from '../claims/state.ts';
import { localDate } from '../costs/days.ts';
import type { StrikeState } from '../strikes/state.ts';
import { privateWays, type PrivateWay } from './private.ts';
import { folded, plateKey } from './text.ts';

/** What a search matched by. Words: `search.by.<code>`. */
export const searchedBy = ['claim-number', 'hydrant', 'day', 'payer', 'place', ...privateWays] as const;
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
  /** Where the inventory says that a hydrant stands. */
  readonly placeOf: (hydrantId: string) => string | null;
  /** What the erasable fields of a stream (`strike:<id>`, `claim:<id>`) answered. */
  readonly privately: ReadonlyMap<string, ReadonlySet<PrivateWay>>;
}

/** The least of anything that is looked for. */
export const LEAST_FIND = 2;

/** A hydrant's number or a plate, however it is typed: `th0071` finds `TH-0071`. */
const keyHas = (text: string, key: string): boolean => key !== '' && plateKey(text).includes(key);

/** A day as it is typed or shown (`2026-03-04`, `3/4/2026`, `Mar 4, 2026`, `4 mar 2026`), or a month; null if it is none. */
function dayIn(wanted: string): string | null {
  if (/^\d{4}-\d{2}(-\d{2})?$/.test(wanted)) return wanted;
  const [, month, date, year] = /^(\d{1,2})\/(\d{1,2})\/(\d{4})$/.exec(wanted) ?? [];
  if (year !== undefined) return isoDay(year, Number(month), date);
  const [, nameFirst, dateAfter, ofYear] = /^([A-Z]{3,10})\.? (\d{1,2}),? (\d{4})$/.exec(wanted) ?? [];
  if (ofYear !== undefined) return isoDay(ofYear, monthNamed(nameFirst), dateAfter);
  const [, dateFirst, nameAfter, inYear] =
    /^(\d{1,2}) (?:DE )?([A-Z]{3,10})\.?(?: DE)? (\d{4})$/.exec(wanted) ?? [];
  return inYear === undefined ? null : isoDay(inYear, monthNamed(nameAfter), dateFirst);
}

const isoDay = (year: string, month: number | null, date = ''): string | null =>
  month === null ? null : `${year}-${String(month).padStart(2, '0')}-${date.padStart(2, '0')}`;

const monthNames: readonly (readonly string[])[] = [
  ['JAN', 'ENE'],
  ['FEB'],
  ['MAR'],
  ['APR', 'ABR'],
  ['MAY'],
  ['JUN'],
  ['JUL'],
  ['AUG', 'AGO'],
  ['SEP'],
  ['OCT'],
  ['NOV'],
  ['DEC', 'DIC'],
];
function monthNamed(name = ''): number | null {
  const at = monthNames.findIndex((starts) => starts.includes(name.slice(0, 3)));
  return at < 0 ? null : at + 1;
}

/**
 * Cases that answer a search, the newest strike first: by claim number, hydrant, day (`2026-03-04`, `3/4/2026`, or
 * `2026-03` for a month), payer, words of the place, and by what `privately` found: plate, a person's
 * name, the payer's own number. Whoever asks must be one who may see claims. Pure.
 */
export function search({
  find,
  strikes,
  claims,
  timeZone,
  placeOf,
  privately,
}: SearchQuestion): readonly Hit[] {
  const wanted = folded(find);
  if (wanted.length < LEAST_FIND) return [];
  const has = (text: string | null): boolean => text !== null && folded(text).includes(wanted);
  const claimsOf = new Map<string, ClaimState[]>();
  for (const claim of claims) {
    const known = claimsOf.get(claim.strikeId);
    if (known) known.push(claim);
    else claimsOf.set(claim.strikeId, [claim]);
  }
  const day = dayIn(wanted);
  const key = plateKey(find);
  return strikes
    .map((strike): Hit => {
      const own = strike.memberIds.flatMap((id) => claimsOf.get(id) ?? []);
      const struckOn = localDate(strike.struckAt ?? strike.since, timeZone);
      const streams = [
        ...strike.memberIds.map((id) => `strike:${id}`),
        ...own.map(({ claimId }) => `claim:${claimId}`),
      ];
      const by = (way: PrivateWay): boolean =>
        streams.some((stream) => privately.get(stream)?.has(way) === true);
      const matched: Record<SearchedBy, boolean> = {
        'claim-number': own.some(({ claimNumber }) => has(claimNumber)),
        hydrant: strike.hydrantIds.some((id) => has(id) || keyHas(id, key)),
        day: day !== null && struckOn.startsWith(day),
        payer: own.some(({ payerName }) => has(payerName)),
        place: has(strike.placeDescription) || strike.hydrantIds.some((id) => has(placeOf(id))),
        plate: by('plate'),
        person: by('person'),
        'payer-number': by('payer-number'),
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
