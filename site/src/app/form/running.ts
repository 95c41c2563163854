import { localMinute, readLocalTime } from './localTime.ts';
import { rowsOf, textOf, type Values } from './nodes.ts';

/**
 * Time that is taken as it passes: a stretch with a start and no end runs. It stands in the form like any other typed
 * time, so it survives whatever the draft survives, and can be put right by hand. Nothing counts in the background: how
 * long it runs is the difference of two instants. Stretches begin and end on whole minutes, both rounded down, so that
 * the end of one and the start of the next never overlap and neither side gains on average.
 */
export interface Lanes {
  /** Stretches that are billed: worked, in use. */
  readonly main: string;
  /** Breaks, standing by. */
  readonly aside: string;
  /** A break lies within the work that goes on around it; a machine either works or stands by. */
  readonly within: boolean;
}

/** The lists whose rows are timed, by name. */
export const lanesOf: Readonly<Record<string, Lanes>> = {
  crew: { main: 'work', aside: 'breaks', within: true },
  machines: { main: 'inUse', aside: 'standingBy', within: false },
};

export interface Running {
  readonly is: 'idle' | 'running' | 'aside';
  /** When the present stretch (or break) began, UTC; null while idle. */
  readonly since: string | null;
  /** Whole minutes in the main lane up to now, breaks taken off. */
  readonly minutes: number;
}

export const moves = ['start', 'aside', 'resume', 'stop'] as const;
export type Move = (typeof moves)[number];

/** `clock-back`: the device's clock stands before a time that it wrote itself; nothing was changed. */
export type Moved =
  | {
      readonly ok: true;
      readonly row: Values;
      /** A stretch under a minute long went. */ readonly dropped: boolean;
    }
  | { readonly ok: false; readonly why: 'clock-back' };

const epochOf = (typed: string, zone: string): number | null => {
  const read = typed === '' ? null : readLocalTime(typed, zone);
  return read?.ok ? Date.parse(read.instant) : null;
};
const minuteOf = (now: Date): number => Math.floor(now.getTime() / 60_000) * 60_000;
const isBlank = (stretch: Values): boolean => textOf(stretch['from']) === '' && textOf(stretch['to']) === '';
/** Begun, and not ended: `from` can be read and `to` is blank. */
const isOpen = (stretch: Values, zone: string): boolean =>
  textOf(stretch['to']) === '' && epochOf(textOf(stretch['from']), zone) !== null;

const openIn = (row: Values, lane: string, zone: string): Values | undefined =>
  rowsOf(row[lane]).find((stretch) => isOpen(stretch, zone));

/** Milliseconds of the ended stretches of a lane, and of the open one up to `now`. */
const lengthOf = (row: Values, lane: string, zone: string, now: number): number =>
  rowsOf(row[lane]).reduce((sum, stretch) => {
    const from = epochOf(textOf(stretch['from']), zone);
    const to = textOf(stretch['to']) === '' ? now : epochOf(textOf(stretch['to']), zone);
    return from === null || to === null ? sum : sum + Math.max(0, to - from);
  }, 0);

/** How a row stands now. */
export function runningOf(row: Values, lanes: Lanes, zone: string, now: Date): Running {
  const aside = openIn(row, lanes.aside, zone);
  const main = openIn(row, lanes.main, zone);
  const at = minuteOf(now);
  const worked =
    lengthOf(row, lanes.main, zone, at) - (lanes.within ? lengthOf(row, lanes.aside, zone, at) : 0);
  const minutes = Math.max(0, Math.round(worked / 60_000));
  const since = epochOf(textOf((aside ?? main)?.['from']), zone);
  return {
    is: aside ? 'aside' : main ? 'running' : 'idle',
    since: since === null ? null : new Date(since).toISOString(),
    minutes,
  };
}

/** The latest time that stands in a row; -Infinity where none does. */
const latestOf = (row: Values, lanes: Lanes, zone: string): number =>
  Math.max(
    ...[lanes.main, lanes.aside].flatMap((lane) =>
      rowsOf(row[lane]).flatMap((stretch) =>
        ['from', 'to'].map((end) => epochOf(textOf(stretch[end]), zone) ?? -Infinity),
      ),
    ),
    -Infinity,
  );

/** Ends what runs in a lane. A stretch that would be under a minute long goes: there is nothing to bill in it. */
function close(row: Values, lane: string, now: Date, zone: string): { row: Values; dropped: boolean } {
  let dropped = false;
  const stretches = rowsOf(row[lane]).flatMap((stretch) => {
    if (!isOpen(stretch, zone)) return [stretch];
    if (epochOf(textOf(stretch['from']), zone) === minuteOf(now)) {
      dropped = true;
      return [];
    }
    return [{ ...stretch, to: localMinute(now, zone) }];
  });
  return { row: { ...row, [lane]: stretches }, dropped };
}

const open = (row: Values, lane: string, now: Date, zone: string): Values => ({
  ...row,
  // The blank stretch that a new row starts with is the first to be filled.
  [lane]: [
    ...rowsOf(row[lane]).filter((stretch) => !isBlank(stretch)),
    { from: localMinute(now, zone), to: '' },
  ],
});

