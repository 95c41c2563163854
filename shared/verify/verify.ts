import type { PacketContent } from '../packet/schema.ts';
import type { PacketDocument } from '../packet/blocks.ts';
import { packetDocument } from '../packet/document.ts';
import { countPage, withPages } from '../packet/pageMarks.ts';
import { archiveFindings, SIGNATURE_NAME } from './checks/archive.ts';
import { attachmentFindings, DATA_NAME, doubleFindings } from './checks/attachments.ts';
import { claimFindings } from './checks/claim.ts';
import { readContent } from './checks/content.ts';
import { flowTestFindings } from './checks/flowTests.ts';
import { markFindings, pictureFindings, shownCopies } from './checks/pictures.ts';
import { statementFindings } from './checks/statement.ts';
import { storyFindings } from './checks/story.ts';
import { waterFindings } from './checks/water.ts';
import type { EmbeddedFile } from './file/attachments.ts';
import type { PageTextReader, TextRun } from './file/pageText.ts';
import { readArchive, type ArchivedFile } from './file/readArchive.ts';
import { readPdf, type ReadPdf } from './file/readPdf.ts';
import { finding, type Finding } from './finding.ts';
import { outlineFindings } from './printed/outline.ts';
import { paperFindings, splitPapers, type PaperPage } from './printed/papers.ts';
import { wordingFrom } from './printed/wording.ts';
import { printedFindings, type Printed } from './printed/printed.ts';
import { printedNumber } from './printed/running.ts';
import { checkSignature, type SignatureAnswer } from './signature.ts';

export interface VerifyQuestion {
  readonly pdf: Uint8Array;
  /** The companion archive with the originals; null when none was given. */
  readonly archive?: Uint8Array | null | undefined;
  /** The detached signature; left out, the one in the archive counts. */
  readonly jws?: string | null | undefined;
  /** JSON of the utility's JWK set. */
  readonly keys?: string | null | undefined;
}

/** What was looked at, so that "consistent" says of what. */
export interface Checked {
  readonly claimNumber: string;
  /** Null: a preview, which nobody issued. */
  readonly revision: number | null;
  readonly asOf: string;
  readonly utility: string;
  readonly totalCents: number;
  readonly demandCents: number;
  readonly pages: number;
  readonly lines: number;
  readonly pictures: number;
  /** Null when no archive was given: the originals were then not looked at. */
  readonly archivedFiles: number | null;
}

export interface Verification {
  /** `unreadable`: nothing was compared. `differs`: there is at least one finding, or a signature that does not fit. */
  readonly outcome: 'consistent' | 'differs' | 'unreadable';
  readonly pdfSha256: string | null;
  readonly checked: Checked | null;
  readonly findings: readonly Finding[];
  /** Texts with the same figures that the file words as another edition of this program did. */
  readonly remarks: readonly Finding[];
  readonly signature: SignatureAnswer;
}

/**
 * Verifies a packet from its own file: recomputes every figure from the work and the rates in it, compares what the
 * pages print with what the data give, and every hash with the bytes. Nothing else is asked and nothing is sent.
 */
export async function verifyPacket(
  question: VerifyQuestion,
  readText: PageTextReader,
): Promise<Verification> {
  const unread = (problem: Finding, pdfSha256: string | null = null): Verification => ({
    outcome: 'unreadable',
    pdfSha256,
    checked: null,
    findings: [problem],
    remarks: [],
    signature: { state: 'none' },
  });
  const read = await readPdf(question.pdf, readText);
  if (!read.ok) return unread(read.problem);
  const { value: pdf } = read;
  const data = pdf.files.find(({ name }) => name === DATA_NAME);
  if (!data) return unread(finding('no-data', '', { name: DATA_NAME, count: pdf.files.length }), pdf.sha256);
  const archive = question.archive ? await readArchive(question.archive) : null;
  if (archive?.ok === false) return unread(archive.problem, pdf.sha256);

  const { content, findings } = readContent(new TextDecoder().decode(data.bytes), DATA_NAME);
  const judged = content
    ? await contentFindings(content, pdf, data, archive?.files ?? null, readText)
    : { findings: [], remarks: [] };
  const { remarks } = judged;
  const found = [...pdf.oddities, ...doubleFindings(pdf.files), ...findings, ...judged.findings];
  const signature = await checkSignature({
    jws: question.jws ?? archivedSignature(archive?.files ?? []),
    keys: question.keys ?? null,
    pdfSha256: pdf.sha256,
    claimNumber: content?.claim.claimNumber ?? null,
    revision: content?.issue.state === 'frozen' ? content.issue.revision : null,
  });
  return {
    outcome: found.length > 0 || signature.state === 'refused' ? 'differs' : 'consistent',
    pdfSha256: pdf.sha256,
    checked: content && checkedOf(content, pdf, archive?.files.length ?? null),
    findings: found,
    remarks,
    signature,
  };
}

