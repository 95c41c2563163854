import { problem } from '../problems/problem.ts';
import { editionOn } from './editions.ts';
import { laborLines } from './labor.ts';
import { distinctSorted, spell, type Drafted } from './line.ts';
import type { RateBookEdition } from './rateBook.ts';
import type { Work } from './work.ts';

/**
 * Time spent on the claim and not on the hydrant. Recorded, and off the bill unless the edition of the strike's day
 * names the ordinance that allows it: courts have refused it (Curt's Trucking v. Anchorage, 578 P.2d 975, Alaska 1978).
 */
export function claimHandlingLines(work: Work, editions: readonly RateBookEdition[]): Drafted {
  if (work.claimHandling.length === 0) return { lines: [], problems: [], notes: [] };
  const { edition } = editionOn(work.strike.date, editions);
  const drafted = laborLines({ ...work, records: work.claimHandling }, editions);
  if (edition?.claimHandling)
    return {
      ...drafted,
      lines: drafted.lines.map((line) => ({ ...line, section: 'claim-handling', kind: 'claim-handling' })),
    };
  const ms = drafted.lines.reduce(
    (sum, { days }) => sum + days.reduce((total, { seconds }) => total + seconds * 1000, 0),
    0,
  );
  const submissionIds = distinctSorted(work.claimHandling.map(({ submissionId }) => submissionId));
  return {
    lines: [],
    // A stretch that is too long stands on its line, and no line is made here.
    problems: [
      ...drafted.problems,
      ...drafted.lines.flatMap(({ problems, submissionIds: of }) =>
        problems
          .filter(({ code }) => code === 'stretch-too-long')
          .map((found) => ({ ...found, path: of.join(' ') })),
      ),
    ],
    notes: [problem('claim-handling-not-billed', submissionIds.join(' '), { time: spell(ms) })],
  };
}
