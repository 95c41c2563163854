import type { PayRules } from './book/labor.ts';
import { msOfHours } from './hours.ts';
import { groupBy, spell } from './line.ts';
import type { LaborPiece } from './payTime.ts';
import { spread, stepped } from './steps.ts';
import type { Span } from './stretches.ts';
import { timeAt, type TimeAs } from './timeClasses.ts';

/** Time of one worker that is paid and was not worked, or worked and not paid. */
export interface PaidExtra {
  /** Whose class, day and rates it is on. */
  readonly piece: LaborPiece;
  readonly time: TimeAs | null;
  /** When the run or day that it comes of began; of a minimum, the last run of the call. */
  readonly unitMs: number;
  readonly ms: number;
  /** In signs: `(2 h < 3 h)`, `(1 h 7 min → 5 × 15 min)`. */
  readonly why: string;
}

type Ruled = LaborPiece & { readonly rules: PayRules; readonly own: TimeAs };
const isRuled = (piece: LaborPiece): piece is Ruled => piece.rules !== null && piece.own !== null;

/**
 * Whether hours were added to a line because a call or a day has a minimum, by the sign that says so in its arithmetic:
 * `(2 h < 3 h)`. Rounding to steps is told by an arrow.
 */
export const broughtToMinimum = ({ arithmetic }: { readonly arithmetic: string }): boolean =>
  / < /.test(arithmetic);

/** An unbroken run of time of one kind. A break within work does not end it; leaving the job does. */
interface Run {
  readonly premium: boolean;
  readonly visit: number;
  readonly pieces: [Ruled, ...Ruled[]];
  readonly fromMs: number;
  toMs: number;
}

/**
 * What pay rules add to the time one worker worked, or take off: first steps, then minimums, so that a step never takes
 * a minimum away. `presence` is the worker's time on the job, breaks and all, merged and in order.
 */
export function paidExtras(
  pieces: readonly LaborPiece[],
  presence: readonly Span[],
  timeZone: string,
): PaidExtra[] {
  const ruled = pieces.filter(isRuled);
  if (ruled.length === 0) return [];
  const visits = visitsOf(ruled, presence);
  const steps = stepExtras(ruled, visits);
  const stepMs = new Map<LaborPiece, number>();
  for (const { piece, ms } of steps) stepMs.set(piece, (stepMs.get(piece) ?? 0) + ms);
  const paidMs = (runs: readonly Run[]): number =>
    runs.flatMap((run) => run.pieces).reduce((sum, piece) => sum + piece.ms + (stepMs.get(piece) ?? 0), 0);
  return [...steps, ...minimumExtras(runsOf(ruled, visits), paidMs, timeZone)];
}

function visitsOf(pieces: readonly Ruled[], presence: readonly Span[]): Map<LaborPiece, number> {
  const visits = new Map<LaborPiece, number>();
  let at = 0;
  for (const piece of pieces) {
    while (at < presence.length - 1 && (presence[at]?.toMs ?? Infinity) <= piece.fromMs) at += 1;
    visits.set(piece, at);
  }
  return visits;
}

function stepExtras(pieces: readonly Ruled[], visits: ReadonlyMap<LaborPiece, number>): PaidExtra[] {
  const inSteps = pieces.filter(({ rules }) => rules.increment !== null);
  const units = groupBy(inSteps, (piece) =>
    piece.rules.increment?.of === 'day' ? piece.date : `call ${visits.get(piece) ?? 0}`,
  );
  return units.flatMap(([, unit]) => {
    const { increment } = unit[0].rules;
    if (!increment) return [];
    const { ms, why } = stepped(
      unit.reduce((sum, piece) => sum + piece.ms, 0),
      increment,
    );
    const billed = unit.filter(({ held }) => !held);
    return spread(billed, ms).map((part) => ({
      ...part,
      time: part.piece.time,
      unitMs: unit[0].fromMs,
      why,
    }));
  });
}