/** The signature that lies in the archive beside the originals. */
function archivedSignature(files: readonly ArchivedFile[]): string | null {
  const file = files.find(({ name }) => name === SIGNATURE_NAME);
  return file ? new TextDecoder().decode(file.content) : null;
}

/** Every check of the data against themselves, the pages, the pictures and the archive. */
async function contentFindings(
  content: PacketContent,
  pdf: ReadPdf,
  data: EmbeddedFile,
  archived: readonly ArchivedFile[] | null,
  readText: PageTextReader,
): Promise<Printed> {
  const unpaged = packetDocument(content);
  const { own, papers, findings } = splitPapers(unpaged, pdf.pages, pdf.marks);
  const shownOn = pagesShowing(unpaged, content, pdf, papers);
  const document = { ...unpaged, blocks: unpaged.blocks.map((block) => withPages(block, shownOn)) };
  const printed = printedFindings(
    document,
    own,
    new Set(papers.map(({ page }) => page)),
    wordingFrom(content, pdf.files),
  );
  const all = [
    ...statementFindings(content),
    ...claimFindings(content),
    ...waterFindings(content),
    ...flowTestFindings(content),
    ...storyFindings(content),
    ...attachmentFindings(document, pdf.files),
    ...pictureFindings(document, content, pdf.pictures),
    ...markFindings(pdf.marks),
    ...findings,
    ...outlineFindings(document, pdf.outline),
    ...printed.findings,
    ...paperFindings(papers, await originals(content, archived ?? [], readText)),
    ...(archived ? archiveFindings(content, archived, data) : []),
  ];
  return { findings: all, remarks: printed.remarks };
}

/**
 * The pages that really show each exhibit, for the manifest to be held against, by the numbers that they bear: a page
 * that was taken out is a finding of its own and not one of every exhibit after it.
 */
function pagesShowing(
  document: PacketDocument,
  content: PacketContent,
  { pictures, pages: sheets }: ReadPdf,
  paperPages: readonly PaperPage[],
): Map<string, readonly [first: number, last: number]> {
  const pages = new Map<string, readonly [first: number, last: number]>();
  const numberOn = (page: number): number => printedNumber(document, sheets[page - 1] ?? []) ?? page;
  for (const { page, sha256 } of paperPages) countPage(pages, sha256, numberOn(page));
  const wanted = shownCopies(document, content);
  pictures.forEach(({ page, sha256 }, index) => {
    // As many as there should be: each stands in its place, were its bytes another's.
    const copy =
      pictures.length === wanted.length ? wanted[index] : wanted.find((each) => each.sha256 === sha256);
    if (copy) countPage(pages, copy.original, numberOn(page));
  });
  return pages;
}

const checkedOf = (content: PacketContent, pdf: ReadPdf, archivedFiles: number | null): Checked => ({
  claimNumber: content.claim.claimNumber,
  revision: content.issue.state === 'frozen' ? content.issue.revision : null,
  asOf: content.issue.asOf,
  utility: content.utility.name,
  totalCents: content.statement.totalCents,
  demandCents: content.claim.demandCents,
  pages: pdf.pages.length,
  lines: content.statement.lines.length,
  pictures: pdf.pictures.length,
  archivedFiles,
});

/** The pages of every paper whose original lies in the archive, by its hash. */
async function originals(
  { papers }: PacketContent,
  archived: readonly ArchivedFile[],
  readText: PageTextReader,
): Promise<Map<string, readonly (readonly TextRun[])[]>> {
  const wanted = new Set(papers.filter(({ state }) => state.code === 'pages').map(({ sha256 }) => sha256));
  const found = new Map<string, readonly (readonly TextRun[])[]>();
  for (const { sha256, content } of archived)
    // A paper that cannot be opened would not have been shown, and its hash was compared.
    if (wanted.has(sha256)) found.set(sha256, await readText(content).catch(() => []));
  return found;
}
