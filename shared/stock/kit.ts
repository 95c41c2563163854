import type { BodyOf } from '../submissions/submission.ts';
import type { Stock } from './fold.ts';
import { nameKey } from './names.ts';

type KitPart = BodyOf<'hydrant-model'>['kitContents'][number];

/**
 * `on-shelf`: one place has as many as are needed. `spread`: only several places together have. `doubtful`: by the counts
 * there are enough, but parts taken with no shelf named may have been these. `never-counted` is not `out`.
 */
export type KitStanding = 'on-shelf' | 'spread' | 'doubtful' | 'short' | 'out' | 'never-counted';

export interface KitLine {
  readonly partNumber: string;
  readonly description: string;
  readonly replaces: string | null;
  readonly needed: number;
  readonly standing: KitStanding;
  /** Where there is any by the record, most first. */
  readonly at: readonly { readonly place: string; readonly quantity: number }[];
}

export interface KitOnShelf {
  readonly lines: readonly KitLine[];
  /** Places that by the record have the whole kit. */
  readonly completeAt: readonly string[];
  readonly standing:
    'complete' | 'spread' | 'doubtful' | 'incomplete' | 'partly-unknown' | 'never-counted' | 'no-parts';
}

/** Whether the kit of a model is on a shelf, and where. A part number listed twice is needed that often. */
export function kitOnShelf(kit: readonly KitPart[], stock: Stock): KitOnShelf {
  const stocked = new Map(stock.parts.map((part) => [nameKey(part.partNumber), part]));
  const lines = [...Map.groupBy(kit, ({ partNumber }) => nameKey(partNumber))].flatMap(([key, same]) => {
    const [first] = same;
    if (!first) return [];
    const needed = same.reduce((total, { quantity }) => total + quantity, 0);
    const part = stocked.get(key);
    const at = (part?.shelves ?? [])
      .flatMap(({ place, quantity }) => (quantity !== null && quantity > 0 ? [{ place, quantity }] : []))
      .sort((a, b) => b.quantity - a.quantity);
    const total = at.reduce((sum, { quantity }) => sum + quantity, 0);
    const line: KitLine = {
      partNumber: first.partNumber,
      description: first.description,
      replaces: same.find(({ replaces }) => replaces)?.replaces ?? null,
      needed,
      at,
      standing:
        part === undefined || part.onHand === null
          ? 'never-counted'
          : total >= needed && total - part.unplaced < needed
            ? 'doubtful'
            : at.some(({ quantity }) => quantity >= needed)
              ? 'on-shelf'
              : total >= needed
                ? 'spread'
                : total > 0
                  ? 'short'
                  : 'out',
    };
    return [line];
  });
  const places = new Set(lines.flatMap(({ at }) => at.map(({ place }) => place)));
  const completeAt = [...places].filter((place) =>
    lines.every(({ at, needed }) =>
      at.some((each) => nameKey(each.place) === nameKey(place) && each.quantity >= needed),
    ),
  );
  return { lines, completeAt, standing: wholeStanding(lines, completeAt) };
}

function wholeStanding(lines: readonly KitLine[], completeAt: readonly string[]): KitOnShelf['standing'] {
  const are = (...standings: readonly KitStanding[]): readonly KitLine[] =>
    lines.filter(({ standing }) => standings.includes(standing));
  if (lines.length === 0) return 'no-parts';
  // What is missing is surer than what is unknown, and says more.
  if (are('short', 'out').length > 0) return 'incomplete';
  if (are('never-counted').length === lines.length) return 'never-counted';
  if (are('never-counted').length > 0) return 'partly-unknown';
  if (are('doubtful').length > 0) return 'doubtful';
  return completeAt.length > 0 ? 'complete' : 'spread';
}

/** Shelves that ask for something, most urgent kind first: what a home screen counts. */
export function shortages(stock: Stock): {
  readonly negative: number;
  readonly short: number;
  readonly unknown: number;
} {
  const shelves = stock.parts.flatMap(({ shelves }) => shelves);
  const count = (...standings: readonly string[]): number =>
    shelves.filter(({ standing }) => standings.includes(standing)).length;
  return { negative: count('negative'), short: count('low', 'out'), unknown: count('never-counted') };
}
