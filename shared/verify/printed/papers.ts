import type { PacketDocument } from '../../packet/blocks.ts';
import type { TextRun } from '../file/pageText.ts';
import type { PageMarks } from '../file/pictures.ts';
import { finding, type Finding } from '../finding.ts';
import { plain } from './plain.ts';

/** A page of somebody else's paper, as the packet shows it. */
export interface PaperPage {
  /** Of the packet, from 1. */
  readonly page: number;
  /** Of the paper's original. */
  readonly sha256: string;
  /** Of the paper, from 0. */
  readonly paperPage: number;
  /** What the page says besides the packet's own words, ready to compare. */
  readonly text: string;
}

export interface Split {
  /** The packet's own runs of every page, the papers' words left out. */
  readonly own: readonly (readonly TextRun[])[];
  readonly papers: readonly PaperPage[];
  readonly findings: readonly Finding[];
}

/**
 * Tells the pages of papers from the packet's own: each is one drawing from elsewhere under a line that names it, in
 * the order of the data. A drawing from elsewhere on any other page lies over what the page says.
 */
export function splitPapers(
  { blocks }: PacketDocument,
  pages: readonly (readonly TextRun[])[],
  marks: readonly PageMarks[],
): Split {
  const wanted = blocks.flatMap((block) => (block.type === 'paper-page' ? [block] : []));
  const papers: PaperPage[] = [];
  const findings: Finding[] = [];
  const own = pages.map((runs, index) => {
    const page = index + 1;
    const overlays = marks[index]?.overlays ?? 0;
    if (overlays === 0) return runs;
    const block = wanted[papers.length];
    const split = block && overlays === 1 ? afterLine(runs, plain(block.line)) : null;
    if (!block || !split) {
      findings.push(finding('overlay', `page.${page}`, { page, count: overlays }));
      return runs;
    }
    papers.push({ page, sha256: block.sha256, paperPage: block.page, text: split.text });
    return split.own;
  });
  if (papers.length < wanted.length)
    findings.push(finding('paper-pages', 'papers', { count: papers.length, own: wanted.length }));
  return { own, papers, findings };
}

/** The runs that make the line, and the words after it; null when the page does not begin with the line. */
function afterLine(
  runs: readonly TextRun[],
  line: string,
): { readonly own: readonly TextRun[]; readonly text: string } | null {
  let said = '';
  let at = 0;
  while (at < runs.length && said.length < line.length) {
    const run = runs[at];
    if (run && !run.artifact) said += plain(run.text);
    at += 1;
  }
  if (said !== line) return null;
  const rest = runs.slice(at);
  return {
    own: [...runs.slice(0, at), ...rest.filter(({ artifact }) => artifact)],
    text: rest.map(({ text }) => plain(text)).join(''),
  };
}

/**
 * The words of each paper's pages against its original's, page by page. What was filled into a form or stamped on is
 * drawn after the page's own words, so the original's come first.
 */
export function paperFindings(
  papers: readonly PaperPage[],
  originals: ReadonlyMap<string, readonly (readonly TextRun[])[]>,
): Finding[] {
  return papers.flatMap(({ page, sha256, paperPage, text }) => {
    const original = originals.get(sha256)?.[paperPage];
    if (!original) return [];
    const own = original.map((run) => plain(run.text)).join('');
    if (text.startsWith(own)) return [];
    let at = 0;
    while (own[at] === text[at]) at += 1;
    return [
      finding('paper-differs', `page.${page}`, {
        page,
        printed: text.slice(Math.max(0, at - 30), at + 30),
        own: own.slice(Math.max(0, at - 30), at + 30),
      }),
    ];
  });
}
