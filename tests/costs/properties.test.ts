import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { footingProblems } from '../../shared/costs/footing.ts';
import { statementOf } from '../../shared/costs/statement.ts';
import type { WorkRecord } from '../../shared/costs/work.ts';
import {
  bought,
  fromStock,
  labor,
  machine,
  noRates,
  noRecord,
  noWork,
  span,
  stock,
  used,
  worked,
} from '../support/rates.ts';

/** What holds for any work and any rates. */
const start = Date.parse('2026-03-06T00:00:00Z');
const at = (minute: number) => new Date(start + minute * 60_000).toISOString();
const rate = fc
  .integer({ min: 0, max: 999_999_999 })
  .map((n) => `${Math.floor(n / 10_000)}.${String(n % 10_000).padStart(4, '0')}`);
const share = fc.integer({ min: 0, max: 9999 }).map((n) => `0.${String(n).padStart(4, '0')}`);

/** Stretches that do not overlap, over two editions and a clock change. */
const stretches = fc
  .array(fc.tuple(fc.integer({ min: 1, max: 600 }), fc.integer({ min: 1, max: 600 })), {
    minLength: 1,
    maxLength: 4,
  })
  .map((pairs) => {
    let minute = 0;
    return pairs.map(([gap, length]) => {
      const one = span(at(minute + gap), length);
      minute += gap + length;
      return one;
    });
  });
const crew = fc.record({
  worker: fc.integer({ min: 1, max: 4 }),
  as: fc.constantFrom('a', 'b', 'unlisted'),
  work: stretches,
});
const record = fc.record({
  crew: fc.uniqueArray(crew, { maxLength: 3, selector: ({ worker }) => worker }),
  machines: fc.array(
    fc.record({
      code: fc.constantFrom('truck', 'van', 'none'),
      work: stretches,
      miles: fc.option(fc.double({ min: 0.1, max: 99, noNaN: true })),
    }),
    { maxLength: 3 },
  ),
  parts: fc.array(
    fc.record({
      part: fc.constantFrom('kit', 'none'),
      quantity: fc.integer({ min: 1, max: 50 }),
      cents: fc.option(fc.integer({ min: 0, max: 99_999_99 })),
    }),
    { maxLength: 4 },
  ),
  contractors: fc.array(
    fc.record({ invoice: fc.constantFrom('1', '2'), amountCents: fc.integer({ min: 0, max: 99_999_99 }) }),
    { maxLength: 2 },
  ),
});
const records = fc.array(record, { minLength: 1, maxLength: 3 }).map((all) =>
  all.map((one, index): WorkRecord => ({
    ...noRecord,
    submissionId: `r${index + 1}`,
    issuedOn: '2026-03-06',
    crew: one.crew.map(({ worker, as, work }) => worked(`w${worker}`, as, work)),
    machines: one.machines.map(({ code, work, miles }) => used(code, work, { drivenMiles: miles })),
    parts: one.parts.map(({ part, quantity, cents }) =>
      cents === null ? fromStock(part, quantity) : bought(part, quantity, cents),
    ),
    contractors: one.contractors.map(({ invoice, amountCents }) => ({
      contractor: 'C',
      invoiceNumber: invoice,
      invoicedOn: '2026-03-09',
      work: 'work',
      amountCents,
      invoiceSha256: null,
    })),
  })),
);
const books = fc
  .tuple(rate, share, rate, rate, rate, share)
  .map(([hourly, fringe, truck, van, kit, handling]) => {
    const book = {
      ...noRates,
      labor: [labor('a', hourly, fringe), labor('b', truck)],
      machines: [machine('truck', 'hour', truck, kit), machine('van', 'mile', van)],
      stock: [stock('kit', kit)],
      materialHandling: { fraction: handling, authorityId: 'a' },
    };
    return [
      { ...book, editionId: 'one', effectiveTo: '2026-03-06' },
      {
        ...book,
        editionId: 'two',
        effectiveFrom: '2026-03-07',
        labor: [labor('a', van), labor('b', hourly, fringe)],
      },
    ];
  });
const work = { ...noWork, strike: { date: '2026-03-06', basis: 'struck' as const } };
const shuffled = <T>(items: readonly T[], keys: readonly number[]): T[] =>
  items
    .map((item, index) => ({ item, key: keys[index % keys.length] ?? 0, index }))
    .sort((a, b) => a.key - b.key || b.index - a.index)
    .map(({ item }) => item);

describe('for any work and any rates', () => {
  it('the bill foots, every amount is whole cents, and a line without one makes it incomplete', () => {
    fc.assert(
      fc.property(records, books, (all, editions) => {
        const statement = statementOf({ ...work, records: all }, editions);
        expect(footingProblems(statement)).toEqual([]);
        const given = statement.lines.flatMap(({ amountCents }) => amountCents ?? []);
        expect(given.every((cents) => Number.isSafeInteger(cents) && cents >= 0)).toBe(true);
        expect(statement.complete).toBe(given.length === statement.lines.length);
        for (const { lineId, amountCents } of statement.lines)
          if (amountCents === null)
            expect(statement.problems.map(({ path }) => path)).toContain(`lines.${lineId}`);
      }),
    );
  });

  it('order never matters: of records, of people, machines, parts and editions', () => {
    fc.assert(
      fc.property(
        records,
        books,
        fc.array(fc.integer(), { minLength: 3, maxLength: 6 }),
        (all, editions, keys) => {
          const other = shuffled(all, keys).map((one) => ({
            ...one,
            crew: shuffled(one.crew, keys),
            machines: shuffled(one.machines, keys),
            parts: shuffled(one.parts, keys),
            contractors: shuffled(one.contractors, keys),
          }));
          expect(statementOf({ ...work, records: other }, shuffled(editions, keys))).toEqual(
            statementOf({ ...work, records: all }, editions),
          );
        },
      ),
    );
  });

  it('an interval cut in two changes nothing: time adds up on one line before it is rounded', () => {
    fc.assert(
      fc.property(
        records,
        books,
        fc.double({ min: 0.01, max: 0.99, noNaN: true }),
        (all, editions, share) => {
          const cut = all.map((one) => ({
            ...one,
            crew: one.crew.map((member) => ({
              ...member,
              work: member.work.flatMap(({ from, to }) => {
                const middle = new Date(
                  Math.round(Date.parse(from) + (Date.parse(to) - Date.parse(from)) * share),
                ).toISOString();
                return [
                  { from, to: middle },
                  { from: middle, to },
                ];
              }),
            })),
          }));
          const { problems: _cut, ...after } = statementOf({ ...work, records: cut }, editions);
          const { problems: _whole, ...before } = statementOf({ ...work, records: all }, editions);
          expect(after).toEqual(before);
        },
      ),
    );
  });

  it('what it cannot hold: hours moved to another person stand on another line, each rounded for itself', () => {
    // 1 min at 0.30 is half a cent, which goes up on each of two lines and is one whole cent on one.
    const editions = [{ ...noRates, labor: [labor('a', '0.30')] }];
    const of = (...crewOf: WorkRecord['crew']) =>
      statementOf({ ...work, records: [{ ...noRecord, crew: crewOf }] }, editions).totalCents;
    expect(of(worked('w1', 'a', [span(at(0), 1)]), worked('w2', 'a', [span(at(0), 1)]))).toBe(2);
    expect(of(worked('w1', 'a', [span(at(0), 2)]))).toBe(1);
  });
});
