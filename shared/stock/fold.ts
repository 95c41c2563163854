import { byText } from './order.ts';
import { nameKey } from './names.ts';
import { entriesOf, minimaOf, thousandths, type Entry } from './entries.ts';
import type { StockUse } from './uses.ts';
import type { Effective } from '../submissions/effective.ts';

/**
 * `negative`: more was taken than there was, so something recorded is wrong. `never-counted`: what is there is not known,
 * which is not none. `not-kept`: none is there and none should be.
 */
export type Standing = 'enough' | 'low' | 'out' | 'not-kept' | 'negative' | 'never-counted';

/** One part at one place. Quantities in pieces, to a thousandth. */
export interface Shelf {
  readonly place: string;
  readonly counted: {
    readonly quantity: number;
    readonly at: string;
    readonly byWorkerId: string;
    readonly submissionId: string;
  } | null;
  /** What came in, went elsewhere and was used after the count; ever, where nothing was counted. */
  readonly inSince: number;
  readonly outSince: number;
  readonly usedSince: number;
  /** What should be there now. Null: never counted. Below zero: said as it is. */
  readonly quantity: number | null;
  /** The least that should be there; null: nobody said. */
  readonly minimum: number | null;
  readonly standing: Standing;
}

export interface StockedPart {
  readonly partNumber: string;
  readonly description: string | null;
  readonly shelves: readonly Shelf[];
  /**
   * Used with no shelf named, and not surely seen by a count since: some shelf may hold that many fewer than it says.
   * A use drops out when every counted place of the part has been counted again.
   */
  readonly unplaced: number;
  /** All counted shelves together, less `unplaced`. Null: no place of this part was ever counted. */
  readonly onHand: number | null;
}

export interface Stock {
  readonly parts: readonly StockedPart[];
}

/**
 * The stock as the record has it: for each part and place its last count, plus what came in, less what went out or was
 * used after it. What happened at the very moment of a count was there to be seen by it. Nothing depends on the order of
 * arrival. `facts` are those of the utility, after corrections.
 */
export function foldStock(facts: readonly Effective[], uses: readonly StockUse[]): Stock {
  const minima = minimaOf(facts);
  const parts = Map.groupBy([...entriesOf(facts, uses), ...minima.values()], ({ partKey }) => partKey);
  return {
    parts: [...parts.values()]
      .map((all) => foldPart(all, minima))
      .sort((a, b) => byText(nameKey(a.partNumber), nameKey(b.partNumber))),
  };
}

function foldPart(all: readonly Entry[], minima: ReadonlyMap<string, Entry>): StockedPart {
  const latest = [...all].sort(inTime);
  const shelves = [...Map.groupBy(latest, ({ placeKey }) => placeKey)]
    .flatMap(([placeKey, own]) => (placeKey === null ? [] : [foldShelf(own, minima)]))
    .sort((a, b) => byText(nameKey(a.place), nameKey(b.place)));
  const counts = shelves.flatMap(({ counted }) => (counted ? [Date.parse(counted.at)] : []));
  const oldest = counts.length === 0 ? -Infinity : Math.min(...counts);
  const unplaced = sum(
    latest,
    ({ placeKey, what, at }) => placeKey === null && what === 'use' && at > oldest,
  );
  const known = shelves.reduce((total, { quantity }) => total + thousandths(quantity ?? 0), 0);
  return {
    partNumber: latest.at(-1)?.partNumber ?? '',
    description: latest.findLast(({ description }) => description !== null)?.description ?? null,
    shelves,
    unplaced: unplaced / 1000,
    onHand: counts.length === 0 ? null : (known - unplaced) / 1000,
  };
}

/** `own`: everything of one part at one place, in time. */
function foldShelf(own: readonly Entry[], minima: ReadonlyMap<string, Entry>): Shelf {
  const last = own.findLast(({ what }) => what === 'count') ?? null;
  const since = (what: Entry['what']): number =>
    sum(own, (entry) => entry.what === what && (last === null || entry.at > last.at));
  const [inSince, outSince, usedSince] = [since('in'), since('out'), since('use')];
  const quantity = last === null ? null : last.thousandths + inSince - outSince - usedSince;
  const one = own.at(-1);
  const least = one ? minima.get(`${one.partKey}\n${one.placeKey ?? ''}`) : undefined;
  const minimum = least === undefined ? null : least.thousandths;
  return {
    place: one?.place ?? '',
    counted:
      last === null
        ? null
        : {
            quantity: last.thousandths / 1000,
            at: new Date(last.at).toISOString(),
            byWorkerId: last.byWorkerId,
            submissionId: last.submissionId,
          },
    inSince: inSince / 1000,
    outSince: outSince / 1000,
    usedSince: usedSince / 1000,
    quantity: quantity === null ? null : quantity / 1000,
    minimum: minimum === null ? null : minimum / 1000,
    standing: standingOf(quantity, minimum),
  };
}

/** Low is below the least that was asked for; at it is enough. */
function standingOf(quantity: number | null, minimum: number | null): Standing {
  if (quantity === null) return 'never-counted';
  if (quantity < 0) return 'negative';
  if (quantity === 0) return minimum === 0 ? 'not-kept' : 'out';
  return minimum !== null && quantity < minimum ? 'low' : 'enough';
}

const sum = (entries: readonly Entry[], counts: (entry: Entry) => boolean): number =>
  entries.reduce((total, entry) => (counts(entry) ? total + entry.thousandths : total), 0);

/** By time, then by id, so that the answer never depends on the order of arrival. */
const inTime = (a: Entry, b: Entry): number => a.at - b.at || byText(a.submissionId, b.submissionId);
