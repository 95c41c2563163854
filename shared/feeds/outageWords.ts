import { doingWords } from '../public/doing.ts';
import { hydrantPath, pagePath } from '../public/address.ts';
import type { PublicEdition } from '../public/edition.ts';
import type { PublicSnapshot } from '../public/snapshot.ts';
import { say, type Locale } from '../words/index.ts';
import type { OutageChange } from './changes.ts';
import { instantWords } from './facts.ts';

type Told = Pick<OutageChange, 'hydrantId' | 'inInventory' | 'place' | 'position'>;

/** `Hydrant H-0131, Elm St at First Ave`, as far as it is known. */
export function hydrantWords({ hydrantId, place }: Told, locale: Locale): string {
  const name =
    hydrantId === null
      ? say(locale, 'public.unknown-hydrant')
      : say(locale, 'public.hydrant.title', { hydrant: hydrantId });
  return place === null ? name : `${name}, ${place}`;
}

/** `Out of service: Hydrant H-0131, Elm St at First Ave`. */
export function titleWords(change: OutageChange, locale: Locale): string {
  const hydrant = hydrantWords(change, locale);
  const { ended } = change;
  if (ended === null) return say(locale, 'feeds.title.out', { hydrant });
  if (ended.stillOut) return say(locale, 'feeds.title.still-out', { hydrant });
  return say(locale, ended.endedAt === null ? 'feeds.title.unlisted' : 'feeds.title.back', { hydrant });
}

/** What the list says of an outage, a sentence a line. Holds no more than the list does. */
export function outageLines(change: OutageChange, snapshot: PublicSnapshot, locale: Locale): string[] {
  const { outage, ended, position, inInventory, hydrantId } = change;
  const at = (instant: string): string => instantWords(instant, snapshot, locale);
  const cause = say(locale, 'feeds.cause', { cause: say(locale, `public.cause.${outage.cause}`) });
  const since = say(locale, 'feeds.since', { at: at(outage.since) });
  if (ended !== null)
    return [
      ended.endedAt === null
        ? say(locale, 'feeds.unlisted')
        : say(locale, 'feeds.ended', { at: at(ended.endedAt) }),
      ...(ended.stillOut ? [say(locale, 'feeds.still-out')] : []),
      cause,
      since,
    ];
  return [
    cause,
    since,
    doingWords(outage, locale),
    outage.expectedAt === null
      ? say(locale, 'feeds.not-expected')
      : say(locale, isPast(outage.expectedAt, snapshot) ? 'feeds.overdue' : 'feeds.expected', {
          at: at(outage.expectedAt),
        }),
    ...(hydrantId !== null && !inInventory ? [say(locale, 'public.hydrant.not-in-inventory')] : []),
    ...(position === null
      ? [say(locale, 'public.no-position', { phone: snapshot.utility.emergencyPhone })]
      : [say(locale, 'feeds.position', position)]),
  ];
}

const isPast = (at: string, { checkedAt }: PublicSnapshot): boolean => Date.parse(at) < Date.parse(checkedAt);

/** Where a reader finds more: the hydrant's page, or the list while it has none. A path, e.g. `/es/hydrants/H-1/`. */
export function pathOf({ hydrantId }: Told, { snapshot, hydrants }: PublicEdition, locale: Locale): string {
  const hasPage = hydrantId !== null && pagesIn(hydrants).has(hydrantId);
  return pagePath(hasPage ? hydrantPath(hydrantId) : '', locale, snapshot.utility.locale);
}

const known = new WeakMap<PublicEdition['hydrants'], ReadonlySet<string>>();

/** Ids with a page, gathered once an edition and not once an entry. */
function pagesIn(hydrants: PublicEdition['hydrants']): ReadonlySet<string> {
  const ids = known.get(hydrants) ?? new Set(hydrants.map(({ hydrantId }) => hydrantId));
  known.set(hydrants, ids);
  return ids;
}
