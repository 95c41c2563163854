import { Temporal } from 'temporal-polyfill';
import { rowOf } from '../claimFigures/rowOf.ts';
import type { ClaimState } from '../claims/state.ts';
import { localDate } from '../costs/days.ts';
import type { Hydrant } from '../inventory/hydrant.ts';
import type { HydrantStatus } from '../outages/hydrantStatus.ts';
import { median, outSpans } from '../public/summary.ts';
import type { StrikeState } from '../strikes/state.ts';
import type { PublicYear, PublicYears } from './schema.ts';
import { sumsOf } from './sums.ts';

/** Years that are told, the one that is not over among them. */
export const MOST_YEARS = 10;
/** Hydrants named as struck again in one year. */
const MOST_AGAIN = 50;
const HOUR_MS = 3_600_000;
const DAY_MS = 24 * HOUR_MS;

export interface YearsQuestion {
  readonly statuses: readonly HydrantStatus[];
  readonly strikes: readonly StrikeState[];
  readonly claims: readonly ClaimState[];
  /** The inventory's hydrant; null for one it has not. */
  readonly hydrantOf: (hydrantId: string) => Pick<Hydrant, 'hydrantId' | 'place'> | null;
  readonly timeZone: string;
  readonly checkedAt: string;
}

/** The utility's calendar years, in its own time zone, as the facts on record tell them. Newest first. */
export function yearsOf(question: YearsQuestion): PublicYears {
  const { statuses, strikes, timeZone, checkedAt } = question;
  const begun = [
    ...strikes.map(beganAt),
    ...statuses.flatMap(({ open, past }) => [...open, ...past].map(({ since }) => since)),
  ].filter((at) => Date.parse(at) <= Date.parse(checkedAt));
  const since = begun.reduce<string | null>(
    (first, at) => (first === null || Date.parse(at) < Date.parse(first) ? at : first),
    null,
  );
  if (since === null) return { since, years: [] };
  const thisYear = yearIn(checkedAt, timeZone);
  const first = Math.max(yearIn(since, timeZone), thisYear - MOST_YEARS + 1);
  const tell = yearTeller(question, thisYear);
  return {
    since: new Date(since).toISOString(),
    years: Array.from({ length: thisYear - first + 1 }, (_, back) => tell(thisYear - back)),
  };
}

const beganAt = ({ struckAt, since }: StrikeState): string => struckAt ?? since;
const yearIn = (at: string, timeZone: string): number => Number(localDate(at, timeZone).slice(0, 4));

/** The first moment of a year in a time zone. */
const startOf = (year: number, timeZone: string): number =>
  Temporal.PlainDate.from({ year, month: 1, day: 1 }).toZonedDateTime({ timeZone }).epochMilliseconds;

function yearTeller(question: YearsQuestion, thisYear: number): (year: number) => PublicYear {
  const { strikes, claims, timeZone, checkedAt } = question;
  const strikesIn = Map.groupBy(strikes, (strike) => yearIn(beganAt(strike), timeZone));
  const struck = hydrantsStruck(question);
  const spans = spansOf(question);
  // Under every id the strike has had, because a claim keeps the one it was opened with.
  const byId = new Map(strikes.flatMap((strike) => strike.memberIds.map((id) => [id, strike] as const)));
  const rows = claims.map((claim) => rowOf(claim, byId.get(claim.strikeId) ?? null, timeZone));
  const rowsIn = Map.groupBy(rows, ({ struckOn }) => Number(struckOn.slice(0, 4)));

  return (year) => {
    const own = strikesIn.get(year) ?? [];
    const byMonth = Array.from({ length: 12 }, () => 0);
    for (const strike of own) {
      const month = Number(localDate(beganAt(strike), timeZone).slice(5, 7)) - 1;
      byMonth[month] = (byMonth[month] ?? 0) + 1;
    }
    const took = own.flatMap(({ since, returnedAt }) =>
      returnedAt === null ? [] : [Math.max(0, Date.parse(returnedAt) - Date.parse(since))],
    );
    const hours = (ms: number | null): number | null => (ms === null ? null : Math.round(ms / HOUR_MS));
    const over = year < thisYear;
    const [from, to] = [startOf(year, timeZone), startOf(year + 1, timeZone)];
    const within = [from, Math.min(to, Date.parse(checkedAt))] as const;
    const [all, byStrike] = [daysWithin(spans.all, within), daysWithin(spans.strikes, within)];
    return {
      year,
      over,
      strikes: own.length,
      byMonth,
      returned: {
        strikes: took.length,
        medianHours: hours(median(took)),
        longestHours: hours(took.length === 0 ? null : took.reduce((a, b) => Math.max(a, b))),
      },
      stillOut: own.length - took.length,
      daysOut: { strike: Math.round(byStrike), other: Math.max(0, Math.round(all) - Math.round(byStrike)) },
      money: sumsOf(rowsIn.get(year) ?? [], over),
      again: struck.again(year),
    };
  };
}

type Spans = readonly { readonly since: number; readonly until: number }[];

/** When hydrants were out: for any reason, and struck. A strike that no hydrant's status knows stands by itself. */
function spansOf({ statuses, strikes }: YearsQuestion): { readonly all: Spans; readonly strikes: Spans } {
  const known = new Set<string>();
  const all = [];
  const struck = [];
  for (const { open, past } of statuses) {
    const outages = [...past, ...open];
    const ofStrikes = outages.filter(({ cause }) => cause === 'strike');
    for (const { outageId } of ofStrikes) known.add(outageId);
    all.push(...outSpans(outages));
    struck.push(...outSpans(ofStrikes));
  }
  for (const { strikeId, since, returnedAt } of strikes) {
    if (known.has(strikeId)) continue;
    const span = outSpans([{ since, endedAt: returnedAt }]);
    all.push(...span);
    struck.push(...span);
  }
  return { all, strikes: struck };
}

const daysWithin = (spans: Spans, [from, to]: readonly [number, number]): number =>
  spans.reduce((sum, { since, until }) => sum + Math.max(0, Math.min(until, to) - Math.max(since, from)), 0) /
  DAY_MS;

/** The hydrants of the inventory that were struck, with the years in which they were. */
function hydrantsStruck({ strikes, hydrantOf, timeZone }: YearsQuestion): {
  readonly again: (year: number) => PublicYear['again'];
} {
  const yearsBy = new Map<string, number[]>();
  for (const strike of strikes) {
    const { hydrantId } = strike;
    if (hydrantId === null || hydrantOf(hydrantId) === null) continue;
    yearsBy.set(hydrantId, [...(yearsBy.get(hydrantId) ?? []), yearIn(beganAt(strike), timeZone)]);
  }
  return {
    again: (year) =>
      [...yearsBy]
        .map(([hydrantId, years]) => ({
          hydrantId,
          place: hydrantOf(hydrantId)?.place ?? null,
          inYear: years.filter((one) => one === year).length,
          everSo: years.filter((one) => one <= year).length,
        }))
        .filter(({ inYear, everSo }) => inYear > 0 && everSo > 1)
        .toSorted(
          (a, b) => b.everSo - a.everSo || b.inYear - a.inYear || (a.hydrantId < b.hydrantId ? -1 : 1),
        )
        .slice(0, MOST_AGAIN),
  };
}
