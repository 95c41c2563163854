import { problem, type Problem } from '../problems/problem.ts';
import { canonicalJson } from '../submissions/canonical.ts';
import { editionOn } from './editions.ts';
import { billable, piecesOf, tooLongLine, type Piece } from './hours.ts';
import { distinctSorted, groupBy, spell, type DraftLine, type Drafted } from './line.ts';
import { holds } from './machineHolds.ts';
import { daysLine, hoursLine, milesLine, unpricedHours, type Priced } from './machineLine.ts';
import { machineExtras, standingBy, toldOf } from './machineTime.ts';
import { decimal } from './money.ts';
import type { RateBookEdition } from './rateBook.ts';
import { oncePerRecord } from './sameInRecord.ts';
import { compare, eachMomentOnce, spanOf, type Stretch } from './stretches.ts';
import type { Work, WorkRecord } from './work.ts';

const IN_USE = 'in use';
const STANDING_BY = 'standing by';

type Machine = WorkRecord['machines'][number] & { readonly submissionId: string };

/**
 * Which entries speak of one machine. Within a record every entry is a machine of its own; across records the first
 * entry of a code and description is the same machine as the first of the other, the second as the second.
 */
function machinesOf(records: Work['records']): [string, [Machine, ...Machine[]]][] {
  const keyed = records.flatMap(({ machines, submissionId }) => {
    const counted = new Map<string, number>();
    // In the order in which they started, so that the order of typing says nothing.
    const inOrder = machines
      .map((machine) => ({ machine, text: canonicalJson([machine.inUse, machine.standingBy, machine]) }))
      .sort((a, b) => compare(a.text, b.text));
    return inOrder.map(({ machine }) => {
      const what = `${machine.machineCode}\u0000${machine.description.toLowerCase()}`;
      const nth = (counted.get(what) ?? 0) + 1;
      counted.set(what, nth);
      return { machine: { ...machine, submissionId }, key: `${what}\u0000${String(nth).padStart(3, '0')}` };
    });
  });
  return groupBy(keyed, ({ key }) => key).map(([key, [first, ...rest]]) => [
    key,
    [first.machine, ...rest.map(({ machine }) => machine)],
  ]);
}

/**
 * Lines for each machine by the edition in force on the day of the strike: hours in use, days of use or miles driven,
 * whichever the rate is for, and standing by only where the rate has a price for it and its rule is met. The operator
 * is billed as labour, never here, except where the rate holds him: then labour leaves him out.
 */
export function machineLines(
  { records, timeZone, strike }: Work,
  editions: readonly RateBookEdition[],
): Drafted {
  const once = oncePerRecord(records);
  const problems: Problem[] = [...once.problems];
  const notes: Problem[] = [];
  const lines: DraftLine[] = [];
  const { edition, problem: missing } = editionOn(strike.date, editions);

  for (const [order, entries] of machinesOf(once.records)) {
    const [machine] = entries;
    const { machineCode } = machine;
    const rate = edition?.machines.find((item) => item.machineCode === machineCode);
    const priced: Priced = { order, machine, rate, edition, missing, date: strike.date };

    const stretches = entries.flatMap(({ inUse, standingBy: stood, submissionId }): Stretch[] => [
      ...inUse.map((span) => ({ ...spanOf(span), as: IN_USE, submissionId })),
      ...stood.map((span) => ({ ...spanOf(span), as: STANDING_BY, submissionId })),
    ]);
    const { short, tooLong } = billable(stretches);
    const { kept, overlaps } = eachMomentOnce(short, (as) => (as === IN_USE ? 0 : 1));
    for (const { ms, submissionIds } of overlaps)
      problems.push(
        problem('machine-claimed-twice', submissionIds.join(' '), { machineCode, time: spell(ms) }),
      );
    const piecesAs = (wanted: string): Piece[] =>
      piecesOf(
        kept.filter(({ as }) => as === wanted),
        timeZone,
      );
    const used = piecesAs(IN_USE);
    const stood = piecesAs(STANDING_BY);
    if (
      holds(rate, 'operator') &&
      used.length > 0 &&
      entries.every(({ operatorWorkerId }) => !operatorWorkerId)
    )
      problems.push(problem('operator-not-named', toldOf(used).path, { machineCode }));

    const { miles, submissionIds } = drivenMiles(entries);
    if (holds(rate, 'operator') && used.length === 0 && miles > 0)
      problems.push(problem('operator-hours-not-recorded', submissionIds.join(' '), { machineCode }));
    const drafted = tooLongTime(priced, tooLong, miles, timeZone);
    lines.push(...drafted.lines);
    problems.push(...drafted.problems);
    if (rate?.unit === 'mile') {
      if (miles > 0) lines.push(milesLine(priced, miles, submissionIds));
      else if (used.length > 0)
        lines.push(unpricedHours(priced, used, problem('machine-needs-miles', '', { machineCode })));
    } else {
      if (used.length > 0) lines.push(useLine(priced, used));
      if (miles > 0) {
        if (used.length > 0)
          notes.push(problem('miles-not-billed', submissionIds.join(' '), { machineCode, miles }));
        else lines.push(milesLine(priced, miles, submissionIds));
      }
    }
    if (stood.length > 0) {
      const standby = standbyOf(priced, used, stood);
      lines.push(...standby.lines);
      notes.push(...standby.notes);
    }
  }
  return { lines, problems, notes };
}

