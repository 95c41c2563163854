import type { ClassBand } from '../../../shared/hydraulics/hydrantClass.ts';
import { intervalEnds } from '../../../shared/hydraulics/sayCapacity.ts';
import { hydrantPath, pagePath } from '../../../shared/public/address.ts';
import type { PublicEdition } from '../../../shared/public/edition.ts';
import type { PublicNearest, PublicOutOfService } from '../../../shared/public/snapshot.ts';
import { dateOf, instantParts } from '../../../shared/public/times.ts';
import { toldDistance } from '../../../shared/public/toldDistance.ts';
import { displays, formatNumber, formatQuantity, unitSymbol } from '../../../shared/units/format.ts';
import type { System, UnitId } from '../../../shared/units/units.ts';
import { isLocale, say, type Locale, type WordKey, type WordParams } from '../../../shared/words/index.ts';

/** For whom a page is written: language, units, time zone. Every part of a page speaks through this. */
export interface Reader {
  readonly locale: Locale;
  readonly say: (key: WordKey, params?: WordParams) => string;
  /** A code's words: `code('public.cause', 'strike')`. */
  readonly code: (family: string, code: string) => string;
  /** `Wed, Mar 4, 14:05 CST` */
  readonly instant: (at: string) => string;
  /** `Mar 4, 2026`, the utility's day: where the hour says nothing. */
  readonly day: (at: string) => string;
  /** A count, thousands set apart as everywhere else. */
  readonly number: (value: number) => string;
  /** The utility's units first, the other in brackets. */
  readonly quantity: (value: number, unit: UnitId) => string;
  /** An interval of flows, its ends moved outward to the ten, in both systems. */
  readonly flowRange: (interval: { readonly lowGpm: number; readonly highGpm: number }) => string;
  /** A distance on the ground, rounded as a person would pace it. */
  readonly distance: (feet: number) => string;
  /** How far and where to: `230 ft (70 m) east`. */
  readonly away: (to: Pick<PublicNearest, 'distanceFt' | 'bearing'>) => string;
  /** The same in the utility's own units alone, where every letter is an inch high. */
  readonly awayBriefly: (to: Pick<PublicNearest, 'distanceFt' | 'bearing'>) => string;
  /** What is written in each system, the utility's own first, the other in brackets. */
  readonly both: (write: (system: System) => string) => string;
  readonly list: (items: readonly string[]) => string;
  readonly link: (page: string) => string;
  /** Path of a hydrant's own page, or null when nothing is recorded of it. */
  readonly hydrantLink: (hydrantId: string | null) => string | null;
  readonly units: System;
  /** The utility's classes, highest first. */
  readonly classes: readonly ClassBand[];
}

const known = new WeakMap<PublicEdition, ReadonlySet<string>>();

/** Ids with a page, gathered once an edition and not once a page. */
function pagesOf(edition: PublicEdition): ReadonlySet<string> {
  const found = known.get(edition) ?? new Set(edition.hydrants.map(({ hydrantId }) => hydrantId));
  known.set(edition, found);
  return found;
}

export function readerOf(edition: PublicEdition, locale: Locale): Reader {
  const { utility, checkedAt } = edition.snapshot;
  const times = { timeZone: utility.timeZone, locale };
  const withPage = pagesOf(edition);
  const link = (page: string): string => pagePath(page, locale, utility.locale);
  const own: System = utility.units;
  const other: System = own === 'us' ? 'metric' : 'us';
  const both = (write: (system: System) => string): string =>
    say(locale, 'public.both-units', { own: write(own), other: write(other) });
  const distanceIn = (feet: number, system: System): string => {
    const { value, unit } = toldDistance(feet, system, own);
    return formatQuantity(value, unit, { system, locale });
  };
  const distance = (feet: number): string => both((system) => distanceIn(feet, system));
  const awayBy = (told: string, bearing: PublicNearest['bearing']): string =>
    say(locale, 'public.away', { distance: told, direction: say(locale, `public.bearing.${bearing}`) });
  return {
    locale,
    units: own,
    classes: utility.classes,
    say: (key, params) => say(locale, key, params),
    code: (family, code) => say(locale, `${family}.${code}`),
    instant: (at) => say(locale, 'public.instant', instantParts(at, times, checkedAt)),
    day: (at) => dateOf(at, times),
    number: (value) => formatNumber(value, locale, 0),
    quantity: (value, unit) => both((system) => formatQuantity(value, unit, { system, locale })),
    flowRange: (interval) =>
      both((system) =>
        say(locale, 'public.hydrant.range', {
          ...intervalEnds(interval, { system, locale }),
          unit: unitSymbol(displays.gpm[system].unit, locale),
        }),
      ),
    distance,
    away: ({ distanceFt, bearing }) => awayBy(distance(distanceFt), bearing),
    awayBriefly: ({ distanceFt, bearing }) => awayBy(distanceIn(distanceFt, own), bearing),
    both,
    list: (items) => new Intl.ListFormat(locale, { type: 'conjunction' }).format(items),
    link,
    hydrantLink: (hydrantId) =>
      hydrantId !== null && withPage.has(hydrantId) ? link(hydrantPath(hydrantId)) : null,
  };
}

/** The language of a page from its address: none stands for the utility's own. Null when it is not a language. */
export function localeOf(lang: string | undefined, edition: PublicEdition): Locale | null {
  if (lang === undefined) return edition.snapshot.utility.locale;
  return isLocale(lang) ? lang : null;
}

export const otherLocale = (locale: Locale): Locale => (locale === 'en' ? 'es' : 'en');

/** Whole hours as a person would say them: `2 days`. Beyond two days the hours are noise. */
export function hoursWords({ say: words }: Reader, hours: number): string {
  if (hours < 1) return words('public.under-an-hour');
  const days = Math.floor(hours / 24);
  return words('public.for', { days, hours: days >= 2 ? 0 : hours % 24 }).trim();
}

/** How long it had been out at the check. */
export const lengthWords = (reader: Reader, since: string, until: string): string =>
  hoursWords(reader, Math.floor((Date.parse(until) - Date.parse(since)) / 3_600_000));

/** Why it is out, each cause once: two outages may have the same. */
export const causeWords = ({ code }: Reader, { outages }: PublicOutOfService): readonly string[] => [
  ...new Set(outages.map(({ cause }) => code('public.cause', cause))),
];
