import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { foldStock, type Shelf } from '../../../shared/stock/fold.ts';
import { usesOf } from '../../../shared/stock/uses.ts';
import { effectiveFacts } from '../../../shared/submissions/effective.ts';
import type { Submission } from '../../../shared/submissions/submission.ts';
import { at, correction, fact, onStrike, onUtility, recorded } from '../../support/submissions.ts';

/**
 * The stock beside a storekeeper's own way of keeping it: cards with a running balance, one line after the other in the
 * order of the clock, a count written last in its minute and then ruled off. Written for this test and from no code of
 * the project. Common practice, no source.
 */

/** What happened, plainly: the same that the submissions below say, corrections applied by hand. */
type Line =
  | { do: 'count'; at: number; place: string; part: string; n: number }
  | { do: 'move'; at: number; from: string | null; to: string | null; part: string; n: number }
  | { do: 'use'; at: number; place: string | null; part: string; n: number };

interface Card {
  balance: number;
  counted: boolean;
}

function storekeeper(lines: readonly Line[]) {
  const cards = new Map<string, Card>();
  const card = (part: string, place: string): Card => {
    const key = `${part}|${place}`;
    const found = cards.get(key) ?? { balance: 0, counted: false };
    cards.set(key, found);
    return found;
  };
  const loose: { part: string; n: number; at: number }[] = [];
  const ruledOff = new Map<string, number>();
  const minutes = [...new Set(lines.map((line) => line.at))].sort((a, b) => a - b);
  for (const minute of minutes) {
    const now = lines.filter((line) => line.at === minute);
    for (const line of now) {
      if (line.do === 'use') {
        if (line.place === null) loose.push({ part: line.part, n: line.n, at: minute });
        else card(line.part, line.place).balance -= line.n;
      }
      if (line.do === 'move') {
        if (line.from !== null) card(line.part, line.from).balance -= line.n;
        if (line.to !== null) card(line.part, line.to).balance += line.n;
      }
    }
    // One count a minute, part and place, so that it does not matter which of two is written first.
    for (const line of now)
      if (line.do === 'count') {
        const written = card(line.part, line.place);
        written.balance = line.n;
        written.counted = true;
        ruledOff.set(`${line.part}|${line.place}`, minute);
      }
  }
  const unplaced = (part: string): number => {
    const ruled = [...ruledOff].filter(([key]) => key.startsWith(`${part}|`)).map(([, minute]) => minute);
    return loose
      .filter((use) => use.part === part && !(ruled.length > 0 && ruled.every((minute) => minute >= use.at)))
      .reduce((total, { n }) => total + n, 0);
  };
  return { cards, unplaced };
}

const parts = ['K-1', 'K-2'];
const places = ['Yard', 'Truck 1', 'Truck 2'];
const part = fc.constantFrom(...parts);
const place = fc.constantFrom(...places);
const minute = fc.integer({ min: 0, max: 12 });
const n = fc.integer({ min: 1, max: 20 });

const line: fc.Arbitrary<Line> = fc.oneof(
  fc.record({
    do: fc.constant('count' as const),
    at: minute,
    place,
    part,
    n: fc.integer({ min: 0, max: 20 }),
  }),
  fc
    .record({
      do: fc.constant('move' as const),
      at: minute,
      from: fc.option(place),
      to: fc.option(place),
      part,
      n,
    })
    .filter(({ from, to }) => from !== to),
  fc.record({ do: fc.constant('use' as const), at: minute, place: fc.option(place), part, n }),
);

/** Two counts of one shelf in one minute say two things at once; the fold takes the one made later. Left out here. */
const oneCountAMinute = (lines: readonly Line[]): Line[] => {
  const seen = new Set<string>();
  return lines.filter((each) => {
    if (each.do !== 'count') return true;
    const key = `${each.at}|${each.part}|${each.place}`;
    return seen.has(key) ? false : seen.add(key);
  });
};

/** How a clerk might have typed it: other case, other spaces. */
const sloppy = (text: string, number: number): string =>
  number % 3 === 0 ? text.toLowerCase().replace(' ', '  ') : text;

