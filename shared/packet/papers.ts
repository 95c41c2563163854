import { ofKind, type Effective } from '../submissions/effective.ts';
import { documentKinds } from '../submissions/forms/documents.ts';
import { declaredPhotos, exhibitId, firstRecorded, type DeclaredExhibit } from './declared.ts';
import type { PacketPaper } from './exhibitSchema.ts';

export interface DeclaredPaper extends DeclaredExhibit {
  readonly what: PacketPaper['what'];
  readonly title: string;
  readonly number: string | null;
}

/** What was found on reading a paper: its pages or its picture, or why neither is shown. */
export interface PaperFound {
  readonly state: PacketPaper['state'];
}

/** Invoices that parts and contractors name by hash. */
function invoices(facts: readonly Effective[]): Map<string, { title: string; number: string }> {
  const named = new Map<string, { title: string; number: string }>();
  for (const { fact } of ofKind(facts, 'repair')) {
    for (const { contractor, invoiceNumber, invoiceSha256 } of fact.body.contractors)
      if (invoiceSha256 !== null) named.set(invoiceSha256, { title: contractor, number: invoiceNumber });
    for (const { source } of fact.body.parts)
      if (source.from === 'invoice' && source.invoiceSha256 !== null)
        named.set(source.invoiceSha256, { title: source.supplier, number: source.invoiceNumber });
  }
  return named;
}

/**
 * Every paper that the facts declare, each hash once, in the order of `documentKinds` and then of their recording:
 * those handed in as papers, and of what was handed in as a photo the invoices that a line names, and the PDFs.
 */
export function declaredPapers(facts: readonly Effective[]): DeclaredPaper[] {
  const named = invoices(facts);
  const papers = ofKind(facts, 'documents').flatMap(({ fact, recordedAt }): DeclaredPaper[] =>
    fact.body.documents.map(({ what, title, number, ...exhibit }) => ({
      exhibit,
      submissionId: fact.submissionId,
      recordedAt,
      what,
      title,
      number,
    })),
  );
  const known = new Set(papers.map(({ exhibit }) => exhibit.sha256));
  const among = declaredPhotos(facts).flatMap((declared): DeclaredPaper[] => {
    const { sha256, mediaType, caption } = declared.exhibit;
    const invoice = named.get(sha256);
    if (known.has(sha256) || (!invoice && mediaType !== 'application/pdf')) return [];
    return [
      invoice
        ? { ...declared, what: 'invoice', ...invoice }
        : { ...declared, what: 'other', title: caption?.trim() || 'PDF', number: null },
    ];
  });
  const rank = ({ what }: DeclaredPaper): number => documentKinds.indexOf(what);
  return firstRecorded([...papers, ...among]).sort(
    (a, b) =>
      rank(a) - rank(b) ||
      Date.parse(a.recordedAt) - Date.parse(b.recordedAt) ||
      (a.exhibit.sha256 < b.exhibit.sha256 ? -1 : 1),
  );
}

/** The papers as the packet lists them; what was not looked for is awaited. */
export function packetPapers(
  facts: readonly Effective[],
  found: ReadonlyMap<string, PaperFound>,
  arrived: ReadonlyMap<string, string> = new Map(),
): PacketPaper[] {
  return declaredPapers(facts).map(
    ({ exhibit: { sha256, bytes, mediaType }, submissionId, recordedAt, what, title, number }, index) => ({
      exhibitId: exhibitId('paper', index),
      sha256,
      bytes,
      mediaType,
      hashRecordedAt: recordedAt,
      bytesArrivedAt: arrived.get(sha256) ?? null,
      submissionId,
      what,
      title,
      number,
      state: found.get(sha256)?.state ?? { code: 'awaited' },
    }),
  );
}
