import { problem, type Problem } from '../problems/problem.ts';
import { editionOn } from './editions.ts';
import { billable, HOUR_MS, piecesOf, timeOf, type Piece } from './hours.ts';
import { authorityOf, groupBy, spell, type DraftLine, type Drafted } from './line.ts';
import { decimal, dollarText, toCents } from './money.ts';
import type { RateBookEdition } from './rateBook.ts';
import { eachMomentOnce, less, spanOf, type Stretch } from './stretches.ts';
import type { Work } from './work.ts';

/**
 * One line for each worker, class and edition: hours worked (work less breaks, each moment once), at the rate of the
 * day worked plus fringe. An interval that crosses midnight is on both days, and on two lines when the rates changed
 * that night. A break that any record states is not billed, even where another record forgot it.
 */
export function laborLines({ records, timeZone }: Work, editions: readonly RateBookEdition[]): Drafted {
  const problems: Problem[] = [];
  const lines: DraftLine[] = [];
  const members = records.flatMap(({ crew, submissionId }) =>
    crew.map((member) => ({ ...member, submissionId })),
  );

  for (const [workerId, entries] of groupBy(members, (member) => member.workerId)) {
    const work = entries.flatMap(({ work: spans, laborClass, submissionId }): Stretch[] =>
      spans.map((span) => ({ ...spanOf(span), as: laborClass, submissionId })),
    );
    const breaks = entries.flatMap((entry) => entry.breaks.map(spanOf));
    const { kept, overlaps } = eachMomentOnce(less(billable(work, workerId, problems), breaks));
    for (const { ms, submissionIds } of overlaps)
      problems.push(problem('work-claimed-twice', submissionIds.join(' '), { workerId, time: spell(ms) }));

    for (const [laborClass, stretches] of groupBy(kept, ({ as }) => as)) {
      const pieces = piecesOf(stretches, timeZone);
      const found = pieces.map((piece) => ({ piece, ...editionOn(piece.date, editions) }));
      for (const [, group] of groupBy(
        found,
        (item) => item.edition?.editionId ?? `\uffff${item.problem?.code ?? ''}`,
      )) {
        const { edition, problem: missing } = group[0];
        lines.push(
          laborLine({ workerId, laborClass, pieces: group.map(({ piece }) => piece), edition, missing }),
        );
      }
    }
  }
  return { lines, problems, notes: [] };
}

interface LaborGroup {
  readonly workerId: string;
  readonly laborClass: string;
  readonly pieces: readonly Piece[];
  readonly edition: RateBookEdition | null;
  readonly missing: Problem | null;
}

function laborLine({ workerId, laborClass, pieces, edition, missing }: LaborGroup): DraftLine {
  const time = timeOf(pieces);
  const rate = edition?.labor.find((item) => item.laborClass === laborClass);
  const dates = time.days.map(({ date }) => date);
  const base = {
    section: 'labor',
    kind: 'labor',
    order: `${laborClass}\u0000${workerId}\u0000${dates[0] ?? ''}`,
    item: workerId,
    quantity: time.quantity,
    unit: 'hour',
    hoursWorked: time.quantity,
    days: time.days,
    time: null,
    dateBasis: { rule: 'day-worked', dates },
    submissionIds: time.submissionIds,
  } as const;
  if (!edition || !rate)
    return {
      ...base,
      description: laborClass,
      rateUsd: null,
      fraction: null,
      amountCents: null,
      editionId: edition?.editionId ?? null,
      authority: null,
      arithmetic: time.spelled,
      problems: [
        missing ??
          problem('no-labor-rate', '', {
            laborClass,
            date: dates[0] ?? '',
            editionId: edition?.editionId ?? '',
          }),
      ],
    };
  const { hourlyUsd, fringeFraction } = rate;
  const fringe = decimal(fringeFraction);
  const amountCents = toCents(decimal(hourlyUsd).times(fringe.plus(1)).times(time.ms), HOUR_MS);
  const withFringe = fringe.eq(0) ? '' : ` × (1 + ${fringeFraction})`;
  return {
    ...base,
    description: rate.title,
    rateUsd: hourlyUsd,
    fraction: fringeFraction,
    amountCents,
    editionId: edition.editionId,
    authority: authorityOf(edition, rate.authorityId),
    arithmetic: `${time.spelled} × $${hourlyUsd}/h${withFringe} = $${dollarText(amountCents)}`,
    problems: [],
  };
}
