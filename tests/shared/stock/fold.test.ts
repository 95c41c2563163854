import { describe, expect, test } from 'vitest';
import { statementOf } from '../../../shared/costs/statement.ts';
import type { Work } from '../../../shared/costs/work.ts';
import { packetBasis } from '../../../shared/packet/basis.ts';
import { foldStock, type Stock } from '../../../shared/stock/fold.ts';
import { kitOnShelf, shortages } from '../../../shared/stock/kit.ts';
import { usesOf } from '../../../shared/stock/uses.ts';
import { parseSubmission, type BodyOf, type Submission } from '../../../shared/submissions/submission.ts';
import { effectiveFacts } from '../../../shared/submissions/effective.ts';
import { at, fact, onStrike, onUtility, recorded } from '../../support/submissions.ts';

type Source = BodyOf<'repair'>['parts'][number]['source'];

const count = (number: number, place: string, counted: number, partNumber = 'K-1') =>
  fact('stock-count', number, onUtility, {
    place,
    countedAt: at(number),
    parts: [{ partNumber, description: null, counted }],
  });
const least = (number: number, place: string, minimum: number, partNumber = 'K-1') =>
  fact('stock-minimum', number, onUtility, { place, parts: [{ partNumber, description: null, minimum }] });
const use = (number: number, quantity: number, source: Partial<Source> = {}, partNumber = 'K-1') =>
  fact('repair', number, onStrike(1), {
    parts: [
      {
        partNumber,
        description: 'Breakaway kit',
        quantity,
        source: { from: 'stock', issueSlip: null, ...source } as Source,
      },
    ],
  });

function stockOf(...submissions: readonly Submission[]): Stock {
  const all = submissions.map((each) => recorded(each));
  const of = (type: string) => all.filter(({ submission }) => submission.subject.type === type);
  return foldStock(effectiveFacts(of('utility')).facts, usesOf(of('strike')));
}
const shelf = (stock: Stock, place: string) => stock.parts[0]?.shelves.find((each) => each.place === place);

/** All of it common practice of a storeroom, no source. */
describe('a shelf', () => {
  test.each([
    ['nobody counted it: not known, and not none', [least(1, 'Yard', 2)], null, 'never-counted'],
    ['below its least level', [count(1, 'Yard', 1), least(2, 'Yard', 2)], 1, 'low'],
    ['at its least level', [count(1, 'Yard', 2), least(2, 'Yard', 2)], 2, 'enough'],
    ['no least level known', [count(1, 'Yard', 1)], 1, 'enough'],
    ['none left', [count(1, 'Yard', 0)], 0, 'out'],
    ['none, and none is kept there', [count(1, 'Yard', 0), least(2, 'Yard', 0)], 0, 'not-kept'],
    ['more used than there was', [count(1, 'Yard', 1), use(2, 3, { location: 'Yard' })], -2, 'negative'],
    ['used before it was counted', [use(1, 3, { location: 'Yard' }), count(2, 'Yard', 1)], 1, 'enough'],
    [
      'the later least level stands',
      [count(1, 'Yard', 3), least(2, 'Yard', 9), least(3, 'Yard', 2)],
      3,
      'enough',
    ],
  ] as const)('%s', (_what, submissions, quantity, standing) => {
    expect(shelf(stockOf(...submissions), 'Yard')).toMatchObject({ quantity, standing });
  });

  test('tenths of a tube add up', () => {
    const stock = stockOf(
      count(1, 'Yard', 1),
      ...[2, 3, 4].map((number) => use(number, 0.1, { location: 'Yard' })),
    );
    expect(shelf(stock, 'Yard')?.quantity).toBe(0.7);
  });

  test('the same issue slip in two records of a strike is one issue, as on the bill', () => {
    const slip = { issueSlip: 'S-9', location: 'Yard' };
    expect(shelf(stockOf(count(1, 'Yard', 5), use(2, 2, slip), use(3, 2, slip)), 'Yard')?.quantity).toBe(3);
    // Without a slip nobody can say that it is the same.
    const none = { location: 'Yard' };
    expect(shelf(stockOf(count(1, 'Yard', 5), use(2, 2, none), use(3, 2, none)), 'Yard')?.quantity).toBe(1);
  });

  test('bought parts and trials draw nothing', () => {
    const bought = {
      from: 'invoice',
      supplier: 'Invented Supply',
      invoiceNumber: '1',
      unitPriceCents: 100,
      invoiceSha256: null,
    } as const;
    const invoiced = fact('repair', 2, onStrike(1), {
      parts: [{ partNumber: 'K-1', description: 'Kit', quantity: 2, source: bought }],
    });
    const trial = { ...use(3, 2, { location: 'Yard' }), test: true as const };
    expect(shelf(stockOf(count(1, 'Yard', 5), invoiced, trial), 'Yard')?.quantity).toBe(5);
  });
});