/** Whether a move changes anything: nobody starts who runs already. */
export function mayMove(move: Move, { is }: Running, lanes: Lanes): boolean {
  switch (move) {
    case 'start':
      return is === 'idle';
    case 'aside':
      // A machine may stand by without having worked.
      return is === 'running' || (is === 'idle' && !lanes.within);
    case 'resume':
      return is === 'aside';
    case 'stop':
      return is !== 'idle';
  }
}

/**
 * One touch on a row. `now` is the device's clock. A move that does not apply leaves the row as it is.
 *
 * A clock that stands before the last time in the row was set back (or that time was typed ahead): a stretch that ends
 * before it begins, or one that lies over the last one, is not written; the person types the times instead.
 */
export function moved(move: Move, row: Values, lanes: Lanes, zone: string, now: Date): Moved {
  const before = runningOf(row, lanes, zone, now);
  if (!mayMove(move, before, lanes)) return { ok: true, row, dropped: false };
  if (latestOf(row, lanes, zone) > minuteOf(now)) return { ok: false, why: 'clock-back' };
  if (move === 'start') return { ok: true, row: open(row, lanes.main, now, zone), dropped: false };
  if (move === 'stop') {
    const aside = close(row, lanes.aside, now, zone);
    const main = close(aside.row, lanes.main, now, zone);
    return { ok: true, row: main.row, dropped: main.dropped };
  }
  const [from, to] = move === 'aside' ? [lanes.main, lanes.aside] : [lanes.aside, lanes.main];
  // Work goes on around a break; a machine that stands by no longer works.
  const left = lanes.within && move === 'aside' ? { row, dropped: false } : close(row, from, now, zone);
  const stays = lanes.within && move === 'resume';
  return { ok: true, row: stays ? left.row : open(left.row, to, now, zone), dropped: left.dropped };
}

/** The same touch for every row of a list that it applies to. All or none: half a crew stopped is worse than nobody. */
export function movedAll(
  move: Move,
  rows: readonly Values[],
  lanes: Lanes,
  zone: string,
  now: Date,
):
  | { readonly ok: true; readonly rows: readonly Values[] }
  | { readonly ok: false; readonly why: 'clock-back' } {
  const next: Values[] = [];
  for (const row of rows) {
    const result = moved(move, row, lanes, zone, now);
    if (!result.ok) return result;
    next.push(result.row);
  }
  return { ok: true, rows: next };
}

/** Rows that run now (or are on a break), of every timed list. */
export const runningRows = (values: Values, zone: string, now: Date): { list: string; index: number }[] =>
  Object.entries(lanesOf).flatMap(([list, lanes]) =>
    rowsOf(values[list]).flatMap((row, index) =>
      runningOf(row, lanes, zone, now).is === 'idle' ? [] : [{ list, index }],
    ),
  );

/** Everything that runs, ended now. */
export function stopAll(
  values: Values,
  zone: string,
  now: Date,
): { readonly ok: true; readonly values: Values } | { readonly ok: false; readonly why: 'clock-back' } {
  const ended: Record<string, readonly Values[]> = {};
  for (const [list, lanes] of Object.entries(lanesOf)) {
    const stopped = movedAll('stop', rowsOf(values[list]), lanes, zone, now);
    if (!stopped.ok) return stopped;
    ended[list] = stopped.rows;
  }
  return { ok: true, values: ended };
}

export type Cut =
  | { readonly ok: true; readonly done: Values; readonly next: Values }
  | { readonly ok: false; readonly why: 'clock-back' };

/**
 * Divides a repair at this minute: `done` has everything with what ran ended now, `next` the same people and machines
 * running on from now and nothing else. Several repair records of one strike add up, so no minute is lost or told twice.
 * A row that began this very minute goes to `next` alone.
 */
export function cut(values: Values, zone: string, now: Date): Cut {
  const done: Record<string, readonly Values[]> = {};
  const next: Record<string, readonly Values[]> = {};
  for (const [list, lanes] of Object.entries(lanesOf)) {
    const rows = rowsOf(values[list]);
    const stopped = movedAll('stop', rows, lanes, zone, now);
    if (!stopped.ok) return stopped;
    const runs = (row: Values): boolean => runningOf(row, lanes, zone, now).is !== 'idle';
    done[list] = stopped.rows.filter(
      (row, index) =>
        !runs(rows[index] ?? {}) || [lanes.main, lanes.aside].some((lane) => rowsOf(row[lane]).length > 0),
    );
    next[list] = rows.filter(runs).map((row) => {
      const bare: Values = { ...row, [lanes.main]: [], [lanes.aside]: [] };
      const aside = runningOf(row, lanes, zone, now).is === 'aside';
      const main = aside && !lanes.within ? bare : open(bare, lanes.main, now, zone);
      return aside ? open(main, lanes.aside, now, zone) : main;
    });
  }
  return { ok: true, done: { ...values, ...done }, next };
}
