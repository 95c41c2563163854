import type { TextRun } from '../file/pageText.ts';
import { finding, type Finding } from '../finding.ts';
import type { Joined } from './joined.ts';
import { plain } from './plain.ts';
import type { WantedText } from './wanted.ts';

interface PageRun extends TextRun {
  readonly page: number;
}

/** Texts of one line stand on one line to within this, points: sizes differ, and so do the programs that read them. */
const ON_LINE = 3;

/**
 * Whether each text stands where its neighbors say: the cells of a row on one line and from left to right, and each row
 * under the one before. So two figures that changed places on paper show, though the signs are drawn in their order.
 * Asked only where the signs agree; the runs are then found by counting.
 */
export function placeFindings(wanted: readonly WantedText[], found: Joined<PageRun>): Finding[] {
  const findings: Finding[] = [];
  let at = 0;
  let above = null as { readonly run: PageRun; readonly row: number } | null;
  let last = null as PageRun | null;
  for (const { text, row, of, under } of wanted) {
    const run = found.touched(at, at + 1)[0];
    at += plain(text).length;
    if (row === null || !run) continue;
    const say = (): void => {
      const { page } = run;
      findings.push(
        finding('printed-moved', `page.${page}`, {
          page,
          under,
          of,
          hasOf: of === '' ? 'no' : 'yes',
          own: text.slice(0, 160),
        }),
      );
    };
    if (above?.row === row) {
      // Short texts of one line are read as one run.
      const follows = run === last || (run.page === above.run.page && run.x > (last?.x ?? 0));
      if (!follows || Math.abs(run.y - above.run.y) > ON_LINE) say();
    } else {
      const below = above === null || run.page > above.run.page || run.y < above.run.y + ON_LINE;
      if (!below || (above && run.page < above.run.page)) say();
      above = { run, row };
    }
    last = run;
  }
  return findings;
}
