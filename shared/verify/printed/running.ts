import type { PacketDocument } from '../../packet/blocks.ts';
import type { TextRun } from '../file/pageText.ts';
import { finding, type Finding } from '../finding.ts';
import { isPrintedAs, plain } from './plain.ts';
import { tableHeads } from './wanted.ts';

/** Of a long utility's name as much is printed as fits in a line; so much must be there. */
const LEAST = 20;

/**
 * Heads and feet of the pages: whose packet, which page of how many. A page that was taken out or put in shows here,
 * and so does anything that is marked as repeated and is not.
 */
export function runningFindings(
  document: PacketDocument,
  pages: readonly (readonly TextRun[])[],
  /** Pages that show a paper: what is marked as repeated there may be the paper's own. */
  paperPages: ReadonlySet<number>,
): Finding[] {
  const heads = tableHeads(document).map(plain);
  const count = pages.length;
  const findings: Finding[] = [];
  const numbers: (number | null)[] = [];
  let said: number | null = null;
  pages.forEach((runs, index) => {
    const page = index + 1;
    const text = plain(
      runs
        .filter(({ artifact }) => artifact)
        .map((run) => run.text)
        .join(''),
    );
    const numbered = pageNumber(document, text);
    numbers.push(numbered?.page ?? null);
    said ??= numbered?.pages ?? null;
    if (!numbered) {
      findings.push(finding('page-without-number', `page.${page}`, { page }));
      return;
    }
    const rest = text.slice(0, text.length - plain(document.pageOf(numbered.page, numbered.pages)).length);
    const left = withoutHeads(withoutRunning(rest, document, numbered.page), heads);
    if (left !== '' && !paperPages.has(page))
      findings.push(finding('running-text', `page.${page}`, { page, printed: left.slice(0, 120) }));
  });
  return [...pageFindings(numbers, said, count), ...findings];
}

function pageFindings(numbers: readonly (number | null)[], said: number | null, count: number): Finding[] {
  if (said === null) return [];
  const there = new Set(numbers);
  const missing = Array.from({ length: said }, (_, index) => index + 1).filter((page) => !there.has(page));
  if (missing.length > 0)
    return [finding('pages-missing', 'pages', { pages: missing.slice(0, 20).join(', '), said, count })];
  if (said !== count) return [finding('pages-added', 'pages', { said, count })];
  const moved = numbers.findIndex((page, index) => page !== index + 1);
  return moved === -1
    ? []
    : [finding('pages-moved', 'pages', { page: moved + 1, printed: numbers[moved] ?? 0 })];
}

/** The number that a page says it bears; null when it says none. */
export const printedNumber = (document: PacketDocument, runs: readonly TextRun[]): number | null =>
  pageNumber(
    document,
    plain(
      runs
        .filter(({ artifact }) => artifact)
        .map(({ text }) => text)
        .join(''),
    ),
  )?.page ?? null;

/** "Page n of m" at the end of a page's running text, whatever the language writes around the numbers. */
function pageNumber(
  { pageOf }: PacketDocument,
  text: string,
): { readonly page: number; readonly pages: number } | null {
  const [, one, other] = /(\d{1,5})\D+(\d{1,5})\D*$/.exec(text) ?? [];
  const [page, pages] = [Number(one), Number(other)];
  return text.endsWith(plain(pageOf(page, pages))) ? { page, pages } : null;
}

function withoutRunning(text: string, document: PacketDocument, page: number): string {
  const parts = [
    ...(page > 1 ? [document.runningHead] : []),
    ...(document.banner === null ? [] : [document.banner]),
    document.runningFoot,
  ].map((part) => Array.from(plain(part)));
  // From the end, as the foot is drawn last and what it stands behind is not known.
  let left = Array.from(text);
  for (const part of parts.reverse())
    for (let length = part.length; length >= Math.min(LEAST, part.length); length -= 1) {
      const at = left.length - length;
      if (at < 0 || !part.slice(0, length).every((sign, index) => isPrintedAs(sign, left[at + index])))
        continue;
      left = left.slice(0, at);
      break;
    }
  return left.join('');
}

/** Heads of tables that go on from the page before, in any number. */
function withoutHeads(text: string, heads: readonly string[]): string {
  let left = text;
  for (;;) {
    const head = heads.find((one) => one !== '' && left.startsWith(one));
    if (head === undefined) return left;
    left = left.slice(head.length);
  }
}
