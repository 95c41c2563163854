import { problem, type Problem } from '../problems/problem.ts';
import { canonicalJson } from '../submissions/canonical.ts';
import { editionOn } from './editions.ts';
import { billable, HOUR_MS, piecesOf, timeOf } from './hours.ts';
import {
  authorityOf,
  distinctSorted,
  groupBy,
  spell,
  type DraftLine,
  type Drafted,
  type LineKind,
} from './line.ts';
import { decimal, dollarText, toCents } from './money.ts';
import type { RateBookEdition } from './rateBook.ts';
import { compare, eachMomentOnce, spanOf, type Stretch } from './stretches.ts';
import type { Work, WorkRecord } from './work.ts';

const IN_USE = 'in use';
const STANDING_BY = 'standing by';

type Machine = WorkRecord['machines'][number] & { readonly submissionId: string };
type Rate = RateBookEdition['machines'][number];

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

interface Priced {
  readonly order: string;
  readonly machine: Machine;
  readonly rate: Rate | undefined;
  readonly edition: RateBookEdition | null;
  readonly missing: Problem | null;
  readonly date: string;
}

/**
 * Lines for each machine by the edition in force on the day of the strike: hours in use or miles driven, whichever the
 * rate is for, and standing by only where the rate has a price for it. The operator is billed as labour, never here.
 */
export function machineLines(
  { records, timeZone, strike }: Work,
  editions: readonly RateBookEdition[],
): Drafted {
  const problems: Problem[] = [];
  const notes: Problem[] = [];
  const lines: DraftLine[] = [];
  const { edition, problem: missing } = editionOn(strike.date, editions);

  for (const [order, entries] of machinesOf(records)) {
    const [machine] = entries;
    const { machineCode } = machine;
    const rate = edition?.machines.find((item) => item.machineCode === machineCode);
    const priced: Priced = { order, machine, rate, edition, missing, date: strike.date };

    const stretches = entries.flatMap(({ inUse, standingBy, submissionId }): Stretch[] => [
      ...inUse.map((span) => ({ ...spanOf(span), as: IN_USE, submissionId })),
      ...standingBy.map((span) => ({ ...spanOf(span), as: STANDING_BY, submissionId })),
    ]);
    const { kept, overlaps } = eachMomentOnce(billable(stretches, machineCode, problems), (as) =>
      as === IN_USE ? 0 : 1,
    );
    for (const { ms, submissionIds } of overlaps)
      problems.push(
        problem('machine-claimed-twice', submissionIds.join(' '), { machineCode, time: spell(ms) }),
      );
    const used = kept.filter(({ as }) => as === IN_USE);
    const stood = kept.filter(({ as }) => as === STANDING_BY);

    const { miles, submissionIds } = drivenMiles(entries);
    if (rate?.unit === 'mile') {
      if (miles > 0) lines.push(milesLine(priced, miles, submissionIds));
      else if (used.length > 0)
        lines.push(
          unpricedHours(priced, used, timeZone, problem('machine-needs-miles', '', { machineCode })),
        );
    } else {
      if (used.length > 0)
        lines.push(hoursLine(priced, used, timeZone, 'machine-hours', rate?.rateUsd ?? null));
      if (miles > 0) {
        if (used.length > 0)
          notes.push(problem('miles-not-billed', submissionIds.join(' '), { machineCode, miles }));
        else lines.push(milesLine(priced, miles, submissionIds));
      }
    }
    if (stood.length > 0) {
      if (rate && rate.standbyUsd === null) notes.push(standbyNote(machineCode, stood));
      else lines.push(hoursLine(priced, stood, timeZone, 'machine-standby', rate?.standbyUsd ?? null));
    }
  }
  return { lines, problems, notes };
}

const standbyNote = (machineCode: string, stood: readonly Stretch[]): Problem =>
  problem('standby-not-billed', distinctSorted(stood.map(({ submissionId }) => submissionId)).join(' '), {
    machineCode,
    time: spell(stood.reduce((ms, { fromMs, toMs }) => ms + toMs - fromMs, 0)),
  });

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

function common({ order, machine, rate, edition, missing, date }: Priced, kind: LineKind) {
  const { machineCode, description } = machine;
  return {
    section: 'machines',
    kind,
    order: `${order}\u0000${kind}`,
    item: machineCode,
    description: rate?.title ?? description,
    hoursWorked: null,
    time: null,
    fraction: null,
    editionId: edition?.editionId ?? null,
    authority: edition && rate ? authorityOf(edition, rate.authorityId) : null,
    dateBasis: { rule: 'strike', dates: date === '' ? [] : [date] },
    problems: rate
      ? []
      : [
          missing ??
            problem('no-machine-rate', '', { machineCode, date, editionId: edition?.editionId ?? '' }),
        ],
  } as const satisfies Partial<DraftLine>;
}

function hoursLine(
  priced: Priced,
  stretches: readonly Stretch[],
  timeZone: string,
  kind: LineKind,
  rateUsd: string | null,
): DraftLine {
  const time = timeOf(piecesOf(stretches, timeZone));
  const amountCents = rateUsd === null ? null : toCents(decimal(rateUsd).times(time.ms), HOUR_MS);
  return {
    ...common(priced, kind),
    quantity: time.quantity,
    unit: 'hour',
    days: time.days,
    rateUsd,
    amountCents,
    submissionIds: time.submissionIds,
    arithmetic:
      amountCents === null
        ? time.spelled
        : `${time.spelled} × $${rateUsd ?? ''}/h = $${dollarText(amountCents)}`,
  };
}

/** Hours of a machine whose rate is by the mile, with no miles recorded: shown, so that somebody adds them. */
function unpricedHours(
  priced: Priced,
  stretches: readonly Stretch[],
  timeZone: string,
  why: Problem,
): DraftLine {
  return {
    ...hoursLine(priced, stretches, timeZone, 'machine-hours', null),
    authority: null,
    problems: [why],
  };
}

function milesLine(priced: Priced, miles: number, submissionIds: readonly string[]): DraftLine {
  const { rate, machine } = priced;
  const quantity = decimal(miles).toFixed();
  const byMile = rate?.unit === 'mile' ? rate.rateUsd : null;
  const amountCents = byMile === null ? null : toCents(decimal(byMile).times(quantity));
  const line = common(priced, 'machine-miles');
  return {
    ...line,
    quantity,
    unit: 'mile',
    days: [],
    rateUsd: byMile,
    amountCents,
    authority: byMile === null ? null : line.authority,
    submissionIds,
    arithmetic:
      amountCents === null
        ? `${quantity} mi`
        : `${quantity} mi × $${byMile ?? ''}/mi = $${dollarText(amountCents)}`,
    problems:
      rate && byMile === null
        ? [problem('machine-needs-hours', '', { machineCode: machine.machineCode })]
        : line.problems,
  };
}
