import Papa from 'papaparse';
import { formulaCells } from '../csv/formulaCells.ts';
import type { PayerKind } from '../submissions/forms/claimOpened.ts';
import type { JournalLine } from './journal.ts';

/** A claim's journal with what finance files it by. Nobody's name: who paid stands in the claim. */
export interface LedgerClaim {
  readonly claimNumber: string;
  readonly strikeId: string;
  readonly hydrantId: string | null;
  readonly payerKind: PayerKind;
  readonly lines: readonly JournalLine[];
}

/** The columns, in their order. Stable: a finance system maps them once. */
export const ledgerColumns = [
  'date',
  'claim_number',
  'strike_id',
  'hydrant_id',
  'payer_kind',
  'event',
  'account_use',
  'account',
  'debit',
  'credit',
  'currency',
  'record_id',
] as const;

/** Whole cents as dollars with two decimals and no separator: `1234.50`. */
const dollarsOf = (cents: number): string =>
  cents === 0 ? '' : `${Math.trunc(cents / 100)}.${String(cents % 100).padStart(2, '0')}`;

/**
 * The journal of all claims as CSV (RFC 4180), by day, within `from` and `to` (days of the utility's zone, both counted;
 * null: no bound). A cell that a spreadsheet would run as a formula begins with an apostrophe (OWASP, CSV injection:
 * `=`, `+`, `-`, `@`, tab and carriage return).
 */
export function ledgerCsv(claims: readonly LedgerClaim[], from: string | null, to: string | null): string {
  const rows = claims
    .flatMap((claim) => claim.lines.map((line) => ({ claim, line })))
    .filter(({ line: { on } }) => (from === null || on >= from) && (to === null || on <= to))
    .sort(
      (a, b) =>
        (a.line.on < b.line.on ? -1 : a.line.on > b.line.on ? 1 : 0) ||
        (a.claim.claimNumber < b.claim.claimNumber ? -1 : a.claim.claimNumber > b.claim.claimNumber ? 1 : 0),
    )
    .map(({ claim, line }) => [
      line.on,
      claim.claimNumber,
      claim.strikeId,
      claim.hydrantId ?? '',
      claim.payerKind,
      line.kind,
      line.use,
      line.account ?? '',
      dollarsOf(line.debitCents),
      dollarsOf(line.creditCents),
      'USD',
      line.submissionId,
    ]);
  return `${Papa.unparse({ fields: [...ledgerColumns], data: rows }, { escapeFormulae: formulaCells, newline: '\r\n' })}\r\n`;
}