describe('a use with no shelf named', () => {
  test('as records of before are, draws from no shelf and is said', () => {
    const before = use(2, 2);
    expect(JSON.stringify(before)).not.toContain('location');
    expect(parseSubmission(JSON.parse(JSON.stringify(before))).ok).toBe(true);
    const [part] = stockOf(count(1, 'Yard', 5), before).parts;
    expect(part).toMatchObject({ unplaced: 2, onHand: 3 });
    expect(part?.shelves[0]).toMatchObject({ quantity: 5 });
  });
  test('is settled when every counted place was counted again, and not before', () => {
    const used = [count(1, 'Yard', 5), count(2, 'Truck 1', 2), use(3, 2), count(4, 'Yard', 3)];
    expect(stockOf(...used).parts[0]).toMatchObject({ unplaced: 2, onHand: 3 });
    expect(stockOf(...used, count(5, 'Truck 1', 2)).parts[0]).toMatchObject({ unplaced: 0, onHand: 5 });
  });
});

describe('the kit of a model', () => {
  const kit = (partNumber: string, quantity = 1) => ({ partNumber, description: partNumber, quantity });
  test.each([
    ['is nowhere known', [kit('A')], [], 'never-counted', []],
    ['has nothing in it', [], [], 'no-parts', []],
    [
      'is whole in one place',
      [kit('A'), kit('B')],
      [
        ['Yard', 'A', 1],
        ['Yard', 'B', 2],
      ],
      'complete',
      ['Yard'],
    ],
    [
      'is spread over two',
      [kit('A'), kit('B')],
      [
        ['Yard', 'A', 1],
        ['Truck 1', 'B', 2],
      ],
      'spread',
      [],
    ],
    ['needs more than there is', [kit('A', 2)], [['Yard', 'A', 1]], 'incomplete', []],
    ['has one part out and one unknown', [kit('A'), kit('B')], [['Yard', 'A', 0]], 'incomplete', []],
    ['has one part unknown', [kit('A'), kit('B')], [['Yard', 'A', 1]], 'partly-unknown', []],
    ['lists a part twice and needs both', [kit('A'), kit('a')], [['Yard', 'A', 1]], 'incomplete', []],
  ] as const)('%s', (_what, contents, counted, standing, completeAt) => {
    const stock = stockOf(
      ...counted.map(([place, partNumber, quantity], index) => count(index + 1, place, quantity, partNumber)),
    );
    expect(kitOnShelf(contents, stock)).toMatchObject({ standing, completeAt });
  });
  test('that parts of no named shelf may have come from is doubtful', () => {
    const stock = stockOf(count(1, 'Yard', 1), use(2, 1));
    expect(kitOnShelf([kit('K-1')], stock)).toMatchObject({
      standing: 'doubtful',
      lines: [{ standing: 'doubtful' }],
    });
  });
  test('shelves that ask for something are counted by kind', () => {
    expect(
      shortages(
        stockOf(count(1, 'A', 0), count(2, 'B', 1), least(3, 'B', 4), least(4, 'C', 1), count(5, 'D', 9)),
      ),
    ).toEqual({ negative: 0, short: 2, unknown: 1 });
  });
});

describe('what the forms refuse', () => {
  test.each([
    [
      'a part twice',
      { ...count(1, 'Yard', 1) },
      {
        parts: [
          { partNumber: 'A', description: null, counted: 1 },
          { partNumber: 'a ', description: null, counted: 2 },
        ],
      },
      'part-twice',
      'body.parts.1.partNumber',
    ],
    [
      'fewer than none',
      { ...count(1, 'Yard', 1) },
      { parts: [{ partNumber: 'A', description: null, counted: -1 }] },
      'below-minimum',
      'body.parts.0.counted',
    ],
    ['no part at all', { ...count(1, 'Yard', 1) }, { parts: [] }, 'too-few', 'body.parts'],
    [
      'a place with signs nobody sees',
      { ...count(1, 'Yard', 1) },
      { place: 'Yard\u200b' },
      'format-regex',
      'body.place',
    ],
    [
      'a move from nowhere to nowhere',
      fact('stock-move', 1, onUtility),
      { from: null, to: null },
      'move-needs-place',
      'body.to',
    ],
    [
      'a move to where it is',
      fact('stock-move', 1, onUtility),
      { from: 'Truck 1', to: 'truck  1' },
      'move-same-place',
      'body.to',
    ],
  ] as const)('%s', (_what, submission, over, code, path) => {
    const parsed = parseSubmission({ ...submission, body: { ...submission.body, ...over } });
    expect(parsed.ok ? [] : parsed.problems.map((each) => [each.code, each.path])).toEqual([[code, path]]);
  });
});

test('the shelf that a part came from stays in the house: a packet carries the part without it', () => {
  const record = {
    submissionId: '019c0000-0000-7000-8000-000000000001',
    issuedOn: '2026-03-04',
    crew: [],
    machines: [],
    contractors: [],
    parts: [
      {
        partNumber: 'K-1',
        description: 'Kit',
        quantity: 1,
        source: { from: 'stock', issueSlip: 'S-1', location: 'Truck 1' },
      },
    ],
  };
  const work = {
    timeZone: 'America/New_York',
    damage: [],
    weekHours: [],
    credits: [],
    claimHandling: [],
    strike: { date: '2026-03-04', basis: 'struck' },
    records: [record],
    flowTests: [],
    mainValveHeld: false,
    waterLost: null,
  } as unknown as Work;
  const basis = packetBasis(work, [], statementOf(work, []));
  expect(basis.work.records[0]?.parts[0]?.source).toEqual({ from: 'stock', issueSlip: 'S-1' });
});
