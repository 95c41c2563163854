import { formatCents } from '../costs/money.ts';
import { say, type Locale, type WordKey } from '../words/index.ts';
import { sayFinding } from './finding.ts';
import type { Verification } from './verify.ts';

/** The answer in a line. Only a signature can say who issued a packet. */
export function sayVerdict(locale: Locale, { outcome, findings, signature }: Verification): string {
  if (outcome === 'unreadable') return say(locale, 'verify.verdict.unreadable');
  // A changed archive is no fault of the PDF beside it, and nobody has to be asked about the PDF.
  if (findings.length > 0 && findings.every(({ path }) => path.split('/')[0] === 'archive'))
    return say(
      locale,
      signature.state === 'issued' ? 'verify.verdict.issued-archive' : 'verify.verdict.archive',
    );
  if (signature.state === 'issued')
    return say(locale, findings.length === 0 ? 'verify.verdict.issued' : 'verify.verdict.issued-differs');
  if (findings.length > 0) return say(locale, 'verify.verdict.differs', { count: findings.length });
  const key: WordKey = outcome === 'differs' ? 'verify.verdict.not-issued' : 'verify.verdict.consistent';
  return say(locale, key);
}

/** What the signature shows, or that there was none. */
export function saySignature(locale: Locale, { signature }: Verification): string {
  switch (signature.state) {
    case 'none':
      return say(locale, 'verify.signature.none');
    case 'no-keys':
      return say(locale, 'verify.signature.no-keys');
    case 'issued':
      return say(locale, 'verify.signature.issued', {
        claimNumber: signature.signed.claimNumber,
        revision: String(signature.signed.revision),
        keyId: signature.keyId,
      });
    case 'refused':
      return sayFinding(locale, signature.why);
  }
}

/** What was compared, and what was not given; nothing for a file that could not be read. */
export function sayChecked(locale: Locale, { checked, pdfSha256 }: Verification): string[] {
  const hash = pdfSha256 === null ? [] : [say(locale, 'verify.sha256', { sha256: pdfSha256 })];
  if (!checked) return hash;
  const { utility, claimNumber, revision, totalCents, demandCents, pages, lines, pictures, archivedFiles } =
    checked;
  return [
    say(locale, 'verify.checked', {
      utility,
      claimNumber,
      revision:
        revision === null
          ? say(locale, 'verify.preview')
          : say(locale, 'verify.revision', { revision: String(revision) }),
      total: formatCents(totalCents),
      demand: formatCents(demandCents),
      pages,
      lines,
      pictures,
      archive: archivedFiles === null ? 'none' : String(archivedFiles),
    }),
    ...hash,
    ...(archivedFiles === null ? [say(locale, 'verify.archive.none')] : []),
  ];
}

/** Everything in lines, for a terminal. */
export function sayVerification(locale: Locale, found: Verification): string[] {
  return [
    sayVerdict(locale, found),
    ...found.findings.map((each) => `  - ${sayFinding(locale, each)}`),
    ...found.remarks.map((each) => `  (${sayFinding(locale, each)})`),
    ...(found.outcome === 'unreadable' ? [] : [saySignature(locale, found)]),
    ...sayChecked(locale, found),
    ...(found.outcome === 'unreadable' ? [] : [say(locale, 'verify.limits')]),
  ];
}
