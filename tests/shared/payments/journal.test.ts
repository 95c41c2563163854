import fc from 'fast-check';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { foldClaim, provenDemands, type ClaimState } from '../../../shared/claims/state.ts';
import type { Accounts } from '../../../shared/costs/book/accounts.ts';
import { rateBookEdition, type RateBookEdition } from '../../../shared/costs/rateBook.ts';
import { accountsIn, journalOf } from '../../../shared/payments/journal.ts';
import { ledgerColumns, ledgerCsv } from '../../../shared/payments/ledgerCsv.ts';
import { effectiveFacts } from '../../../shared/submissions/effective.ts';
import type { Fact } from '../../../shared/submissions/submission.ts';
import { noRates } from '../../support/rates.ts';
import { fact, onClaim, recorded, uuid } from '../../support/submissions.ts';

const claim = onClaim(1);
const folded = (facts: readonly Fact[]): ClaimState =>
  foldClaim(uuid(1), effectiveFacts(facts.map((each) => recorded(each, '2027-01-01T00:00:00Z'))).facts)!;
const demanded = (revision: number, amountCents: number, sentOn: string, number: number): Fact[] => [
  fact('packet-frozen', number, claim, { revision, demandCents: amountCents }),
  fact('demand-sent', number + 1, claim, { revision, sentOn, amountCents }),
];
const opened = fact('claim-opened', 1, claim);
const book: Accounts = {
  cash: '1010',
  receivable: '1200',
  recovery: '=4450',
  writeOff: '5900',
  shared: null,
};
const linesOf = (state: ClaimState, accounts: Accounts | null = book) =>
  journalOf(state.money, provenDemands(state), () => accounts);
const csvOf = (state: ClaimState, from: string | null = null, to: string | null = null): string =>
  ledgerCsv(
    [
      {
        claimNumber: state.claimNumber,
        strikeId: state.strikeId,
        hydrantId: '@TH-1',
        payerKind: state.payerKind,
        lines: linesOf(state),
      },
    ],
    from,
    to,
  );
const read = (csv: string): Record<string, string>[] =>
  Papa.parse<Record<string, string>>(csv, { header: true, skipEmptyLines: true }).data;

describe('the journal', () => {
  // Double entry: a demand is owed to the utility, a payment settles it, a write-off gives it up. Common practice, no source.
  it('books each event twice, and a lowered demand the other way round', () => {
    const state = folded([
      opened,
      ...demanded(1, 1000_00, '2026-03-11', 10),
      ...demanded(2, 900_00, '2026-04-01', 20),
      fact('payment-received', 30, claim, {
        receivedOn: '2026-04-20',
        amountCents: 850_00,
        lines: [],
        deposited: 'deposited',
      }),
      fact('written-off', 31, claim, { writtenOffOn: '2026-05-01', amountCents: 50_00 }),
    ]);
    expect(
      linesOf(state).map(({ on, use, debitCents, creditCents }) => [on, use, debitCents, creditCents]),
    ).toEqual([
      ['2026-03-11', 'receivable', 1000_00, 0],
      ['2026-03-11', 'recovery', 0, 1000_00],
      ['2026-04-01', 'receivable', 0, 100_00],
      ['2026-04-01', 'recovery', 100_00, 0],
      ['2026-04-20', 'cash', 850_00, 0],
      ['2026-04-20', 'receivable', 0, 850_00],
      ['2026-05-01', 'writeOff', 50_00, 0],
      ['2026-05-01', 'receivable', 0, 50_00],
    ]);
  });

  it('has no line for a cheque in the drawer, nor for one that went back', () => {
    const pay = (deposited: 'held' | 'returned', number: number) =>
      fact('payment-received', number, claim, { amountCents: 5_00, lines: [], deposited });
    const state = folded([
      opened,
      pay('held', 2),
      pay('returned', 3),
      fact('payment-reversed', 4, claim, { payment: uuid(2), amountCents: 5_00 }),
    ]);
    expect(linesOf(state)).toEqual([]);
  });
});

describe('the journal of a check that was never money', () => {
  // By hand: a check in the drawer or sent back moves nothing, so neither does taking it back. Common practice, no source.
  it.each(['held', 'returned'] as const)(
    '%s: books nothing, whichever day its reversal names',
    (deposited) => {
      const lines = (reversedOn: string) =>
        linesOf(
          folded([
            opened,
            ...demanded(1, 1000_00, '2026-03-11', 10),
            fact('payment-received', 30, claim, {
              receivedOn: '2026-04-20',
              amountCents: 850_00,
              lines: [],
              deposited,
            }),
            fact('payment-reversed', 31, claim, { reversedOn, payment: uuid(30), amountCents: 850_00 }),
          ]),
        ).map(({ kind }) => kind);
      for (const day of ['2026-04-19', '2026-04-20', '2026-04-21'])
        expect(lines(day)).toEqual(['demand', 'demand']);
    },
  );
});

