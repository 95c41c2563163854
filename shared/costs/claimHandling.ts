import { problem, type Problem } from '../problems/problem.ts';
import { editionOn } from './editions.ts';
import { spanMs } from './hours.ts';
import { laborLines } from './labor.ts';
import { distinctSorted, spell, type Drafted } from './line.ts';
import type { RateBookEdition } from './rateBook.ts';
import { less, merged, spanOf, type Span } from './stretches.ts';
import type { Work, WorkRecord } from './work.ts';

/**
 * Time spent on the claim and not on the hydrant. Recorded, and off the bill unless the edition of the strike's day
 * names the ordinance that allows it: courts have refused it (Curt's Trucking v. Anchorage, 578 P.2d 975, Alaska 1978).
 */
export function claimHandlingLines(work: Work, editions: readonly RateBookEdition[]): Drafted {
  if (work.claimHandling.length === 0) return { lines: [], problems: [], notes: [] };
  const { edition } = editionOn(work.strike.date, editions);
  const besideRepair = edition?.claimHandling ? withoutRepair(work) : null;
  const drafted = laborLines({ ...work, records: besideRepair?.records ?? work.claimHandling }, editions);
  if (besideRepair)
    return {
      ...drafted,
      problems: [...drafted.problems, ...besideRepair.problems],
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

/** The time on the claim less what the same people worked on the hydrant: nobody is billed twice for one moment. */
function withoutRepair({ records, claimHandling }: Work): {
  readonly records: readonly WorkRecord[];
  readonly problems: readonly Problem[];
} {
  const problems: Problem[] = [];
  const repaired = (workerId: string): Span[] =>
    records.flatMap(({ crew, submissionId }) =>
      crew
        .filter((member) => member.workerId === workerId)
        .flatMap(({ work, breaks }) =>
          less(
            work.map((span) => ({ ...spanOf(span), as: '', submissionId })),
            breaks.map(spanOf),
          ),
        ),
    );
  const cut = claimHandling.map((record): WorkRecord => {
    const crew = record.crew.map((member) => {
      const spans = merged(member.work.map(spanOf));
      const taken = merged(repaired(member.workerId));
      const left = less(
        spans.map((span) => ({ ...span, as: '', submissionId: record.submissionId })),
        taken,
      );
      const ms = spanMs(spans) - spanMs(left);
      if (ms === 0) return member;
      const { workerId } = member;
      problems.push(problem('work-claimed-twice', record.submissionId, { workerId, time: spell(ms) }));
      const breaks = taken.map(({ fromMs, toMs }) => ({
        from: new Date(fromMs).toISOString(),
        to: new Date(toMs).toISOString(),
      }));
      return { ...member, breaks: [...member.breaks, ...breaks] };
    });
    return { ...record, crew };
  });
  return { records: cut, problems };
}