function submissionOf(told: Line, number: number): Submission {
  const description = null;
  const row = { partNumber: sloppy(told.part, number), description };
  switch (told.do) {
    case 'count':
      return fact('stock-count', number, onUtility, {
        place: sloppy(told.place, number),
        countedAt: at(told.at),
        parts: [{ ...row, counted: told.n }],
      });
    case 'move':
      return fact('stock-move', number, onUtility, {
        from: told.from,
        to: told.to,
        movedAt: at(told.at),
        parts: [{ ...row, quantity: told.n }],
      });
    case 'use':
      return fact(
        'repair',
        number,
        onStrike(1 + (number % 3)),
        {
          parts: [
            {
              partNumber: row.partNumber,
              description: 'Part',
              quantity: told.n,
              source: { from: 'stock', issueSlip: null, location: told.place },
            },
          ],
        },
        { occurredAt: at(told.at) },
      );
  }
}

/** What each told line became: as it was, put right as another line of the same kind, or taken back. */
const story = fc
  .array(fc.record({ told: line, then: fc.option(fc.oneof(line, fc.constant('withdrawn' as const))) }), {
    maxLength: 30,
  })
  .chain((all) =>
    fc.tuple(fc.constant(all), fc.shuffledSubarray([...all.keys()], { minLength: all.length })),
  );

test('the shelves hold what a storekeeper’s cards hold, whatever the order of arrival and the corrections', () => {
  fc.assert(
    fc.property(story, ([all, order]) => {
      const ledger: Submission[] = [];
      const stands: Line[] = [];
      const kept = oneCountAMinute(
        all.map(({ told, then }) => finallyTold(told, then)).filter((l) => l !== null),
      );
      all.forEach(({ told, then }, index) => {
        const final = finallyTold(told, then);
        if (final !== null && !kept.includes(final)) return;
        const first = submissionOf(told, index + 10);
        ledger.push(first);
        if (final === null) ledger.push(correction(index + 500, first, null));
        else if (final !== told) {
          const right = submissionOf(final, index + 10);
          ledger.push(
            correction(index + 500, first, right.body, {
              occurredAt: right.occurredAt,
            }),
          );
        }
        if (final !== null) stands.push(final);
      });
      const arrived = order.flatMap((index) => ledger[index] ?? []);
      const rest = ledger.filter((each) => !arrived.includes(each));
      const all_ = [...arrived, ...rest].map((submission) => recorded(submission));
      const of = (type: string) => all_.filter(({ submission }) => submission.subject.type === type);
      const byStrike = Map.groupBy(of('strike'), ({ submission }) => JSON.stringify(submission.subject));
      const uses = [...byStrike.values()].flatMap((own) => usesOf(own));
      const stock = foldStock(effectiveFacts(of('utility')).facts, uses);

      const { cards, unplaced } = storekeeper(stands);
      const found = new Map<string, Shelf>(
        stock.parts.flatMap(({ partNumber, shelves }) =>
          shelves.map((shelf) => [`${partNumber.toUpperCase()}|${named(shelf.place)}`, shelf] as const),
        ),
      );
      expect([...found.keys()].sort()).toEqual([...cards.keys()].sort());
      for (const [key, { balance, counted }] of cards) {
        expect(found.get(key)?.quantity ?? null, key).toBe(counted ? balance : null);
        if (counted && balance < 0) expect(found.get(key)?.standing).toBe('negative');
        if (counted && balance === 0) expect(found.get(key)?.standing).toBe('out');
        if (!counted) expect(found.get(key)?.standing).toBe('never-counted');
      }
      for (const { partNumber, unplaced: loose } of stock.parts)
        expect(loose, partNumber).toBe(unplaced(partNumber.toUpperCase()));
    }),
    { numRuns: 500 },
  );
});

/** A correction keeps the kind of what it corrects; one to another kind is none. */
function finallyTold(told: Line, then: Line | 'withdrawn' | null): Line | null {
  if (then === 'withdrawn') return null;
  return then !== null && then.do === told.do ? then : told;
}

const named = (place: string): string =>
  places.find((each) => each.toUpperCase() === place.replace(/\s+/g, ' ').toUpperCase()) ?? place;