describe('the CSV', () => {
  const state = folded([opened, ...demanded(1, 1234_50, '2026-03-11', 10)]);

  it('has the stated columns, amounts as plain decimals and no formula', () => {
    const csv = csvOf(state);
    expect(csv.split('\r\n')[0]).toBe(ledgerColumns.join(','));
    // OWASP, CSV injection: a cell may not begin with = + - @, a tab or a carriage return.
    const rows = read(csv);
    expect(
      rows.map(({ debit, credit, account, hydrant_id }) => [debit, credit, account, hydrant_id]),
    ).toEqual([
      ['1234.50', '', '1200', "'@TH-1"],
      ['', '1234.50', "'=4450", "'@TH-1"],
    ]);
    for (const sign of ['=', '+', '-', '@', '\t', '\r', '\n', '＝'])
      for (const second of ['', '\n=2', ',2'])
        for (const cell of read(csvOf({ ...state, claimNumber: `${sign}1${second}` })).flatMap(Object.values))
          expect('=+-@\t\r\n＝').not.toContain(cell[0] ?? 'x');
  });

  it('books no demand that the claim itself does not count', () => {
    const ahead = folded([opened, ...demanded(1, 1234_50, '2027-01-05', 10)]);
    expect(ahead.money.askedCents).toBe(0);
    expect(read(csvOf(ahead))).toEqual([]);
  });

  it('names the accounts of the edition in force on the day, and none where two begin together', () => {
    const edition = (editionId: string, effectiveFrom: string, receivable: string | null) =>
      rateBookEdition.parse({
        ...noRates,
        editionId,
        effectiveFrom,
        ...(receivable === null ? {} : { accounts: { ...book, receivable } }),
      });
    const older = edition('a', '2026-01-01', '1200');
    const on = (day: string, ...editions: RateBookEdition[]) => accountsIn(editions)(day)?.receivable ?? null;
    expect(on('2026-03-11', older)).toBe('1200');
    expect(on('2025-12-31', older)).toBeNull();
    expect(on('2026-03-11', older, edition('b', '2026-03-01', '1300'))).toBe('1300');
    expect(on('2026-02-28', older, edition('b', '2026-03-01', '1300'))).toBe('1200');
    // An edition of before accounts is read as it was.
    expect(on('2026-03-11', older, edition('b', '2026-03-01', null))).toBeNull();
    expect(on('2026-03-11', older, edition('b', '2026-01-01', '1300'))).toBeNull();
  });

  it('keeps to its bounds, both days counted', () => {
    expect(read(csvOf(state, '2026-03-11', '2026-03-11'))).toHaveLength(2);
    expect(read(csvOf(state, '2026-03-12', null))).toHaveLength(0);
    expect(read(csvOf(state, null, '2026-03-10'))).toHaveLength(0);
  });
});

describe('any claim', () => {
  const cents = fc.integer({ min: 1, max: 2000_00 });
  const drawn = fc.record({
    asked: fc.array(cents, { maxLength: 3 }),
    paid: fc.array(fc.record({ cents, how: fc.constantFrom('deposited' as const, 'held' as const) }), {
      maxLength: 4,
    }),
    reversed: fc.array(fc.record({ cents, of: fc.nat(3) }), { maxLength: 2 }),
    off: fc.option(cents),
    shared: fc.option(cents),
    refund: fc.option(cents),
  });
  it('ties to the fold: what the CSV adds up to is what the claim says of itself', () => {
    fc.assert(
      fc.property(drawn, ({ asked, paid, reversed, off, shared, refund }) => {
        const state = folded([
          opened,
          ...asked.flatMap((each, n) => demanded(n + 1, each, `2026-03-1${n}`, 10 + 2 * n)),
          ...paid.map(({ cents: amountCents, how }, n) =>
            fact('payment-received', 30 + n, claim, { amountCents, deposited: how, lines: [] }),
          ),
          ...reversed.map(({ cents: amountCents, of }, n) =>
            fact('payment-reversed', 40 + n, claim, { amountCents, payment: uuid(30 + of) }),
          ),
          ...(off === null ? [] : [fact('written-off', 50, claim, { amountCents: off })]),
          ...(shared === null ? [] : [fact('recovery-shared', 51, claim, { amountCents: shared })]),
          ...(refund === null ? [] : [fact('refund-paid', 52, claim, { amountCents: refund })]),
        ]);
        const rows = read(csvOf(state));
        const total = (use: string | null): number =>
          rows
            .filter((row) => use === null || row['account_use'] === use)
            .reduce((sum, row) => sum + Math.round(100 * (Number(row['debit']) - Number(row['credit']))), 0);
        const { money } = state;
        expect(total(null)).toBe(0);
        expect(total('receivable')).toBe(
          money.askedCents -
            (money.receivedCents - money.reversedCents - money.refundedCents) -
            money.writtenOffCents,
        );
        expect(total('cash')).toBe(
          money.receivedCents - money.reversedCents - money.refundedCents - money.sharedCents,
        );
        if (money.problems.length === 0)
          expect(total('receivable')).toBe(money.balanceCents - money.overpaidCents);
      }),
    );
  });
});
