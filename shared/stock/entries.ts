import { ofKind, type Effective } from '../submissions/effective.ts';
import { knownBy, notYet } from '../submissions/known.ts';
import { nameKey } from './names.ts';
import type { StockUse } from './uses.ts';

/** One thing that happened to one part at one place; what a count, a move, a use or a least level says of it. */
export interface Entry {
  readonly what: 'count' | 'in' | 'out' | 'use' | 'minimum';
  readonly partKey: string;
  /** Null: no shelf was named. */
  readonly placeKey: string | null;
  readonly partNumber: string;
  readonly description: string | null;
  readonly place: string | null;
  /** Milliseconds. */
  readonly at: number;
  readonly thousandths: number;
  readonly byWorkerId: string;
  readonly submissionId: string;
}

/** Whole thousandths of a piece, so that sums of parts of a tube stay exact. */
export const thousandths = (quantity: number): number => Math.round(quantity * 1000);

interface Part {
  readonly partNumber: string;
  readonly description: string | null;
}

/** When it says it happened; by a device whose clock runs far ahead, no later than when it was recorded. */
const happened = (at: string, item: Effective): number => (notYet(at, item) ? knownBy(item) : Date.parse(at));

const entry = (
  what: Entry['what'],
  { partNumber, description }: Part,
  place: string | null,
  quantity: number,
  by: Pick<Entry, 'at' | 'byWorkerId' | 'submissionId'>,
): Entry => ({
  what,
  partKey: nameKey(partNumber),
  placeKey: place === null ? null : nameKey(place),
  partNumber,
  description,
  place,
  thousandths: thousandths(quantity),
  ...by,
});

/** Every count, move and use, in no order. */
export function entriesOf(facts: readonly Effective[], uses: readonly StockUse[]): Entry[] {
  return [
    ...ofKind(facts, 'stock-count').flatMap((item) => {
      const { place, countedAt, byWorkerId, parts } = item.fact.body;
      const by = { at: happened(countedAt, item), byWorkerId, submissionId: item.fact.submissionId };
      return parts.map((part) => entry('count', part, place, part.counted, by));
    }),
    ...ofKind(facts, 'stock-move').flatMap((item) => {
      const { from, to, movedAt, byWorkerId, parts } = item.fact.body;
      const by = { at: happened(movedAt, item), byWorkerId, submissionId: item.fact.submissionId };
      return parts.flatMap((part) => [
        ...(from === null ? [] : [entry('out', part, from, part.quantity, by)]),
        ...(to === null ? [] : [entry('in', part, to, part.quantity, by)]),
      ]);
    }),
    ...uses.map((use) =>
      entry('use', use, use.location, use.quantity, {
        at: Date.parse(use.at),
        byWorkerId: '',
        submissionId: use.submissionId,
      }),
    ),
  ];
}

/** The least level that stands, by part and place (their keys with a line feed between). `facts` are in time order. */
export function minimaOf(facts: readonly Effective[]): ReadonlyMap<string, Entry> {
  return new Map(
    ofKind(facts, 'stock-minimum').flatMap((item) => {
      const { place, parts } = item.fact.body;
      const by = {
        at: happened(item.fact.occurredAt, item),
        byWorkerId: '',
        submissionId: item.fact.submissionId,
      };
      return parts.map((part): [string, Entry] => {
        const made = entry('minimum', part, place, part.minimum, by);
        return [`${made.partKey}\n${made.placeKey ?? ''}`, made];
      });
    }),
  );
}