function runsOf(pieces: readonly Ruled[], visits: ReadonlyMap<LaborPiece, number>): Run[] {
  const runs: Run[] = [];
  for (const piece of pieces) {
    const premium = piece.own.as !== 'working-hours';
    const visit = visits.get(piece) ?? 0;
    const last = runs.at(-1);
    if (last?.visit === visit && last.premium === premium) {
      last.pieces.push(piece);
      last.toMs = piece.toMs;
    } else runs.push({ premium, visit, pieces: [piece], fromMs: piece.fromMs, toMs: piece.toMs });
  }
  return runs;
}

/** Calls of one kind: what begins within the minimum of a call belongs to it. */
function callsOf(
  runs: readonly Run[],
  minimumMsOf: (run: Run) => number | null,
): { readonly minimumMs: number; readonly runs: [Run, ...Run[]] }[] {
  const calls: { minimumMs: number; runs: [Run, ...Run[]] }[] = [];
  for (const run of runs) {
    const open = calls.at(-1);
    if (open && run.fromMs < open.runs[0].fromMs + open.minimumMs) {
      open.runs.push(run);
      continue;
    }
    const minimumMs = minimumMsOf(run);
    if (minimumMs !== null) calls.push({ minimumMs, runs: [run] });
  }
  return calls;
}

function minimumExtras(
  runs: readonly Run[],
  paidMs: (runs: readonly Run[]) => number,
  timeZone: string,
): PaidExtra[] {
  const extras: PaidExtra[] = [];
  const raise = (call: readonly Run[], paid: number, minimumMs: number): number => {
    // A call that is wholly in a machine's rate is paid by that rate, and by its own minimum.
    const piece = call.flatMap((run) => run.pieces).find(({ held }) => !held);
    if (paid >= minimumMs || !piece) return 0;
    const ms = minimumMs - paid;
    // Told after the steps of every run of the call.
    const unitMs = call.at(-1)?.fromMs ?? piece.fromMs;
    extras.push({ piece, time: piece.own, unitMs, ms, why: `(${spell(paid)} < ${spell(minimumMs)})` });
    return ms;
  };

  const premium = runs.filter((run) => run.premium);
  const added = new Map<number, number>();
  for (const call of callsOf(premium, (run) => premiumMinimumMs(run, timeZone))) {
    const { visit } = call.runs[0];
    added.set(visit, (added.get(visit) ?? 0) + raise(call.runs, paidMs(call.runs), call.minimumMs));
  }
  const working = runs.filter((run) => !run.premium);
  const workingMinimumMs = ({ pieces: [{ rules }] }: Run): number | null =>
    rules.workingMinimumHours === null ? null : msOfHours(rules.workingMinimumHours);
  for (const call of callsOf(working, workingMinimumMs)) {
    // Time outside working hours that runs on from it, or into it, is part of the same visit and fills the minimum too.
    const visits = new Set(call.runs.map(({ visit }) => visit));
    const beside = premium.filter(({ visit }) => visits.has(visit));
    const besideMs = [...visits].reduce((sum, visit) => sum + (added.get(visit) ?? 0), paidMs(beside));
    raise(call.runs, paidMs(call.runs) + besideMs, call.minimumMs);
  }
  return extras;
}

/**
 * The minimum that a run outside working hours opens; null where there is none, and where the run goes on from the end
 * of working hours or up to their start (by the schedule: he may have come from, or gone on to, other work).
 */
function premiumMinimumMs({ pieces: [first], fromMs, toMs }: Run, timeZone: string): number | null {
  const { rules, own } = first;
  const premium = (own.as === 'holiday' ? rules.holiday : null) ?? rules.otherHours;
  if (premium.minimumHours === null) return null;
  const isWorking = (ms: number): boolean => timeAt(rules, ms, timeZone).as === 'working-hours';
  if (!premium.minimumWhenAdjoining && (isWorking(fromMs - 1) || isWorking(toMs))) return null;
  return msOfHours(premium.minimumHours);
}
