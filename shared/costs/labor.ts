import { problem, type Problem } from '../problems/problem.ts';
import { paidExtras, type PaidExtra } from './callOuts.ts';
import { billable, spanMs, tooLongLine } from './hours.ts';
import { laborLine } from './laborLine.ts';
import { distinctSorted, groupBy, spell, timeClasses, type DraftLine, type Drafted } from './line.ts';
import { operatedInRate, type OperatedSpan } from './machineHolds.ts';
import { editionFinder, laborPieces, type LaborPiece } from './payTime.ts';
import type { RateBookEdition } from './rateBook.ts';
import { eachMomentOnce, less, merged, spanOf, type Stretch } from './stretches.ts';
import type { TimeAs } from './timeClasses.ts';
import { withWeekOvertime } from './weekOvertime.ts';
import type { Work } from './work.ts';

/**
 * One line for each worker, class and edition, and, under pay rules, for each kind of time and its multiplier: hours
 * worked (work less breaks, each moment once) and hours paid, at the rate of the day worked plus fringe. An interval
 * that crosses midnight is on both days, and on two lines when the rates changed that night. A break that any record
 * states is not billed, even where another record forgot it. Time that a machine's rate pays for is noted, not billed.
 * Only classes that are `wanted` get lines, problems and notes; the hours of all of them count towards weeks and calls.
 */
export function laborLines(
  work: Work,
  editions: readonly RateBookEdition[],
  wanted: (laborClass: string) => boolean = () => true,
): Drafted {
  const problems: Problem[] = [];
  const notes: Problem[] = [];
  const lines: DraftLine[] = [];
  const editionFor = editionFinder(editions);
  const operated = operatedInRate(work, editions);
  const members = work.records.flatMap(({ crew, submissionId }) =>
    crew.map((member) => ({ ...member, submissionId })),
  );

  for (const [workerId, entries] of groupBy(members, (member) => member.workerId)) {
    if (!entries.some(({ laborClass }) => wanted(laborClass))) continue;
    const claimed = entries.flatMap(({ work: spans, laborClass, submissionId }): Stretch[] =>
      spans.map((span) => ({ ...spanOf(span), as: laborClass, submissionId })),
    );
    const { short: billed, tooLong } = billable(claimed);
    for (const [laborClass, stretches] of groupBy(
      tooLong.filter(({ as }) => wanted(as)),
      (stretch) => stretch.as,
    ))
      lines.push(
        tooLongLine(
          { section: 'labor', kind: 'labor', item: workerId, description: laborClass, rule: 'day-worked' },
          stretches,
          work.timeZone,
        ),
      );
    const breaks = entries.flatMap((entry) => entry.breaks.map(spanOf));
    const { kept, overlaps } = eachMomentOnce(less(billed, breaks));
    for (const { ms, submissionIds } of overlaps)
      problems.push(problem('work-claimed-twice', submissionIds.join(' '), { workerId, time: spell(ms) }));

    const held = operated.get(workerId) ?? [];
    notes.push(...operatorNotes(workerId, kept, held));
    const pieces = withWeekOvertime(
      workerId,
      laborPieces(kept, held, editionFor, work.timeZone),
      work,
      problems,
    );
    lines.push(...linesOf(workerId, pieces, paidExtras(pieces, merged(billed), work.timeZone), wanted));
  }
  return { lines, problems, notes };
}

/** What of the worker's time is in the rate of each machine. */
function operatorNotes(workerId: string, kept: readonly Stretch[], held: readonly OperatedSpan[]): Problem[] {
  return groupBy(held, ({ machineCode }) => machineCode).flatMap(([machineCode, spans]) => {
    const inRate = less(kept, less(kept, spans));
    return inRate.length === 0
      ? []
      : [
          problem(
            'operator-in-machine-rate',
            distinctSorted(inRate.map(({ submissionId }) => submissionId)).join(' '),
            { workerId, machineCode, time: spell(spanMs(inRate)) },
          ),
        ];
  });
}

const lineKey = ({ laborClass, found }: LaborPiece, time: TimeAs | null): string =>
  [
    laborClass,
    found.edition?.editionId ?? `\uffff${found.problem?.code ?? ''}`,
    time ? timeClasses.indexOf(time.as) : '',
    time?.multiplier ?? '',
  ].join('\u0000');

function linesOf(
  workerId: string,
  pieces: readonly LaborPiece[],
  extras: readonly PaidExtra[],
  wanted: (laborClass: string) => boolean,
): DraftLine[] {
  const parts = [
    ...pieces
      .filter(({ held }) => !held)
      .map((piece) => ({ piece, time: piece.time, extra: null as PaidExtra | null })),
    ...extras.map((extra) => ({ piece: extra.piece, time: extra.time, extra })),
  ].filter(({ piece }) => wanted(piece.laborClass));
  return groupBy(parts, ({ piece, time }) => lineKey(piece, time)).map(([, group]) => {
    const [{ piece, time }] = group;
    return laborLine({
      workerId,
      laborClass: piece.laborClass,
      found: piece.found,
      time,
      rules: piece.rules,
      pieces: group.flatMap((part) => (part.extra === null ? [part.piece] : [])),
      extras: group.flatMap(({ piece: { date, submissionId }, extra }) =>
        extra === null ? [] : [{ date, submissionId, unitMs: extra.unitMs, ms: extra.ms, why: extra.why }],
      ),
    });
  });
}