/** Time that is too long is a line without an amount, but for time that the rate would not bill: that is only said. */
function tooLongTime(
  { machine, rate }: Priced,
  tooLong: readonly Stretch[],
  miles: number,
  timeZone: string,
): Pick<Drafted, 'lines' | 'problems'> {
  const { machineCode: item, description } = machine;
  const drafted = groupBy(tooLong, ({ as }) => as).map(([as, stretches]) => {
    const kind = as === IN_USE ? ('machine-hours' as const) : ('machine-standby' as const);
    const free =
      rate !== undefined && (as === IN_USE ? rate.unit === 'mile' && miles > 0 : rate.standbyUsd === null);
    const line = tooLongLine(
      { section: 'machines', kind, item, description: rate?.title ?? description, rule: 'strike' },
      stretches,
      timeZone,
    );
    return { line, free };
  });
  return {
    lines: drafted.flatMap(({ line, free }) => (free ? [] : [line])),
    problems: drafted.flatMap(({ line, free }) =>
      free ? line.problems.map((found) => ({ ...found, path: line.submissionIds.join(' ') })) : [],
    ),
  };
}

function useLine(priced: Priced, used: readonly Piece[]): DraftLine {
  const { rate } = priced;
  if (!rate) return hoursLine(priced, 'machine-hours', null, used);
  if (rate.unit === 'day') return daysLine(priced, rate.rateUsd, used);
  return hoursLine(priced, 'machine-hours', rate.rateUsd, used, machineExtras(used, rate));
}

function standbyOf(
  priced: Priced,
  used: readonly Piece[],
  stood: readonly Piece[],
): { readonly lines: readonly DraftLine[]; readonly notes: readonly Problem[] } {
  const { rate } = priced;
  const { machineCode } = priced.machine;
  if (!rate) return { lines: [hoursLine(priced, 'machine-standby', null, stood)], notes: [] };
  const note = (
    code: string,
    pieces: readonly Piece[],
    more: (dates: string) => Problem['params'],
  ): Problem[] => {
    if (pieces.length === 0) return [];
    const { time, dates, path } = toldOf(pieces);
    return [problem(code, path, { machineCode, time, ...more(dates) })];
  };
  if (rate.standbyUsd === null) return { lines: [], notes: note('standby-not-billed', stood, () => ({})) };
  const { billed, underHalf, inDay } = standingBy(used, stood, rate);
  return {
    lines: billed.length === 0 ? [] : [hoursLine(priced, 'machine-standby', rate.standbyUsd, billed)],
    notes: [
      ...note('standby-under-half-day', underHalf, (dates) => ({
        dates,
        hours: rate.standbyOnlyIfUsedOverHalfOfHours ?? '',
      })),
      ...note('standby-in-day-rate', inDay, () => ({})),
    ],
  };
}

/** Miles add up over records, except that a record which repeats another's hours repeats its miles too. */
function drivenMiles(entries: readonly Machine[]): { miles: number; submissionIds: string[] } {
  const driven = entries.filter(({ drivenMiles: value }) => value !== null && value > 0);
  const sameRun = (a: Machine, b: Machine): boolean =>
    a.submissionId !== b.submissionId && a.drivenMiles === b.drivenMiles && overlap(a, b);
  const counted: Machine[] = [];
  for (const entry of [...driven].sort((a, b) => (a.submissionId < b.submissionId ? -1 : 1)))
    if (!counted.some((other) => sameRun(other, entry))) counted.push(entry);
  const miles = counted.reduce((sum, { drivenMiles: value }) => sum.plus(value ?? 0), decimal(0)).toNumber();
  return { miles, submissionIds: distinctSorted(driven.map(({ submissionId }) => submissionId)) };
}

function overlap(a: Machine, b: Machine): boolean {
  return a.inUse.some((x) =>
    b.inUse.some((y) => Date.parse(x.from) < Date.parse(y.to) && Date.parse(y.from) < Date.parse(x.to)),
  );
}
